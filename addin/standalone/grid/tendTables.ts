import type { ICellData, IDisposable, Nullable, Worksheet } from "@univerjs/core";
import { ICommandService, RedoCommandId, UndoCommandId } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { SetSheetTableCommand, TableManager } from "@univerjs/sheets-table";
import { z } from "zod";
import { areasMeet } from "../../workbook/address.ts";
import type { EditableUnit } from "./applyEdit.ts";
import { newColumn } from "./applyEdit.ts";
import type { Rectangle } from "./gridSheets.ts";
import { spilledIn, tablesOf, toArea, usedIn, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";

const typed = z.object({
  unitId: z.string(),
  subUnitId: z.string(),
  cellValue: z.record(z.string(), z.record(z.string(), z.custom<Nullable<ICellData>>())),
});

type Table = ReturnType<TableManager["getTablesBySubunitId"]>[number];

interface Place {
  readonly row: number;
  readonly column: number;
}

/**
 * What spreadsheets do for tables while one types, and the grid does not: a row typed right below a table becomes
 * part of it, and so does a column whose heading is typed right beside its headings.
 *
 * @param isOwn true while the port writes; it says itself what becomes of tables
 */
export function tendTables(unit: EditableUnit, isOwn: () => boolean): IDisposable {
  const commands = unit.injector.get(ICommandService);
  let isUndoing = false;
  const before = commands.beforeCommandExecuted(({ id }) => {
    if (isUndoOrRedo(id)) isUndoing = true;
  });
  const after = commands.onCommandExecuted(({ id, params }, options) => {
    if (isUndoOrRedo(id)) isUndoing = false;
    // Undo and redo bring back by themselves what became of tables.
    if (id !== SetRangeValuesMutation.id || isOwn() || isUndoing) return;
    if (options?.applyFormulaCalculationResult === true || options?.fromFormula === true) return;
    const { data } = typed.safeParse(params);
    if (data?.unitId !== unit.unitId) return;
    const places = Object.entries(data.cellValue).flatMap(([row, columns]) =>
      Object.keys(columns).map((column) => ({ row: Number(row), column: Number(column) })),
    );
    // The command that this is a part of has to finish first.
    queueMicrotask(() => {
      tend(unit, data.subUnitId, places);
    });
  });
  return {
    dispose: () => {
      before.dispose();
      after.dispose();
    },
  };
}

function isUndoOrRedo(id: string): boolean {
  return id === UndoCommandId || id === RedoCommandId;
}

function tend(unit: EditableUnit, sheetId: string, places: readonly Place[]): void {
  const sheet = workbookOf(unit).getSheetBySheetId(sheetId);
  if (!sheet) return;
  for (const table of unit.injector.get(TableManager).getTablesBySubunitId(unit.unitId, sheetId)) {
    const range = table.getRange();
    const rows = rowsTypedBelow(unit, sheet, range, places);
    if (rows > 0) grow(unit, table, { updateRange: { newRange: { ...range, endRow: range.endRow + rows } } });
    for (const heading of headingsTypedBeside(unit, sheet, range, places)) widen(unit, table, heading);
  }
}

/** How many rows right below a table were typed just now, with nothing there before. */
function rowsTypedBelow(
  unit: EditableUnit,
  sheet: Worksheet,
  range: Rectangle,
  places: readonly Place[],
): number {
  const { startColumn, endColumn, endRow } = range;
  const below = places.filter(
    ({ row, column }) =>
      row > endRow &&
      column >= startColumn &&
      column <= endColumn &&
      toCell(sheet.getCellRaw(row, column)) !== undefined,
  );
  const rows = new Set(below.map((place) => place.row));
  let count = 0;
  while (rows.has(endRow + 1 + count)) count++;
  if (count === 0) return 0;
  const isTyped = (row: number, column: number): boolean =>
    below.some((place) => place.row === row && place.column === column);
  const area = { startRow: endRow + 1, endRow: endRow + count, startColumn, endColumn };
  return onlyHolds(unit, sheet, area, isTyped) ? count : 0;
}

function onlyHolds(
  unit: EditableUnit,
  sheet: Worksheet,
  area: Rectangle,
  isTyped: (row: number, column: number) => boolean,
): boolean {
  for (let row = area.startRow; row <= area.endRow; row++) {
    for (let column = area.startColumn; column <= area.endColumn; column++) {
      const cell = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      if (!isTyped(row, column) && usedIn(unit, sheet, cell)) return false;
    }
  }
  return true;
}

/** Headings typed one beside the other right of those of a table, over columns that nothing else fills. */
function headingsTypedBeside(
  unit: EditableUnit,
  sheet: Worksheet,
  { startRow, endRow, endColumn }: Rectangle,
  places: readonly Place[],
): string[] {
  const spilled = spilledIn(unit, sheet.getSheetId());
  const tables = tablesOf(unit).filter(({ area }) => area.sheet === sheet.getName());
  const isFree = (column: number): boolean => {
    const area = { row: startRow, column, rows: endRow - startRow + 1, columns: 1 };
    return (
      tables.every((other) => !areasMeet(other.area, area)) &&
      spilled.areas.every((filled) => !areasMeet(toArea(sheet.getName(), filled), area))
    );
  };
  const headings: string[] = [];
  for (let column = endColumn + 1; isFree(column); column++) {
    if (!places.some((place) => place.row === startRow && place.column === column)) break;
    const heading = toCell(sheet.getCellRaw(startRow, column));
    if (typeof heading !== "string") break;
    headings.push(heading);
  }
  return headings;
}

function widen(unit: EditableUnit, table: Table, heading: string): void {
  grow(unit, table, {
    rowColOperation: {
      operationType: "insert",
      rowColType: "column",
      index: table.getRange().endColumn + 1,
      count: 1,
      columnsJson: [newColumn(heading)],
    },
  });
}

function grow(unit: EditableUnit, table: Table, change: object): void {
  unit.undo.extendLast(unit.unitId, () => {
    void unit.injector
      .get(ICommandService)
      .executeCommand(SetSheetTableCommand.id, { unitId: unit.unitId, tableId: table.getId(), ...change });
  });
}
