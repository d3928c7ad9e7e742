import { useEffect, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import type { RangeData, TableInfo, Workbook } from "../../addin/workbook/port.ts";
import { findFitTables } from "../fit/fitTables.ts";
import { failureText } from "../notice.ts";
import { useSession } from "../session.ts";
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
  /** Tables that may be charts. */
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
    const tables = findFitTables(all).figures.filter((t) => t.name !== confirmedTable);
    const remembered = all.find((t) => t.name === confirmedTable);
    const confirmations = remembered && {
      table: remembered,
      data: await workbook.readTable(remembered.name),
    };
    const confirmed = confirmations ? readConfirmed(confirmations.data.values) : [];
    const known = { tables, sheets, confirmations, confirmed };
    const table = chartAmong(tables, chosen);
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

/** The chosen table, else Figures, else the first. */
function chartAmong(tables: readonly TableInfo[], chosen: string | undefined): TableInfo | undefined {
  const named = (name: string | undefined): TableInfo | undefined =>
    tables.find((t) => t.name.toLowerCase() === name?.toLowerCase());
  return named(chosen) ?? named("Figures") ?? tables[0];
}

/** The check of the chosen table, kept up to date with the workbook. `undefined` until the first one is done. */
export function useCheck(chosen: string | undefined): Check | undefined {
  const { workbook, version } = useSession();
  const [check, setCheck] = useState<Check>();
  useEffect(() => {
    let current = true;
    void checkWorkbook(workbook, chosen).then((next) => {
      if (current) setCheck(next);
    });
    return () => {
      current = false;
    };
  }, [workbook, version, chosen]);
  return check;
}
