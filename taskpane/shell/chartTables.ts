import type { Cells } from "../../addin/chart/cell.ts";
import { isBlank } from "../../addin/chart/cell.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { findFitTables, hasMeasures } from "../fit/fitTables.ts";
import { chartTable } from "../import/planEdits.ts";

/**
 * The tables that can be measurement charts, in the order of the workbook: names in the first column, and the heading of
 * a known measure beside it. The table Figures always counts, so that what is wrong with it can be said.
 */
export function chartTables(tables: readonly TableInfo[]): readonly TableInfo[] {
  const figures = new Set(findFitTables(tables).figures);
  return tables.filter(
    (table) => sameName(table.name, chartTable) || (figures.has(table) && hasMeasures(table)),
  );
}

/** True where a chart has its headings, and no name below them yet. */
export function isEmptyChart(cells: Cells): boolean {
  return cells.slice(1).every(([name]) => isBlank(name));
}
