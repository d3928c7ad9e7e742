import type { Cell } from "../chart/cell.ts";
import { cellText } from "../chart/cell.ts";
import { checkArea, sheetNamed } from "./existing.ts";
import type { SheetContent, WorkbookContent } from "./content.ts";
import type { Area, RangeData, TableInfo } from "./port.ts";

/** A workbook that no spreadsheet has opened: sheets in their order, tables, and what stands in each cell. */
export interface StoredCells {
  readonly sheets: readonly string[];
  readonly tables: readonly { readonly name: string; readonly area: Area }[];
  /** The value, or the last one of a formula, and the number format where one is set. */
  at(sheet: string, row: number, column: number): StoredCell | undefined;
}

export interface StoredCell {
  readonly value?: Cell;
  readonly format?: string;
}

export function storedTables(stored: StoredCells): TableInfo[] {
  return stored.tables.map(({ name, area }) => ({
    name,
    area,
    headings: Array.from({ length: area.columns }, (_, i) =>
      cellText(stored.at(area.sheet, area.row, area.column + i)?.value),
    ),
  }));
}

/** @throws {InputError} when there is no such sheet, or the area lies outside it */
export function readStored(stored: StoredCells, area: Area): RangeData {
  checkArea({ sheets: stored.sheets }, area);
  const sheet = sheetNamed(stored.sheets, area.sheet);
  const each = <T>(of: (cell: StoredCell | undefined) => T): T[][] =>
    Array.from({ length: area.rows }, (_, i) =>
      Array.from({ length: area.columns }, (_, j) => of(stored.at(sheet, area.row + i, area.column + j))),
    );
  return {
    area: { ...area, sheet },
    // Empty text is blank, as in a sheet.
    values: each<Cell>((cell) => (cell?.value === "" ? undefined : cell?.value)),
    formats: each((cell) => cell?.format ?? "General"),
  };
}

export function contentCells({ sheets }: WorkbookContent): StoredCells {
  const byName = new Map<string, SheetContent>(sheets.map((sheet) => [sheet.name, sheet]));
  return {
    sheets: sheets.map(({ name }) => name),
    tables: sheets.flatMap((sheet) =>
      (sheet.tables ?? []).map(({ name, row, column, rows, columns }) => ({
        name,
        area: { sheet: sheet.name, row, column, rows, columns },
      })),
    ),
    at: (sheet, row, column) => byName.get(sheet)?.cells[row]?.[column],
  };
}
