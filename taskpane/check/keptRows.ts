import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { isBlank } from "../../addin/chart/cell.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";

/** A table in plain sight that the pane adds rows to, and makes when it is first needed. */
export interface KeptTable {
  readonly name: string;
  /** Name of its sheet, and the title on it. */
  readonly sheet: string;
  /** What it is for, in one line. */
  readonly says: string;
  readonly headings: readonly string[];
  /** Pixels. */
  readonly widths: readonly number[];
}

/** The table as it is in the workbook; `table` is undefined where there is none yet. */
export interface KeptNow {
  readonly table: TableInfo | undefined;
  readonly cells: Cells;
  readonly sheets: readonly string[];
}

/** The edits that add rows: in the free rows of the table, in new rows, or in a new sheet when there is no table yet. */
export function addRows(kept: KeptTable, rows: readonly (readonly Cell[])[], now: KeptNow): readonly Edit[] {
  const { table, cells, sheets } = now;
  if (rows.length === 0) return [];
  if (!table) return [newSheet(kept, rows, sheets)];
  const { area } = table;
  const free = cells.flatMap((line, i) =>
    i > 0 && line.slice(0, kept.headings.length).every(isBlank) ? [i] : [],
  );
  const below = rows.slice(free.length).map((row) => Array.from({ length: area.columns }, (_, c) => row[c]));
  return [
    ...rows.slice(0, free.length).map((row, i): Edit => ({
      kind: "cells",
      at: { sheet: area.sheet, row: area.row + (free[i] ?? 0), column: area.column },
      cells: [row.map((value) => ({ value }))],
    })),
    ...(below.length > 0 ? [{ kind: "rows" as const, table: table.name, rows: below }] : []),
  ];
}

function newSheet(
  { name, sheet, says, headings, widths }: KeptTable,
  rows: readonly (readonly Cell[])[],
  sheets: readonly string[],
): Edit {
  return {
    kind: "sheet",
    sheet: {
      name: freeName(sheet, sheets),
      cells: [
        [{ value: sheet, style: "title" }],
        [{ value: says, style: "quiet" }],
        headings.map((value) => ({ value })),
        ...rows.map((row) => row.map((value) => ({ value }))),
      ],
      frozenRows: 3,
      columnWidths: widths,
      tables: [{ name, row: 2, column: 0, rows: rows.length + 1, columns: headings.length }],
    },
  };
}
