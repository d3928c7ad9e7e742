import type { Chart } from "../../addin/chart/chart.ts";
import { readChart, requireUnits } from "../../addin/chart/readChart.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { Book } from "./book.ts";

/** The chart in a table. @throws {InputError} where it holds none, or where the unit of no column is known */
export function chartIn(book: Book, data: Pick<RangeData, "values" | "formats">): Chart {
  return requireUnits(chartToCheck(book, data));
}

/** The same, also where the units have to be asked about. @throws {InputError} where a table holds no chart */
export function chartToCheck(book: Book, { values, formats }: Pick<RangeData, "values" | "formats">): Chart {
  return book.once(chartOf, values, formats);
}

function chartOf(values: RangeData["values"], formats: RangeData["formats"]): Chart {
  return readChart(values, { formats });
}

/** A chart as it stands in a table. */
export interface TableChart {
  readonly table: TableInfo;
  readonly data: RangeData;
  readonly chart: Chart;
}
