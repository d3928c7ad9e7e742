import type { CellContent, SheetContent } from "../content.ts";

/** Of letters of 11 and of 16 points, in points. */
const line = 15;
const titleLine = 21;
/** A letter is about so wide, in pixels; those of other programs’ fonts are wider than Excel’s. */
const letter = 7;
const usualWidth = 64;

/**
 * Heights of rows whose text needs more than a line, in points, by row from 0. Excel fits them itself when it opens a
 * file; other programs take what is stated.
 */
export function rowHeights(sheet: SheetContent): ReadonlyMap<number, number> {
  return new Map(
    sheet.cells.flatMap((row, r) => {
      const heights = row.map((cell, c) => heightOf(cell, sheet.columnWidths?.[c] ?? usualWidth));
      const height = Math.max(line, ...heights);
      return height > line ? [[r, height] as const] : [];
    }),
  );
}

function heightOf(cell: CellContent | undefined, width: number): number {
  if (cell?.style === "title") return titleLine;
  if (cell?.style !== "heading" && cell?.style !== "wrap") return line;
  // What a formula will show is not known yet: headings of two lines have room.
  const least = cell.formula !== undefined && cell.style === "heading" ? 2 : 1;
  return line * Math.max(least, typeof cell.value === "string" ? lines(cell.value, width / letter) : 1);
}

/** Lines of a text that breaks between words, `room` letters wide. */
function lines(text: string, room: number): number {
  return text
    .split("\n")
    .map((paragraph) => {
      let count = 1;
      let used = 0;
      for (const { length } of paragraph.split(" ")) {
        const needed = used === 0 ? length : used + 1 + length;
        if (needed <= room || used === 0) used = needed;
        else {
          count++;
          used = length;
        }
      }
      return count;
    })
    .reduce((sum, count) => sum + count, 0);
}
