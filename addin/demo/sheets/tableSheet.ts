import type { CellContent, PickListContent, SheetContent } from "../../workbook/content.ts";
import { heading, quiet, title } from "./parts.ts";

/** A column of a table that is kept by hand. */
export interface TableColumn {
  readonly heading: string;
  /** What belongs into it, as a note on its heading. */
  readonly note?: string;
  readonly choices?: PickListContent["from"];
  /** Letters to make room for, where more than the heading and the rows need. */
  readonly letters?: number;
}

const pixelsPerLetter = 8.5;
const narrowest = 84;
/** Below the headings; beyond it a cell can still be filled by hand. */
const rowsWithChoices = 500;

/** A sheet with one table: its title, a line that says what it is for, headings, rows. */
export function tableSheet(sheet: {
  readonly name: string;
  readonly says: string;
  readonly table: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly (CellContent | undefined)[])[];
  readonly frozenColumns?: number;
}): SheetContent {
  const { name, says, table, columns, rows, frozenColumns } = sheet;
  const top = 2;
  const notes = columns.flatMap(({ note }, column) =>
    note === undefined ? [] : [{ row: top, column, text: note }],
  );
  const pickLists = columns.flatMap(({ choices }, column) =>
    choices === undefined ? [] : [{ row: top + 1, column, rows: rowsWithChoices, columns: 1, from: choices }],
  );
  return {
    name,
    cells: [[title(name)], [quiet(says)], columns.map((column) => heading(column.heading)), ...rows],
    frozenRows: top + 1,
    ...(frozenColumns !== undefined && { frozenColumns }),
    columnWidths: columns.map((column, i) =>
      widthOf(
        column,
        rows.map((row) => row[i]?.value),
      ),
    ),
    tables: [{ name: table, row: top, column: 0, rows: rows.length + 1, columns: columns.length }],
    ...(notes.length > 0 && { notes }),
    ...(pickLists.length > 0 && { pickLists }),
  };
}

/** Width in pixels that holds the heading, with room for a filter button, and the longest text below it. */
function widthOf(column: TableColumn, values: readonly CellContent["value"][]): number {
  const letters = values.map((value) => (typeof value === "string" ? value.length : 0));
  const longest = Math.max(column.heading.length + 4, column.letters ?? 0, ...letters);
  return Math.max(narrowest, Math.round(longest * pixelsPerLetter));
}

/** Words of a yes or a no. */
export const yesOrNo = ["yes", "no"] as const;
