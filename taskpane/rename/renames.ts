import type { Cell } from "../../addin/chart/cell.ts";
import { cellText } from "../../addin/chart/cell.ts";
import { figureKey } from "../../addin/chart/find.ts";
import { columnHeadings } from "../../addin/chart/readPatterns.ts";
import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import { areasMeet } from "../../addin/workbook/address.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Area, TableInfo, TypedCell, Workbook, WorkbookChange } from "../../addin/workbook/port.ts";
import { findFitTables } from "../fit/fitTables.ts";
import { usualSecond } from "../groups/secondReadings.ts";
import { chartTables } from "../shell/chartTables.ts";

/** What has a name that other places of the workbook repeat. */
export type Named = "figure" | "pattern";

/** Another name that was given to a row of a table. */
export interface Rename {
  readonly what: Named;
  readonly table: string;
  /** The name before; several where it was changed again before anything followed it. */
  readonly from: readonly string[];
  readonly to: string;
}

/** A table whose rows have names, and where those stand, without the heading. */
export interface NamesColumn {
  readonly what: Named;
  readonly table: TableInfo;
  readonly area: Area;
}

/** The charts and the tables of patterns of a workbook. Second readings take their names from a chart. */
export function namesColumns(tables: readonly TableInfo[]): readonly NamesColumn[] {
  const column = (what: Named, table: TableInfo, at: number): NamesColumn => {
    const { area } = table;
    return {
      what,
      table,
      area: { ...area, row: area.row + 1, rows: area.rows - 1, column: area.column + at, columns: 1 },
    };
  };
  return [
    ...mainCharts(tables).map((table) => column("figure", table, 0)),
    ...findFitTables(tables).patterns.map((table) => {
      const code = columnNamed(tableColumns([table.headings]), columnHeadings.code);
      return column("pattern", table, code?.position ?? 0);
    }),
  ].filter(({ area }) => area.rows > 0);
}

export function mainCharts(tables: readonly TableInfo[]): readonly TableInfo[] {
  return chartTables(tables).filter(({ name }) => !sameName(name, usualSecond));
}

/** The names that stand in a column now, in the order of its rows; “” for a row without one. */
export async function readNames(
  workbook: Pick<Workbook, "readTable">,
  { table, area }: NamesColumn,
): Promise<readonly string[]> {
  const { values } = await workbook.readTable(table.name);
  return values.slice(1).map((row) => cellText(row[area.column - table.area.column]));
}

/** True for what can be one name in the place of another; numbers can be names too, where sizes are. */
export function mayBeRename({ before, after }: TypedCell): boolean {
  return isName(before) && isName(after) && figureKey(cellText(before)) !== figureKey(cellText(after));
}

function isName(cell: Cell): boolean {
  return (typeof cell === "string" || typeof cell === "number") && cellText(cell) !== "";
}

/**
 * The renames that wait for an answer, after more was typed. One that was typed back is gone, one that was typed again goes
 * on from the first name; so is one whose new name is not there, or not alone, or whose old name has another row.
 *
 * @param names of the columns, as they stand now, in their order
 */
export function renamesAfter(
  waiting: readonly Rename[],
  changes: readonly WorkbookChange[],
  columns: readonly NamesColumn[],
  names: readonly (readonly string[])[],
): readonly Rename[] {
  const typed = changes.flatMap((change) =>
    (change.typed ?? []).filter(mayBeRename).flatMap((cell): Rename[] => {
      const at = { row: cell.row, column: cell.column, rows: 1, columns: 1 };
      const column = columns.find(({ area }) => sameName(area.sheet, change.sheet) && areasMeet(area, at));
      if (!column) return [];
      const { what, table } = column;
      return [{ what, table: table.name, from: [cellText(cell.before)], to: cellText(cell.after) }];
    }),
  );
  return typed.reduce(withRename, waiting).filter((rename) => {
    const at = columns.findIndex(({ table }) => sameName(table.name, rename.table));
    const keys = (names[at] ?? []).map(figureKey);
    const isThereOnce = keys.filter((key) => key === figureKey(rename.to)).length === 1;
    return isThereOnce && !rename.from.some((name) => keys.includes(figureKey(name)));
  });
}

function withRename(waiting: readonly Rename[], next: Rename): readonly Rename[] {
  const before = waiting.find(
    (each) => each.table === next.table && next.from.some((name) => sameKey(name, each.to)),
  );
  if (!before) return [...waiting, next];
  const from = [...before.from, before.to].filter((name) => !sameKey(name, next.to));
  // Back to a name that it had: what says that name is right again.
  const isBack = before.from.some((name) => sameKey(name, next.to));
  const others = waiting.filter((each) => each !== before);
  return isBack && from.length === 1 ? others : [...others, { ...next, from }];
}

function sameKey(a: string, b: string): boolean {
  return figureKey(a) === figureKey(b);
}
