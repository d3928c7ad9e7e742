import type { DecimalMark } from "../../measures/decimal.ts";
import { longestMm } from "../../measures/parseReading.ts";

export const decimalMarks: readonly DecimalMark[] = [".", ","];

export const decimalMarkNames: Readonly<Record<DecimalMark, string>> = {
  ".": "Point, as in 13.5",
  ",": "Comma, as in 13,5",
};

/** A cell that holds a reading and nothing else, whose mark cannot part thousands. Dates and remarks are none. */
const wholeReading = /^\s*\d+([.,])\d{1,2}\s*(?:mm|cm|in|")?\s*$/u;

/**
 * The decimal mark that the readings are written with. A mark before one, two or more than three digits, after
 * a leading zero, or last of two different ones is decimal. Before exactly three digits it may part thousands, and
 * tells nothing, unless these would be over 10 m. Without any mark: a point.
 *
 * @returns `undefined` where the marks do not tell, or where readings are plainly written with either, as in `7.6` and `19,4`:
 * then each reading is read by itself, and refused where it can be two numbers
 */
export function detectDecimalMark(texts: Iterable<string>): DecimalMark | undefined {
  const clear = { ".": 0, ",": 0 };
  const readings = { ".": false, ",": false };
  let isMarked = false;
  for (const text of texts) {
    const [, written] = wholeReading.exec(text) ?? [];
    if (written === "." || written === ",") readings[written] = true;
    const both = /\d[.,]\d{3}([.,])\d/.exec(text)?.[1];
    const found = /(\d+)([.,])(\d+)/.exec(text);
    if (both === "." || both === ",") clear[both]++;
    else if (found) {
      isMarked = true;
      const isDecimal =
        found[3]?.length !== 3 || found[1] === "0" || Number(`${found[1] ?? ""}${found[3]}`) > longestMm;
      if (isDecimal) clear[found[2] === "," ? "," : "."]++;
    }
  }
  if (readings["."] && readings[","]) return undefined;
  if (readings["."] || readings[","]) return readings[","] ? "," : ".";
  if (clear["."] !== clear[","]) return clear[","] > clear["."] ? "," : ".";
  return isMarked ? undefined : ".";
}
