import { InputError } from "../../measures/inputError.ts";
import { sheetLimit } from "../address.ts";
import { sameName } from "../names.ts";
import type { Area, Edit, TableInfo } from "../port.ts";
import { rangeOf, textsOf } from "./ranges.ts";
import { operation, send, supports, type Operation } from "./requests.ts";
import { loadTables } from "./shape.ts";

/**
 * How a table gets new rows:
 * - `"below"`: they are written right below it, and Excel makes them part of it;
 * - `"inserted"`: the same, after what stands below was moved out of the way;
 * - `"added"`: `rows.add`, for a table with totals and in an Excel that cannot resize tables (before ExcelApi 1.13).
 *
 * Microsoft, “Coauthoring in Excel add-ins”: `rows.add` is in conflict with what others edit at the same time; values
 * set directly below a table expand it without that, after `Range.insert` where something stands below.
 */
export type GrowthWay = "below" | "inserted" | "added";

/** A table that is about to get rows, and what new rows take over from its last one. */
export interface Growth {
  readonly table: TableInfo;
  /** How many rows it gets. */
  readonly rows: number;
  readonly way: GrowthWay;
  /** Where the new rows come. */
  readonly gap: Area;
  /** The last used row below the table, from 0; −1 where nothing stands below. */
  readonly lastBelow: number;
  readonly formats: readonly string[];
  /** In R1C1 notation, in which a formula reads the same in every row; `undefined` where the last row holds none. */
  readonly formulas: readonly (string | undefined)[];
}

/** Look at the tables that edits give rows to, before they do. Takes one request. */
export async function findGrowths(
  context: Excel.RequestContext,
  edits: readonly Edit[],
  tableOf: (name: string) => TableInfo,
): Promise<readonly Growth[]> {
  const growing = edits.flatMap((edit) =>
    edit.kind === "rows" && edit.rows.length > 0
      ? [{ table: tableOf(edit.table), rows: edit.rows.length }]
      : [],
  );
  if (growing.length === 0) return [];
  const found = growing.map(({ table, rows }) => {
    const { area } = table;
    const item = context.workbook.tables.getItem(table.name);
    item.load("showTotals");
    const { autoFilter } = item;
    autoFilter.load("isDataFiltered");
    const last = rangeOf(context, { ...area, row: area.row + area.rows - 1, rows: 1 });
    last.load(["numberFormat", "formulasR1C1"]);
    const below = usedBelow(context, area);
    return { table, rows, item, autoFilter, last, below };
  });
  await context.sync();
  return found.map(({ table, rows, item, autoFilter, last, below }) => {
    const lastBelow = below.isNullObject ? -1 : below.rowIndex + below.rowCount - 1;
    const way: GrowthWay =
      item.showTotals || !supports("1.13") ? "added" : lastBelow >= 0 ? "inserted" : "below";
    if (way !== "below" && autoFilter.isDataFiltered) {
      throw new InputError(
        `The table “${table.name}” is filtered, and there is no room right below it. Clear its filter, then try again.`,
      );
    }
    return {
      table,
      rows,
      way,
      gap: { ...table.area, row: table.area.row + table.area.rows, rows },
      lastBelow,
      formats: textsOf(last.numberFormat)[0] ?? [],
      formulas: (last.formulasR1C1[0] ?? []).map((formula: unknown) =>
        typeof formula === "string" && formula.startsWith("=") ? formula : undefined,
      ),
    };
  });
}

/** The used part of a table’s columns below it. */
export function usedBelow(context: Excel.RequestContext, { rows, ...area }: Area): Excel.Range {
  const row = area.row + rows;
  const below = rangeOf(context, {
    ...area,
    row: Math.min(row, sheetLimit.rows - 1),
    rows: Math.max(1, sheetLimit.rows - row),
  }).getUsedRangeOrNullObject(true);
  below.load(["rowIndex", "rowCount"]);
  return below;
}

/**
 * Make rows that were written below tables part of them where Excel has not done so: blank rows never, others not
 * where the user has turned that off.
 */
export async function finishGrowths(
  context: Excel.RequestContext,
  growths: readonly Growth[],
): Promise<void> {
  const written = growths.filter(({ way }) => way !== "added");
  if (written.length === 0) return;
  const now = written.map((growth) => {
    const range = context.workbook.tables.getItem(growth.table.name).getRange();
    range.load("rowCount");
    return { growth, range };
  });
  await context.sync();
  const short = now.filter(({ growth: { table, rows }, range }) => range.rowCount < table.area.rows + rows);
  if (short.length === 0) return;
  for (const { growth } of short) {
    resizeTable(context, growth.table, growth.table.area.rows + growth.rows);
  }
  await context.sync();
}

/**
 * Bring tables back to their size that have taken in what was written beside them.
 *
 * @param asides what brings back the cells there that Excel may have filled then
 */
export async function keepSizes(
  context: Excel.RequestContext,
  neighbours: readonly TableInfo[],
  asides: readonly Operation[],
): Promise<void> {
  if (neighbours.length === 0 || !supports("1.13")) return;
  const tables = await loadTables(context);
  const grown = neighbours.filter(({ name, area }) => {
    const now = tables.find((table) => sameName(table.name, name))?.area;
    return now && (now.rows > area.rows || now.columns > area.columns);
  });
  if (grown.length === 0) return;
  await send(context, [
    ...grown.map((table) =>
      operation(() => {
        resizeTable(context, table, table.area.rows);
      }),
    ),
    ...asides,
  ]);
}

/** Let a table without totals reach over that many rows, headings included; no cell changes. */
export function resizeTable(
  context: Excel.RequestContext,
  { name, area }: Pick<TableInfo, "name" | "area">,
  rows: number,
): void {
  if (supports("1.13")) context.workbook.tables.getItem(name).resize(rangeOf(context, { ...area, rows }));
}
