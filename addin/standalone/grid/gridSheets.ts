import type { ICellData, Injector, IStyleData, Nullable, Workbook, Worksheet } from "@univerjs/core";
import { IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { ISheetNote } from "@univerjs/sheets-note";
import { SheetsNoteModel } from "@univerjs/sheets-note";
import type { ITableInfoWithUnitId } from "@univerjs/sheets-table";
import { TableManager } from "@univerjs/sheets-table";
import type { Cell } from "../../chart/cell.ts";
import { cellText } from "../../chart/cell.ts";
import { sheetNamed } from "../../workbook/existing.ts";
import type { Area, RangeData, TableInfo } from "../../workbook/port.ts";
import { formatOf, toCell } from "./values.ts";

/** A workbook in the grid. */
export interface GridUnit {
  readonly injector: Injector;
  readonly unitId: string;
}

/** A rectangle of cells; rows and columns from 0, ends included. */
export interface Rectangle {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

export function workbookOf({ injector, unitId }: GridUnit): Workbook {
  const workbook = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  if (!workbook) throw new Error("The workbook of the grid is closed.");
  return workbook;
}

export function sheetNames(unit: GridUnit): string[] {
  return workbookOf(unit)
    .getSheets()
    .map((sheet) => sheet.getName());
}

/**
 * The sheet of that name, in any case.
 *
 * @throws {InputError} kind `"absent"` when there is none
 */
export function sheetOf(unit: GridUnit, name: string): Worksheet {
  const sheet = workbookOf(unit).getSheetBySheetName(sheetNamed(sheetNames(unit), name));
  if (!sheet) throw new Error(`The grid lost the sheet “${name}”.`);
  return sheet;
}

/** The table as the grid describes it, in any case. */
export function gridTable(unit: GridUnit, name: string): ITableInfoWithUnitId | undefined {
  return unit.injector
    .get(TableManager)
    .getTableList(unit.unitId)
    .find((table) => table.name.toLowerCase() === name.toLowerCase());
}

export function tablesOf(unit: GridUnit): TableInfo[] {
  const workbook = workbookOf(unit);
  return unit.injector
    .get(TableManager)
    .getTableList(unit.unitId)
    .flatMap(({ name, subUnitId, range }) => {
      const sheet = workbook.getSheetBySheetId(subUnitId);
      if (!sheet) return [];
      const area = toArea(sheet.getName(), range);
      const headings = cellsOf(unit, sheet, { ...area, rows: 1 })[0] ?? [];
      return [{ name, area, headings: headings.map(cellText) }];
    });
}

export function readArea(unit: GridUnit, area: Area): RangeData {
  const sheet = sheetOf(unit, area.sheet);
  const formats = eachCell(area, (row, column) => formatOf(styleOf(unit, sheet.getCellRaw(row, column))));
  return {
    area: { ...area, sheet: sheet.getName() },
    values: cellsOf(unit, sheet, area),
    formats: formats.map((row) => row.map((format) => format ?? "General")),
  };
}

function cellsOf(unit: GridUnit, sheet: Worksheet, area: Omit<Area, "sheet">): Cell[][] {
  const spilled = spilledIn(unit, sheet.getSheetId());
  return eachCell(area, (row, column) => toCell(spilled.get(row, column) ?? sheet.getCellRaw(row, column)));
}

function eachCell<T>(area: Omit<Area, "sheet">, of: (row: number, column: number) => T): T[][] {
  return Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.columns }, (_, j) => of(area.row + i, area.column + j)),
  );
}

/** Results of array formulas on a sheet. The grid keeps them apart from what was typed. */
export interface Spilled {
  get(row: number, column: number): Nullable<ICellData>;
  /** The area that the formula in a cell fills, itself included. */
  areaFrom(row: number, column: number): Rectangle | undefined;
  readonly areas: readonly Rectangle[];
  /** Everything, for comparing. */
  readonly all: object;
}

export function spilledIn({ injector, unitId }: GridUnit, sheetId: string): Spilled {
  const model = injector.get(FormulaDataModel);
  const cells = model.getArrayFormulaCellData()[unitId]?.[sheetId];
  const ranges = model.getArrayFormulaRange()[unitId]?.[sheetId];
  return {
    get: (row, column) => cells?.[row]?.[column],
    areaFrom: (row, column) => ranges?.[row]?.[column],
    areas: Object.values(ranges ?? {}).flatMap((row) => Object.values(row)),
    all: cells ?? {},
  };
}

export function styleOf(unit: GridUnit, cell: Nullable<ICellData>): IStyleData | undefined {
  return cell ? (workbookOf(unit).getStyles().getStyleByCell(cell) ?? undefined) : undefined;
}

export function noteAt(
  { injector, unitId }: GridUnit,
  sheetId: string,
  row: number,
  col: number,
): ISheetNote | undefined {
  return injector.get(SheetsNoteModel).getNote(unitId, sheetId, { row, col }) ?? undefined;
}

export function notesOf({ injector, unitId }: GridUnit, sheetId: string): ISheetNote[] {
  return [...(injector.get(SheetsNoteModel).getUnitNotes(unitId)?.get(sheetId)?.values() ?? [])];
}

/** The smallest rectangle around all cells that hold something, within an area if one is given. */
export function usedIn(unit: GridUnit, sheet: Worksheet, within?: Rectangle): Rectangle | undefined {
  const found = { startRow: Infinity, endRow: -1, startColumn: Infinity, endColumn: -1 };
  const see = (row: number, column: number): void => {
    if (within && !holds(within, row, column)) return;
    found.startRow = Math.min(found.startRow, row);
    found.endRow = Math.max(found.endRow, row);
    found.startColumn = Math.min(found.startColumn, column);
    found.endColumn = Math.max(found.endColumn, column);
  };
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if (isFilled(cell)) see(row, column);
  });
  for (const area of spilledIn(unit, sheet.getSheetId()).areas) {
    for (let row = area.startRow; row <= area.endRow; row++)
      for (let column = area.startColumn; column <= area.endColumn; column++) see(row, column);
  }
  return found.endRow < 0 ? undefined : found;
}

export function isFilled(cell: Nullable<ICellData>): boolean {
  return Boolean(cell?.f ?? cell?.si) || toCell(cell) !== undefined;
}

export function holds(area: Rectangle, row: number, column: number): boolean {
  return row >= area.startRow && row <= area.endRow && column >= area.startColumn && column <= area.endColumn;
}

export function toRectangle({ row, column, rows, columns }: Omit<Area, "sheet">): Rectangle {
  return { startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column + columns - 1 };
}

export function toArea(sheet: string, range: Rectangle): Area {
  return {
    sheet,
    row: range.startRow,
    column: range.startColumn,
    rows: range.endRow - range.startRow + 1,
    columns: range.endColumn - range.startColumn + 1,
  };
}
