/** Spellings and abbreviations that stand for one word of a heading; "" leaves the word out. */
const wordFor: Readonly<Record<string, string>> = {
  circumference: "girth",
  circumferance: "girth",
  circumf: "girth",
  circum: "girth",
  circ: "girth",
  cir: "girth",
  girths: "girth",
  around: "girth",
  round: "girth",
  breadth: "width",
  wide: "width",
  len: "length",
  lgth: "length",
  lngth: "length",
  long: "length",
  ht: "height",
  hgt: "height",
  tall: "height",
  center: "centre",
  ctr: "centre",
  frt: "front",
  fr: "front",
  bk: "back",
  hips: "hip",
  shoulders: "shoulder",
  shldr: "shoulder",
  arms: "arm",
  legs: "leg",
  wrists: "wrist",
  elbows: "elbow",
  thighs: "thigh",
  knees: "knee",
  calves: "calf",
  ankles: "ankle",
  heels: "heel",
  feet: "foot",
  hands: "hand",
  biceps: "bicep",
  bicepts: "bicep",
  neckline: "neck",
  measurement: "",
  measure: "",
  meas: "",
  the: "",
  of: "",
};

/**
 * A heading in the form in which headings are compared: lower case, no accents or punctuation, one space between
 * words, usual abbreviations and spellings written out.
 *
 * @example headingKey("Hips – circ.") // "hip girth"
 * @example headingKey("underBust_Circumference") // "under bust girth"
 */
export function headingKey(heading: string): string {
  return headingWords(heading)
    .map((word) => (Object.hasOwn(wordFor, word) ? wordFor[word] : word))
    .filter((word) => word !== "")
    .join(" ");
}

function headingWords(heading: string): string[] {
  return heading
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .normalize("NFKD")
    .replace(/[\p{M}'’]/gu, "")
    .toLowerCase()
    .replaceAll("ß", "ss")
    .replace(/&/g, " and ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}
