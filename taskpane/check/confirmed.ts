import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { cellText, isBlank } from "../../addin/chart/cell.ts";
import { figureKey } from "../../addin/chart/find.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { headingKey } from "../../addin/measures/headingKey.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";
import { fromMm } from "../../addin/measures/units.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import type { KeptNow, KeptTable } from "./keptRows.ts";
import { addRows } from "./keptRows.ts";

/** Readings that the user has confirmed stand in a table of their own, in plain sight. */
export const confirmedTable = "ConfirmedReadings";
const headings = ["Figure", "Measure", "Reading", "Confirmed"] as const;
const keptConfirmed: KeptTable = {
  name: confirmedTable,
  sheet: "Confirmed readings",
  says: "Readings that look wrong and are right. Empty a row to have its reading checked again.",
  headings,
  widths: [160, 160, 112, 112],
};

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
 * The edits that remember one confirmed reading.
 *
 * @param date ISO date, for example 2025-03-01
 */
export function confirm(
  row: Pick<Confirmed, "figure" | "measure" | "reading">,
  date: string,
  now: KeptNow,
): readonly Edit[] {
  const values = [row.figure, row.measure, row.reading, date].map((value) =>
    value === "" ? undefined : value,
  );
  return addRows(keptConfirmed, [values], now);
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
