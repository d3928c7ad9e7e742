const words = new Set([
  "n/a",
  "na",
  "n.a.",
  "n.a",
  "#n/a",
  "n/k",
  "x",
  "xx",
  "none",
  "nil",
  "null",
  "nan",
  "unknown",
  "missing",
  "not known",
  "not taken",
  "not measured",
  "tba",
  "tbd",
]);

/** True for the ways in which charts say “no reading” (text already tidied): blank, dashes, `?`, dots, `n/a`, `x`, `none` … */
export function meansMissing(tidied: string): boolean {
  return /^(-+|\?+|\.+|…|\/|\\|_+|\*)?$/.test(tidied.replace(/ /g, "")) || words.has(tidied);
}
