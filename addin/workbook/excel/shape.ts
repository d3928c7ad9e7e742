import type { Cell } from "../../chart/cell.ts";
import { cellText } from "../../chart/cell.ts";
import type { WorkbookShape } from "../checkEdits.ts";
import { sheetNamed } from "../existing.ts";
import { sameName } from "../names.ts";
import type { Area, Edit, TableInfo } from "../port.ts";
import { cellsOf, rangeOf } from "./ranges.ts";

export async function loadSheets(context: Excel.RequestContext): Promise<string[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  return worksheets.items.map((sheet) => sheet.name);
}

/** Every table that shows its headings. A row of totals is not counted as part of it. */
export async function loadTables(context: Excel.RequestContext): Promise<TableInfo[]> {
  const { tables } = context.workbook;
  tables.load(["items/name", "items/showHeaders", "items/showTotals"]);
  await context.sync();
  const loaded = tables.items
    .filter((table) => table.showHeaders)
    .map((table) => {
      const range = table.getRange();
      range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
      const headings = table.getHeaderRowRange();
      headings.load("values");
      const sheet = table.worksheet;
      sheet.load("name");
      return { table, range, headings, sheet };
    });
  await context.sync();
  return loaded.map(({ table, range, headings, sheet }) => ({
    name: table.name,
    area: {
      sheet: sheet.name,
      row: range.rowIndex,
      column: range.columnIndex,
      rows: range.rowCount - (table.showTotals ? 1 : 0),
      columns: range.columnCount,
    },
    headings: (headings.values[0] ?? []).map(String),
  }));
}

/** All that has to be known of the workbook to check edits. */
export async function loadShape(
  context: Excel.RequestContext,
  edits: readonly Edit[],
): Promise<WorkbookShape> {
  const sheets = await loadSheets(context);
  const tables = await loadTables(context);
  const rows = await loadFirstRows(context, sheets, edits);
  return { sheets, tables, firstRow: (area) => rows.get(area) ?? [] };
}

/** What the heading rows of tables to be made hold now, where their sheets are there already. */
async function loadFirstRows(
  context: Excel.RequestContext,
  sheets: readonly string[],
  edits: readonly Edit[],
): Promise<Map<Area, readonly Cell[]>> {
  const areas = edits.flatMap((edit) => (edit.kind === "table" ? [edit.area] : []));
  const known = areas.filter(
    (area) =>
      sheets.some((sheet) => sameName(sheet, area.sheet)) &&
      area.row >= 0 &&
      area.column >= 0 &&
      area.columns >= 1,
  );
  const ranges = known.map((area) => {
    const range = rangeOf(context, { ...area, sheet: sheetNamed(sheets, area.sheet), rows: 1 });
    range.load(["values", "valueTypes"]);
    return range;
  });
  if (ranges.length > 0) await context.sync();
  return new Map(
    known.map((area, i) => {
      const range = ranges[i];
      const row = range ? (cellsOf(range.values, range.valueTypes)[0] ?? []) : [];
      return [area, row.map((cell) => cellText(cell))];
    }),
  );
}
