import type { SheetContent } from "./content.ts";
import { columnLetters } from "../chart/columnLetters.ts";

/** How a sheet is printed: across, its headings on every page, the number of the page below. */
export interface Printed {
  /** As few pages side by side as can be read; as many below one another as there are rows. */
  readonly pagesAcross: number;
  /** What stands on every page again, such as `$4:$4` and `$A:$A`. */
  readonly rows: string | undefined;
  readonly columns: string | undefined;
}

/** Of a column without a width of its own, in pixels: usual in Excel with our plain font. */
const usualWidth = 64;
/** Pixels on one page laid across, which is about 1,050 wide: letters of 11 points come out at 7 or more. */
const readableWidth = 1600;

/** Left and right below each sheet, in the codes of headers and footers (ECMA-376 part 1, 18.3.1.46, as Excel’s own): sheet, page / pages. */
export const footer = { left: "&A", right: "&P / &N" } as const;

/** The headings of the first table are repeated, else what is frozen; the first columns where the others go over several pages. */
export function printed({ cells, tables, columnWidths, frozenRows, frozenColumns }: SheetContent): Printed {
  const count = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const pixels = Array.from({ length: count }, (_, i) => columnWidths?.[i] ?? usualWidth);
  const width = pixels.reduce((sum, each) => sum + each, 0);
  const pagesAcross = Math.max(1, Math.ceil(width / readableWidth));
  const heading = tables?.[0] && tables[0].row + 1;
  return {
    pagesAcross,
    rows:
      heading !== undefined
        ? `$${String(heading)}:$${String(heading)}`
        : frozenRows
          ? `$1:$${String(frozenRows)}`
          : undefined,
    columns: frozenColumns && pagesAcross > 1 ? `$A:$${columnLetters(frozenColumns - 1)}` : undefined,
  };
}
