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
/** In long texts wide and narrow letters make up for one another. */
const pixelsPerLongLetter = 6.5;
const usualLetters = 40;
/** Letters, beyond which a text wraps. */
const longestLine = 90;
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
    cells: [
      [title(name)],
      [quiet(says)],
      columns.map((column) => heading(column.heading)),
      ...rows.map((row) => row.map(wrapped)),
    ],
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

/** Width in pixels that holds the heading in one line, with room for a filter button, and the texts below it. */
function widthOf(column: TableColumn, values: readonly CellContent["value"][]): number {
  const letters = values.map((value) => (typeof value === "string" ? value.length : 0));
  const longest = Math.min(longestLine, Math.max(column.heading.length + 4, column.letters ?? 0, ...letters));
  const wide = Math.max(0, longest - usualLetters);
  return Math.max(narrowest, Math.round((longest - wide) * pixelsPerLetter + wide * pixelsPerLongLetter));
}

function wrapped(cell: CellContent | undefined): CellContent | undefined {
  const isLong = typeof cell?.value === "string" && cell.value.length > longestLine;
  return isLong ? { ...cell, style: "wrap" } : cell;
}

/** Words of a yes or a no. */
export const yesOrNo = ["yes", "no"] as const;
