import type { CellContent } from "../../workbook/content.ts";

const pixelsPerLetter = 8.5;
const narrowest = 84;

/** Widths in pixels that hold the headings, with room for a filter button, and the longest text below each. */
export function widthsOf(
  headings: readonly string[],
  rows: readonly (readonly (CellContent | undefined)[])[],
): number[] {
  return headings.map((text, column) => {
    const letters = rows.map((row) => {
      const value = row[column]?.value;
      return typeof value === "string" ? value.length : 0;
    });
    const longest = Math.max(text.length + 4, ...letters);
    return Math.max(narrowest, Math.round(longest * pixelsPerLetter));
  });
}
