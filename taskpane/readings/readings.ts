import type { Cell, Cells } from "../../addin/chart/cell.ts";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { TakenReadings } from "../../addin/chart/readReadings.ts";
import { readingsColumns, readingsHeadings, readReadings } from "../../addin/chart/readReadings.ts";
import type { ChartFeed } from "../../addin/checking/repeatability.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { fromMm } from "../../addin/measures/units.ts";
import { readingsSheet } from "../../addin/demo/sheets/readings.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Edit, RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { KeptNow, KeptTable } from "../check/keptRows.ts";
import { addRows } from "../check/keptRows.ts";
import { freeName } from "../shell/freeName.ts";
import type { Book } from "../shell/book.ts";
import { failureText } from "../shell/notice.ts";

/** The name of the table in which every reading is kept, one a row. */
export const readingsTable = "Readings";

/** The table Readings as it stands. */
export interface KnownReadings {
  /** `undefined` where there is none: it is made when it is first written to. */
  readonly table: TableInfo | undefined;
  readonly cells: Cells;
  readonly taken: TakenReadings;
  /** Why it could not be read, in words. */
  readonly failure: string | undefined;
}

const none: TakenReadings = { readings: [], problems: [] };
const noTable: KnownReadings = { table: undefined, cells: [], taken: none, failure: undefined };

/** Never rejects: a table that cannot be read is said, and a chart can do without it. */
export async function readKnownReadings(book: Book, chart: Chart): Promise<KnownReadings> {
  try {
    const table = (await book.tables()).find(({ name }) => sameName(name, readingsTable));
    if (!table) return noTable;
    const { values, formats } = await book.readTable(table.name);
    return book.once(knownIn, table, values, formats, chart);
  } catch (error) {
    return { ...noTable, failure: failureText(error) };
  }
}

function knownIn(
  table: TableInfo,
  cells: RangeData["values"],
  formats: RangeData["formats"],
  chart: Chart,
): KnownReadings {
  try {
    return { table, cells, taken: readReadings(cells, chart, { formats }), failure: undefined };
  } catch (error) {
    return { table, cells, taken: none, failure: `Table ${table.name}: ${failureText(error)}` };
  }
}

/** A reading that is to be kept. */
export interface NewReading {
  readonly figure: string;
  readonly column: MeasureColumn;
  readonly mm: number;
  readonly date: string;
  readonly by: string;
  readonly tool: string;
}

/**
 * The edits that keep readings: rows of the table, which is made where there is none.
 *
 * @param unit of the heading of a table that is made
 */
export function keepReadings(
  readings: readonly NewReading[],
  now: KeptNow,
  unit: LengthUnit,
): readonly Edit[] {
  const there = now.table && readingsColumns(now.cells);
  const heading = there?.reading.heading;
  const rows = readings.map((each): readonly Cell[] => {
    // Where the heading states no unit, a number is in that of the measure.
    const inUnit = heading?.unitStated === false ? each.column.unit : (heading?.unit ?? unit);
    const values: readonly Cell[] = [
      ...[each.figure, each.column.heading, Number(fromMm(each.mm, inUnit).toFixed(4))],
      ...[each.date, each.by, each.tool].map((text) => (text === "" ? undefined : text)),
    ];
    if (!there) return values;
    const places = [there.figure, there.measure, there.reading, there.date, there.by, there.tool];
    const row: Cell[] = [];
    for (const [i, place] of places.entries()) if (place) row[place.position] = values[i];
    return Array.from(row);
  });
  if (rows.length > 0 && !now.table) return [newTable(rows, now.sheets, unit)];
  return addRows(readingsKept, rows, now);
}

/** A new table has no lists to choose from: what those name may not be there. */
function newTable(rows: readonly (readonly Cell[])[], sheets: readonly string[], unit: LengthUnit): Edit {
  const sheet = readingsSheet(
    unit,
    rows.map((row) => row.map((value) => ({ value }))),
  );
  return { kind: "sheet", sheet: { ...sheet, name: freeName(readingsTable, sheets), pickLists: [] } };
}

const readingsKept: KeptTable = {
  ...{ name: readingsTable, sheet: readingsTable, says: "" },
  ...{ headings: readingsHeadings, widths: [] },
};

/** The cells of the chart that are to hold what its readings come to. */
export function feedEdits(changes: ChartFeed["changes"], chart: Chart, { area }: TableInfo): readonly Edit[] {
  return changes.map(({ figure, column, mm }) => ({
    kind: "cells",
    at: {
      sheet: area.sheet,
      row: area.row + (chart.rows[figure] ?? 0),
      column: area.column + column.position,
    },
    cells: [[{ value: Number(fromMm(mm, column.unit).toFixed(4)) }]],
  }));
}

/** How a length of the chart came about, to follow it: “the mean of 2 readings”. */
export function settledWords(how: "one" | "mean" | "median", readings: number): string {
  if (how === "one") return "the one reading";
  return how === "mean" ? "the mean of both readings" : `the middle one of ${String(readings)} readings`;
}
