import { isBlank } from "../../addin/chart/cell.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { hasMeasures } from "../fit/fitTables.ts";
import { chartTable } from "../import/planEdits.ts";
import type { Book } from "./book.ts";
import { chartTables } from "./chartTables.ts";

/** How far a workbook has come, as far as what can be answered depends on it. */
export type Start =
  | { readonly kind: "no chart" }
  | { readonly kind: "no figures"; readonly table: TableInfo }
  /** None of its headings is a measure that Measure Book knows. */
  | { readonly kind: "no measures"; readonly table: TableInfo; readonly others: readonly string[] }
  | { readonly kind: "one figure"; readonly table: TableInfo; readonly figure: string }
  | { readonly kind: "figures" }
  /** What failed is said where it is read for an answer. */
  | { readonly kind: "failed" };

/** Looks how far the workbook has come. Of several charts the one that has come farthest counts. Never rejects. */
export async function readStart(book: Book): Promise<Start> {
  try {
    const charts = book.once(chartTables, await book.tables());
    const starts = await Promise.all(charts.map((table) => startOf(book, table)));
    const isUsual = (start: Start): boolean => "table" in start && sameName(start.table.name, chartTable);
    const [first] = starts.toSorted(
      (a, b) =>
        farthest.indexOf(a.kind) - farthest.indexOf(b.kind) || Number(isUsual(b)) - Number(isUsual(a)),
    );
    return first ?? { kind: "no chart" };
  } catch {
    return { kind: "failed" };
  }
}

const farthest: readonly Start["kind"][] = [
  "figures",
  "one figure",
  "no figures",
  "no measures",
  "failed",
  "no chart",
];

async function startOf(book: Book, table: TableInfo): Promise<Start> {
  const { values } = await book.readTable(table.name);
  const names = values.slice(1).flatMap(([name]) => (isBlank(name) ? [] : [String(name)]));
  const [figure] = names;
  if (figure === undefined) return { kind: "no figures", table };
  if (!hasMeasures(table)) return { kind: "no measures", table, others: table.headings.slice(1) };
  return names.length === 1 ? { kind: "one figure", table, figure } : { kind: "figures" };
}
