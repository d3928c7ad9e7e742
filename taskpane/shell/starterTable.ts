import type { Cells } from "../../addin/chart/cell.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { freeName } from "./freeName.ts";

/** Names that are taken in the workbook. */
export interface TakenNames {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
}

/** A new sheet with one table: the edit, and the names that it got. */
export interface StarterTable {
  readonly sheet: string;
  readonly table: string;
  readonly edits: readonly Edit[];
}

/**
 * Plans a table for the user to fill or change, on a sheet of its own.
 *
 * @param title of the sheet, also its name where that is free
 * @param wanted name of the table, where that is free
 */
export function starterTable(
  title: string,
  wanted: string,
  taken: TakenNames,
  content: { readonly says: string; readonly cells: Cells; readonly widths: readonly number[] },
): StarterTable {
  const sheet = freeName(title, taken.sheets);
  const table = freeName(wanted, taken.tables, "_");
  const { says, cells, widths } = content;
  return {
    sheet,
    table,
    edits: [
      {
        kind: "sheet",
        sheet: {
          name: sheet,
          cells: [
            [{ value: title, style: "title" }],
            [{ value: says, style: "quiet" }],
            ...cells.map((row) => row.map((value) => (value === undefined ? undefined : { value }))),
          ],
          frozenRows: 3,
          frozenColumns: 1,
          columnWidths: widths,
          tables: [{ name: table, row: 2, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 }],
        },
      },
    ],
  };
}
