import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo, Workbook } from "../../addin/workbook/port.ts";
import { chartTables } from "../chartTables.ts";
import { chartTable } from "../import/planEdits.ts";
import { failureText } from "../notice.ts";
import { useRead } from "../useRead.ts";
import type { Confirmed } from "./confirmed.ts";
import { confirmedTable, isConfirmed, readConfirmed } from "./confirmed.ts";

/** A chart as checked, and what has been confirmed about it. */
export interface CheckedChart {
  readonly table: TableInfo;
  readonly data: RangeData;
  readonly chart: Chart;
  /** Worst first, without confirmed ones. */
  readonly flags: readonly Flag[];
}

export interface Check {
  /** Tables that can be charts. */
  readonly tables: readonly TableInfo[];
  readonly sheets: readonly string[];
  readonly checked: CheckedChart | undefined;
  readonly confirmed: readonly Confirmed[];
  /** The table of confirmed readings with its cells, once there is one. */
  readonly confirmations: { readonly table: TableInfo; readonly data: RangeData } | undefined;
  /** Why the chart could not be checked, in words. */
  readonly failure: string | undefined;
}

/** Reads and checks a chart. Never rejects: what fails is said in the result. */
export async function checkWorkbook(workbook: Workbook, chosen: string | undefined): Promise<Check> {
  const nothing = { tables: [], sheets: [], checked: undefined, confirmed: [], confirmations: undefined };
  try {
    const all = await workbook.tables();
    const sheets = await workbook.sheets();
    const tables = chartTables(all);
    const remembered = all.find((t) => t.name === confirmedTable);
    const confirmations = remembered && {
      table: remembered,
      data: await workbook.readTable(remembered.name),
    };
    const confirmed = confirmations ? readConfirmed(confirmations.data.values) : [];
    const known = { tables, sheets, confirmations, confirmed };
    const table = tableNamed(all, chosen) ?? tableNamed(tables, chartTable) ?? tables[0];
    if (!table) return { ...known, checked: undefined, failure: undefined };
    try {
      const data = await workbook.readTable(table.name);
      const chart = readChart(data.values, { formats: data.formats });
      const flags = checkChart(chart).filter(
        (flag) => !isConfirmed(flag, data.values[flag.row]?.[flag.column], confirmed),
      );
      return { ...known, checked: { table, data, chart, flags }, failure: undefined };
    } catch (error) {
      return { ...known, checked: undefined, failure: `Table ${table.name}: ${failureText(error)}` };
    }
  } catch (error) {
    return { ...nothing, failure: failureText(error) };
  }
}

function tableNamed(tables: readonly TableInfo[], name: string | undefined): TableInfo | undefined {
  return name === undefined ? undefined : tables.find((table) => sameName(table.name, name));
}

/** The check of the chosen table, kept up to date with the workbook. `undefined` until the first one is done. */
export function useCheck(chosen: string | undefined): Check | undefined {
  return useRead(checkWorkbook, chosen);
}
