import { findChart } from "../../addin/chart/import/findChart.ts";
import { demoTitle } from "../../addin/demo/title.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Area, TableInfo } from "../../addin/workbook/port.ts";
import { usualSecond } from "../groups/secondReadings.ts";
import { chartTable } from "../import/planEdits.ts";
import type { Book } from "../shell/book.ts";
import { chartTables, isEmptyChart } from "../shell/chartTables.ts";
import { failureText } from "../shell/notice.ts";

/** A chart that stands on a sheet as plain cells. */
export interface SheetChart {
  readonly area: Area;
  readonly figures: number;
  readonly measures: number;
  /** What is to be written into its first row, where its headings stand over two rows or their units below. */
  readonly headings?: readonly string[];
  /** Rows below it that look like figures and are not in it. */
  readonly leftOut: number;
}

/** What the workbook is, as far as the first step depends on it. */
export type Holding =
  | {
      readonly kind: "no chart";
      readonly found: readonly SheetChart[];
      readonly sheets: readonly string[];
      readonly tables: readonly string[];
    }
  | { readonly kind: "no figures"; readonly table: TableInfo }
  | {
      readonly kind: "chart";
      readonly table: TableInfo;
      /** Other charts of the workbook, of which nothing is said here. */
      readonly others: readonly TableInfo[];
      readonly isDemo: boolean;
    }
  | { readonly kind: "failed"; readonly why: string };

/** Larger sheets are not looked through: they hold something else, and would keep the page waiting. */
const mostCells = 200_000;
const mostSheets = 50;

/** Looks for a chart: a table of one, else cells that could be one. Never rejects: what fails is said in the result. */
export async function readHome(book: Book): Promise<Holding> {
  try {
    const all = await book.tables();
    const charts = book.once(chartTables, all);
    const table = charts.find(({ name }) => sameName(name, chartTable)) ?? charts[0];
    const sheets = await book.sheets();
    if (!table) {
      const found = await chartsOnSheets(book, sheets, all);
      return { kind: "no chart", found, sheets, tables: all.map(({ name }) => name) };
    }
    const { values } = await book.readTable(table.name);
    if (isEmptyChart(values)) return { kind: "no figures", table };
    const others = charts.filter((chart) => chart !== table && !sameName(chart.name, usualSecond));
    return { kind: "chart", table, others, isDemo: await isDemo(book, sheets[0]) };
  } catch (error) {
    return { kind: "failed", why: failureText(error) };
  }
}

async function chartsOnSheets(
  book: Book,
  sheets: readonly string[],
  tables: readonly TableInfo[],
): Promise<readonly SheetChart[]> {
  const found: SheetChart[] = [];
  const plain = sheets.filter((sheet) => !tables.some(({ area }) => sameName(area.sheet, sheet)));
  for (const sheet of plain.slice(0, mostSheets)) {
    const used = await book.usedArea(sheet);
    if (!used || used.rows * used.columns > mostCells) continue;
    const chart = findChart((await book.readArea(used)).values);
    if (!chart) continue;
    const { row, column, rows, columns, ...says } = chart;
    const area = { sheet, row: used.row + row, column: used.column + column, rows, columns };
    found.push({ area, ...says });
  }
  return found;
}

async function isDemo(book: Book, first: string | undefined): Promise<boolean> {
  if (first === undefined) return false;
  const title = await book.readArea({ sheet: first, row: 0, column: 0, rows: 1, columns: 1 });
  return title.values[0]?.[0] === demoTitle;
}
