import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import type { CellAddress, Edit } from "../../addin/workbook/port.ts";

/** Formulas follow every change of the tables that they name; values stay as they are. */
export type WritingForm = "formulas" | "values";

/** What will be written to the workbook as one action, to be shown before it is. */
export interface Writing {
  readonly label: string;
  /** What will be written where, in a sentence. */
  readonly preview: string;
  readonly done: string;
  /** The cell at the head of what is written, which is shown once it is there. */
  readonly at: CellAddress;
  /** True where all stands there already, so that there is nothing to do. */
  readonly isDone?: boolean;
  edits(): readonly Edit[];
}

/** The row of the headings on a sheet of results, from 0: below a title, a quiet line and an empty row. */
export const headingRow = 3;

/** Where results begin on a sheet of their own. */
export function startOn(sheet: string): CellAddress {
  return { sheet, row: headingRow, column: 0 };
}

/** Cells beyond which a look for each is more than it is worth. */
const mostLooks = 100_000;

/** How a column of results looks: a number format, or verdicts with their signs and colours. */
export type ColumnLook = { readonly format: string } | "verdicts" | undefined;

/**
 * A formula with the looks of what it fills: a row of headings, and the columns below.
 *
 * @param rows that it fills now; some more are made ready, for what is added to its tables
 */
export function followed(
  formula: string,
  { rows, looks }: { readonly rows: number; readonly looks: readonly ColumnLook[] },
): SheetContent["cells"] {
  const headings = looks.map((_, i): CellContent =>
    i === 0 ? { formula, style: "heading" } : { spilled: true, style: "heading" },
  );
  const row = looks.map((look): CellContent | undefined =>
    look === undefined
      ? undefined
      : look === "verdicts"
        ? { spilled: true, style: "verdict" }
        : { spilled: true, format: look.format },
  );
  const more = row.every((cell) => cell === undefined) ? 0 : rows + spareRows;
  return [headings, ...Array.from({ length: more * looks.length > mostLooks ? 0 : more }, () => row)];
}

/** Rows below what a formula fills now that get the same looks. */
const spareRows = 20;

/** The tenth that a tape shows, with room to the words beside it. */
export const tenths = { format: '0.0" "' } as const;

/** A sheet of results: its title, what it follows, and the results below. */
export function resultSheet(sheet: {
  readonly name: string;
  readonly title: string;
  readonly says: string;
  readonly cells: SheetContent["cells"];
  readonly columnWidths: readonly number[];
}): SheetContent {
  const { name, title, says, cells, columnWidths } = sheet;
  return {
    name,
    cells: [[{ value: title, style: "title" }], [{ value: says, style: "quiet" }], [], ...cells],
    frozenRows: headingRow + 1,
    frozenColumns: 1,
    columnWidths,
  };
}
