import type { ICellData, Nullable, Worksheet } from "@univerjs/core";
import { isFormulaId, isFormulaString } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import type { CellContent, SheetContent, WorkbookContent } from "../../workbook/content.ts";
import type { FoundCell } from "../../workbook/port.ts";
import { styleNameOf } from "./cellLook.ts";
import type { GridUnit, Spilled } from "./gridSheets.ts";
import { notesOf, spilledIn, styleOf, tablesOf, workbookOf } from "./gridSheets.ts";
import { pickListsOf } from "./pickLists.ts";
import { formatOf, toCell } from "./values.ts";

/** All that the grid’s workbook holds, formulas with what they give now. */
export function readContent(unit: GridUnit): WorkbookContent {
  return {
    sheets: workbookOf(unit)
      .getSheets()
      .map((sheet) => readSheet(unit, sheet)),
  };
}

function readSheet(unit: GridUnit, sheet: Worksheet): SheetContent {
  const freeze = sheet.getFreeze();
  const tables = tablesOf(unit).filter((table) => table.area.sheet === sheet.getName());
  const pickLists = pickListsOf(unit, sheet.getSheetId());
  return {
    name: sheet.getName(),
    cells: readCells(unit, sheet),
    frozenRows: Math.max(freeze.ySplit, 0),
    frozenColumns: Math.max(freeze.xSplit, 0),
    columnWidths: readWidths(sheet),
    ...paperOf(sheet),
    tables: tables.map(({ name, area: { row, column, rows, columns } }) => ({
      name,
      row,
      column,
      rows,
      columns,
    })),
    ...(pickLists.length > 0 && { pickLists }),
    notes: notesOf(unit, sheet.getSheetId()).map(({ row, col, note }) => ({ row, column: col, text: note })),
  };
}

function paperOf(sheet: Worksheet): Pick<SheetContent, "paper"> {
  const paper: unknown = sheet.getConfig().custom?.["paper"];
  return paper === "A4" || paper === "Letter" ? { paper } : {};
}

function readCells(unit: GridUnit, sheet: Worksheet): (CellContent | undefined)[][] {
  const spilled = spilledIn(unit, sheet.getSheetId());
  const formulas = formulasOf(unit, sheet);
  const rows: (CellContent | undefined)[][] = [];
  const put = (row: number, column: number): void => {
    const cell = readCell(unit, sheet, { spilled, formulas }, row, column);
    if (!cell) return;
    const cells = (rows[row] ??= []);
    cells[column] = cell;
  };
  sheet.getCellMatrix().forValue(put);
  for (const area of spilled.areas) {
    for (let row = area.startRow; row <= area.endRow; row++)
      for (let column = area.startColumn; column <= area.endColumn; column++) put(row, column);
  }
  return Array.from(rows, (row = []) => Array.from(row));
}

function readCell(
  unit: GridUnit,
  sheet: Worksheet,
  { spilled, formulas }: { spilled: Spilled; formulas: FormulaReader },
  row: number,
  column: number,
): CellContent | undefined {
  const data = sheet.getCellRaw(row, column);
  const result = spilled.get(row, column);
  const area = spilled.areaFrom(row, column);
  const value = toCell(result ?? data);
  const formula = formulas(data, row, column);
  const format = formatOf(styleOf(unit, data));
  const style = styleNameOf(data);
  const cell: CellContent = {
    ...(value !== undefined && { value }),
    ...(formula !== undefined && { formula }),
    ...(area && {
      spill: {
        rows: area.endRow - area.startRow + 1,
        columns: area.endColumn - area.startColumn + 1,
      },
    }),
    ...(result && !area && { spilled: true }),
    ...(format !== undefined && { format }),
    ...(style !== undefined && { style }),
  };
  return Object.keys(cell).length > 0 ? cell : undefined;
}

function readWidths(sheet: Worksheet): (number | undefined)[] {
  const columns = sheet.getConfig().columnData;
  const last = Math.max(-1, ...Object.keys(columns).map(Number));
  return Array.from({ length: last + 1 }, (_, column) => columns[column]?.w);
}

/** Every cell with a formula, text or number; what the formula of another cell fills is left out. */
export function filledCells(unit: GridUnit): FoundCell[] {
  return workbookOf(unit)
    .getSheets()
    .flatMap((sheet) => {
      const name = sheet.getName();
      const spilled = spilledIn(unit, sheet.getSheetId());
      const formulas = formulasOf(unit, sheet);
      const found: FoundCell[] = [];
      sheet.getCellMatrix().forValue((row, column, data) => {
        const formula = formulas(data, row, column);
        const holds = formula ?? toCell(data);
        if (typeof holds !== "string" && typeof holds !== "number") return;
        if (formula === undefined && spilled.get(row, column)) return;
        found.push({ at: { sheet: name, row, column }, holds, isFormula: formula !== undefined });
      });
      return found;
    });
}

type FormulaReader = (cell: Nullable<ICellData>, row: number, column: number) => string | undefined;

/** Reads formulas, also of cells that share one, filled down from another cell. */
function formulasOf({ injector }: GridUnit, sheet: Worksheet): FormulaReader {
  const builder = injector.get(LexerTreeBuilder);
  const origins = new Map<string, { formula: string; row: number; column: number }>();
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if (cell?.si && cell.f) origins.set(cell.si, { formula: cell.f, row, column });
  });
  return (cell, row, column) => {
    if (isFormulaString(cell?.f)) return cell?.f ?? undefined;
    const origin = isFormulaId(cell?.si) ? origins.get(cell?.si ?? "") : undefined;
    return origin && builder.moveFormulaRefOffset(origin.formula, column - origin.column, row - origin.row);
  };
}
