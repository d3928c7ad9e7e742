import type { DecimalMark } from "../../measures/decimal.ts";
import type { Delimiter } from "./rows.ts";

export const decimalMarks: readonly DecimalMark[] = [".", ","];

export const decimalMarkNames: Readonly<Record<DecimalMark, string>> = {
  ".": "Point, as in 13.5",
  ",": "Comma, as in 13,5",
};

/**
 * The decimal mark that the readings are written with. A mark before one, two or more than three digits, after
 * a leading zero, or last of two different ones is decimal. Before exactly three digits it may part thousands, and
 * counts only when nothing else tells and commas do not part the cells. Without any sign: a point.
 */
export function detectDecimalMark(texts: Iterable<string>, delimiter: Delimiter): DecimalMark {
  const clear = { ".": 0, ",": 0 };
  const weak = { ".": 0, ",": 0 };
  for (const text of texts) {
    const both = /\d[.,]\d{3}([.,])\d/.exec(text)?.[1];
    const found = /(\d+)([.,])(\d+)/.exec(text);
    if (both === "." || both === ",") clear[both]++;
    else if (found) {
      const mark = found[2] === "," ? "," : ".";
      const digits = found[3]?.length ?? 0;
      if (digits === 3 && found[1] !== "0") weak[mark]++;
      else clear[mark]++;
    }
  }
  if (clear["."] !== clear[","]) return clear[","] > clear["."] ? "," : ".";
  if (weak["."] !== weak[","] && delimiter !== ",") return weak[","] > weak["."] ? "," : ".";
  return ".";
}
