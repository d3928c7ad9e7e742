import type { ICellData, IDisposable, Nullable, Worksheet } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { SetSheetTableCommand, TableManager } from "@univerjs/sheets-table";
import * as z from "zod/mini";
import { cellText } from "../../chart/cell.ts";
import { InputError } from "../../measures/inputError.ts";
import { areasMeet } from "../../workbook/address.ts";
import type { CellAddress } from "../../workbook/port.ts";
import type { EditableUnit } from "./applyEdit.ts";
import { applyEdit, newColumn } from "./applyEdit.ts";
import type { Rectangle } from "./gridSheets.ts";
import { isFilled, spilledIn, tablesOf, toArea, usedIn, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";
import { columnLetters } from "../../chart/columnLetters.ts";

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

/** A cell was typed right beside a table and did not become part of it. */
export interface BesideTable {
  readonly table: string;
  readonly tableId: string;
  readonly at: CellAddress;
}

/** What has to be known of the workbook while one types in it. */
export interface Tending {
  /** True while the port writes; it says itself what becomes of tables. */
  readonly isOwn: () => boolean;
  /** Told once of every column. */
  readonly onBeside: (beside: BesideTable) => void;
}

/**
 * What spreadsheets do for tables while one types, and the grid does not: a row typed right below a table becomes
 * part of it, and so does a column whose heading is typed right beside its headings. Of anything else typed beside a
 * table it is told, since it may have been meant to be part of it.
 */
export function tendTables(unit: EditableUnit, { isOwn, onBeside }: Tending): IDisposable {
  const told = new Set<string>();
  return unit.injector.get(ICommandService).onCommandExecuted(({ id, params }, options) => {
    // Undo and redo bring back by themselves what became of tables.
    if (id !== SetRangeValuesMutation.id || isOwn() || unit.undo.isRunning) return;
    if (options?.applyFormulaCalculationResult === true || options?.fromFormula === true) return;
    const { data } = typed.safeParse(params);
    if (data?.unitId !== unit.unitId) return;
    const places = Object.entries(data.cellValue).flatMap(([row, columns]) =>
      Object.keys(columns).map((column) => ({ row: Number(row), column: Number(column) })),
    );
    // The command that this is a part of has to finish first.
    queueMicrotask(() => {
      for (const beside of tend(unit, data.subUnitId, places)) {
        const column = `${beside.tableId}:${String(beside.at.column)}`;
        if (!told.has(column)) onBeside(beside);
        told.add(column);
      }
    });
  });
}

function tend(unit: EditableUnit, sheetId: string, places: readonly Place[]): BesideTable[] {
  const sheet = workbookOf(unit).getSheetBySheetId(sheetId);
  if (!sheet) return [];
  return unit.injector
    .get(TableManager)
    .getTablesBySubunitId(unit.unitId, sheetId)
    .flatMap((table) => {
      const range = table.getRange();
      const rows = rowsTypedBelow(unit, sheet, range, places);
      if (rows > 0)
        grow(unit, table, { updateRange: { newRange: { ...range, endRow: range.endRow + rows } } });
      const headings = headingsTypedBeside(unit, sheet, range, places);
      for (const heading of headings) widen(unit, table, heading);
      return headings.length > 0 ? [] : typedBeside(unit, sheet, table, places);
    });
}

/** The first cell right beside a table that was typed just now, where its column may still join the table. */
function typedBeside(
  unit: EditableUnit,
  sheet: Worksheet,
  table: Table,
  places: readonly Place[],
): BesideTable[] {
  const range = table.getRange();
  const column = range.endColumn + 1;
  const place = places.find(
    (each) =>
      each.column === column &&
      each.row >= range.startRow &&
      each.row <= range.endRow &&
      isFilled(sheet.getCellRaw(each.row, column)),
  );
  if (!place || !isFree(unit, sheet, range, column)) return [];
  return [
    { table: table.getDisplayName(), tableId: table.getId(), at: { ...place, sheet: sheet.getName() } },
  ];
}

/**
 * Makes the column beside a table a part of it. A heading that is missing is made up; one that is a number becomes text.
 *
 * @returns the heading
 * @throws {InputError} when something else fills the column by now
 */
export async function takeIn(unit: EditableUnit, { tableId, table: name, at }: BesideTable): Promise<string> {
  const table = unit.injector.get(TableManager).getTableById(unit.unitId, tableId);
  const sheet = table && workbookOf(unit).getSheetBySheetId(table.getSubunitId());
  const range = table?.getRange();
  if (!sheet || range?.endColumn !== at.column - 1 || !isFree(unit, sheet, range, at.column))
    throw new InputError(
      `Column ${columnLetters(at.column)} cannot join the table “${name}”: another table or a result of several cells is in its way. Move that first.`,
    );
  const now = toCell(sheet.getCellRaw(range.startRow, at.column));
  const others = new Set(
    Array.from({ length: at.column - range.startColumn }, (_, i) =>
      cellText(toCell(sheet.getCellRaw(range.startRow, range.startColumn + i))),
    ),
  );
  const heading = now === undefined ? freeName("Column", others) : cellText(now);
  if (typeof now !== "string")
    await applyEdit(unit, {
      kind: "cells",
      at: { ...at, row: range.startRow },
      cells: [[{ value: heading }]],
    });
  widen(unit, table, heading);
  return heading;
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`${name} ${String(number)}`)) number++;
  return `${name} ${String(number)}`;
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

/** Whether no other table and no result of several cells is in a column, within the rows of a table. */
function isFree(
  unit: EditableUnit,
  sheet: Worksheet,
  { startRow, endRow }: Rectangle,
  column: number,
): boolean {
  const area = { row: startRow, column, rows: endRow - startRow + 1, columns: 1 };
  return (
    tablesOf(unit).every((other) => other.area.sheet !== sheet.getName() || !areasMeet(other.area, area)) &&
    spilledIn(unit, sheet.getSheetId()).areas.every((filled) => !areasMeet(toArea("", filled), area))
  );
}

/** Headings typed one beside the other right of those of a table, over columns that nothing else fills. */
function headingsTypedBeside(
  unit: EditableUnit,
  sheet: Worksheet,
  range: Rectangle,
  places: readonly Place[],
): string[] {
  const { startRow, endColumn } = range;
  const headings: string[] = [];
  for (let column = endColumn + 1; isFree(unit, sheet, range, column); column++) {
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
