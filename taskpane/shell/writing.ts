import type { SheetContent } from "../../addin/workbook/content.ts";
import type { Edit } from "../../addin/workbook/port.ts";

/** Formulas follow every change of the tables that they name; values stay as they are. */
export type WritingForm = "formulas" | "values";

/** What will be written to the workbook as one action, to be shown before it is. */
export interface Writing {
  readonly label: string;
  /** What will be written where, in a sentence. */
  readonly preview: string;
  readonly done: string;
  /** True where all stands there already, so that there is nothing to do. */
  readonly isDone?: boolean;
  edits(): readonly Edit[];
}

/** The row of the headings on a sheet of results, from 0: below a title, a quiet line and an empty row. */
export const headingRow = 3;

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
