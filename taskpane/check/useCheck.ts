import { useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { Book } from "../shell/book.ts";
import { chartToCheck } from "../shell/chartIn.ts";
import { chartTables } from "../shell/chartTables.ts";
import { chartTable } from "../import/planEdits.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import type { Working } from "../work/useJob.ts";
import { useJob } from "../work/useJob.ts";
import type { CheckJob } from "./checkJob.ts";
import type { Confirmed } from "./confirmed.ts";
import { correctionsTable } from "./corrections.ts";
import { confirmedTable, isConfirmed, readConfirmed } from "./confirmed.ts";
import type { TableChart } from "../shell/chartIn.ts";
import type { JobAnswer } from "../work/job.ts";

/** A chart as checked, and what has been confirmed about it. */
export interface CheckedChart extends TableChart {
  /** Worst first, without confirmed ones. */
  readonly flags: readonly Flag[];
}

interface Known {
  /** Tables that can be charts. */
  readonly tables: readonly TableInfo[];
  readonly sheets: readonly string[];
  readonly confirmed: readonly Confirmed[];
  /** The table of confirmed readings with its cells, once there is one. */
  readonly confirmations: { readonly table: TableInfo; readonly data: RangeData } | undefined;
  /** The table of corrections with its cells, once there is one. */
  readonly corrections: { readonly table: TableInfo; readonly data: RangeData } | undefined;
  /** Why the chart could not be read or checked, in words. */
  readonly failure: string | undefined;
}

/** What there is to check. */
export interface ToCheck extends Known {
  readonly found: TableChart | undefined;
}

export interface Check extends Known {
  readonly checked: CheckedChart | undefined;
}

/** Reads the chart and what was confirmed. Never rejects: what fails is said in the result. */
export async function readToCheck(book: Book, chosen: string | undefined): Promise<ToCheck> {
  const nothing = {
    ...{ tables: [], sheets: [], found: undefined, confirmed: [] },
    ...{ confirmations: undefined, corrections: undefined },
  };
  try {
    const all = await book.tables();
    const sheets = await book.sheets();
    const tables = book.once(chartTables, all);
    const kept = async (name: string) => {
      const table = all.find((t) => t.name === name);
      return table && book.once(tableWithCells, table, await book.readTable(table.name));
    };
    const confirmations = await kept(confirmedTable);
    const corrections = await kept(correctionsTable);
    const confirmed = confirmations ? book.once(readConfirmed, confirmations.data.values) : none;
    const known = { tables, sheets, confirmations, corrections, confirmed };
    const table = tableNamed(all, chosen) ?? tableNamed(tables, chartTable) ?? tables[0];
    if (!table) return { ...known, found: undefined, failure: undefined };
    try {
      const data = await book.readTable(table.name);
      const found = book.once(tableChart, table, data, chartToCheck(book, data));
      return { ...known, found, failure: undefined };
    } catch (error) {
      return { ...known, found: undefined, failure: `Table ${table.name}: ${failureText(error)}` };
    }
  } catch (error) {
    return { ...nothing, failure: failureText(error) };
  }
}

const none: readonly Confirmed[] = [];

function tableWithCells(table: TableInfo, data: RangeData) {
  return { table, data };
}

function tableChart(table: TableInfo, data: RangeData, chart: Chart): TableChart {
  return { table, data, chart };
}

function tableNamed(tables: readonly TableInfo[], name: string | undefined): TableInfo | undefined {
  return name === undefined ? undefined : tables.find((table) => sameName(table.name, name));
}

/** What was read, with the flags of its chart that nobody has confirmed. */
export function checkOf(toCheck: ToCheck, flags: readonly Flag[], open = openFlags): Check {
  const { found, ...known } = toCheck;
  return { ...known, checked: found && { ...found, flags: open(flags, found.data, known.confirmed) } };
}

function openFlags(
  flags: readonly Flag[],
  { values }: RangeData,
  confirmed: readonly Confirmed[],
): readonly Flag[] {
  return flags.filter((flag) => !isConfirmed(flag, values[flag.row]?.[flag.column], confirmed));
}

/**
 * The check of the chosen table, kept up to date with the workbook: the last one that was finished, `undefined` until the
 * first is; and how far the next one is.
 */
export function useCheck(chosen: string | undefined): {
  readonly check: Check | undefined;
  readonly working: Working<readonly Flag[]>;
  /** How many figures are being checked. */
  readonly figures: number;
} {
  const { book } = useSession();
  const toCheck = useRead(readToCheck, chosen);
  const chart = toCheck?.found?.chart;
  const job = useMemo((): CheckJob | undefined => chart && { kind: "check", chart }, [chart]);
  const working = useJob(job, flagsIn);
  const { answer, failure } = working;
  const next = useMemo((): Check | undefined => {
    if (!toCheck) return undefined;
    if (failure !== undefined) return { ...toCheck, checked: undefined, failure };
    if (!toCheck.found) return checkOf(toCheck, []);
    const open: typeof openFlags = (...given) => book.once(openFlags, ...given);
    return answer && checkOf(toCheck, answer, open);
  }, [toCheck, answer, failure, book]);
  const [last, setLast] = useState<Check>();
  if (next && next !== last) setLast(next);
  return { check: next ?? last, working, figures: chart?.figures.length ?? 0 };
}

/**
 * The doubts about the readings of a chart, for answers that rest on them: one check for each version of the book, whoever
 * asks. `undefined` while it is being checked. What somebody has confirmed is no doubt.
 *
 * @param chart as read from the table, its estimates counted or not
 */
export function useDoubts(table: TableInfo | undefined, chart: Chart): readonly Doubt[] | undefined {
  const { book } = useSession();
  const checked = useCheck(table?.name).check?.checked;
  // Of one reading of the table, whatever has become of its columns since.
  const isOfChart = checked?.chart.rows === chart.rows;
  return checked && isOfChart ? book.once(doubts, checked.chart, checked.flags) : undefined;
}

export function flagsIn(answer: JobAnswer): readonly Flag[] | undefined {
  return answer.kind === "check" ? answer.flags : undefined;
}
