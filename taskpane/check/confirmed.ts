import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { cellText, isBlank } from "../../addin/chart/cell.ts";
import { figureKey } from "../../addin/chart/find.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { headingKey } from "../../addin/measures/headingKey.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";
import { fromMm } from "../../addin/measures/units.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";

/** Readings that the user has confirmed stand in a table of their own, in plain sight. */
export const confirmedTable = "ConfirmedReadings";
const confirmedSheet = "Confirmed readings";
const headings = ["Figure", "Measure", "Reading", "Confirmed"] as const;

/** One row of the table. */
export interface Confirmed {
  /** Row within the table, from 0 (row 0 is the headings). */
  readonly row: number;
  readonly figure: string;
  readonly measure: string;
  readonly reading: string;
  readonly date: string;
}

/** The rows of the table that hold something. */
export function readConfirmed(cells: Cells): readonly Confirmed[] {
  return cells.flatMap((row, i) => {
    if (i === 0 || row.slice(0, 3).every(isBlank)) return [];
    const [figure, measure, reading, date] = headings.map((_, c) => cellText(row[c]));
    return [
      { row: i, figure: figure ?? "", measure: measure ?? "", reading: reading ?? "", date: date ?? "" },
    ];
  });
}

/** What is confirmed about a flag: the reading of one cell, or the flag itself where it is about a whole row or column. */
export function confirmationOf(flag: Flag, cell: Cell): Pick<Confirmed, "figure" | "measure" | "reading"> {
  const reading =
    flag.readingMm === undefined
      ? cellText(flag.measure === "" ? undefined : cell)
      : `${String(Number(fromMm(flag.readingMm, flag.unit).toPrecision(9)))} ${flag.unit}`;
  return { figure: flag.figure, measure: flag.measure || `(${flag.kind})`, reading };
}

/** What was confirmed, in one line: “Mira, Waist, 78.5 mm”; “Mira, row twice”. */
export function confirmedWords({ figure, measure, reading }: Omit<Confirmed, "row" | "date">): string {
  return [figure, measure.replace(/^\((.*)\)$/, "$1"), reading].filter((text) => text !== "").join(", ");
}

/** True while the reading is the one that was confirmed; it may have moved to another row or unit meanwhile. */
export function isConfirmed(flag: Flag, cell: Cell, confirmed: readonly Confirmed[]): boolean {
  const { figure, measure, reading } = confirmationOf(flag, cell);
  return confirmed.some(
    (row) =>
      figureKey(row.figure) === figureKey(figure) &&
      headingKey(row.measure) === headingKey(measure) &&
      sameReading(row.reading, reading),
  );
}

function sameReading(a: string, b: string): boolean {
  const one = parseReading(a, { unit: "mm" });
  const other = parseReading(b, { unit: "mm" });
  return one.kind === "length" && other.kind === "length"
    ? Math.abs(one.mm - other.mm) < 1e-4
    : a.trim() === b.trim();
}

/**
 * The edits that remember one confirmed reading: in the first free row of the table, in a new row, or in a new sheet
 * when there is no table yet.
 *
 * @param date ISO date, for example 2025-03-01
 */
export function confirm(
  row: Pick<Confirmed, "figure" | "measure" | "reading">,
  date: string,
  workbook: {
    readonly table: TableInfo | undefined;
    readonly cells: Cells;
    readonly sheets: readonly string[];
  },
): readonly Edit[] {
  const { table, cells, sheets } = workbook;
  const values = [row.figure, row.measure, row.reading, date].map((value) =>
    value === "" ? undefined : value,
  );
  if (!table) return [newSheet(values, sheets)];
  const free = cells.findIndex((line, i) => i > 0 && line.slice(0, headings.length).every(isBlank));
  if (free < 0)
    return [
      {
        kind: "rows",
        table: table.name,
        rows: [Array.from({ length: table.area.columns }, (_, c) => values[c])],
      },
    ];
  return [{ kind: "cells", at: at(table, free), cells: [values.map((value) => ({ value }))] }];
}

/** The edits that forget one confirmed reading. Its row stays, empty, for the next one. */
export function takeBack(confirmed: Confirmed, table: TableInfo): readonly Edit[] {
  return [
    { kind: "cells", at: at(table, confirmed.row), cells: [headings.map(() => ({ value: undefined }))] },
  ];
}

function at({ area }: TableInfo, row: number): { sheet: string; row: number; column: number } {
  return { sheet: area.sheet, row: area.row + row, column: area.column };
}

function newSheet(values: readonly Cell[], sheets: readonly string[]): Edit {
  return {
    kind: "sheet",
    sheet: {
      name: freeName(confirmedSheet, sheets),
      cells: [
        [{ value: confirmedSheet, style: "title" }],
        [
          {
            value: "Readings that look wrong and are right. Empty a row to have its reading checked again.",
            style: "quiet",
          },
        ],
        headings.map((value) => ({ value })),
        values.map((value) => ({ value })),
      ],
      frozenRows: 3,
      columnWidths: [160, 160, 112, 112],
      tables: [{ name: confirmedTable, row: 2, column: 0, rows: 2, columns: headings.length }],
    },
  };
}
