import type { ICellData, Nullable, Worksheet } from "@univerjs/core";
import { ICommandService, generateRandomId, isTextFormat } from "@univerjs/core";
import {
  InsertSheetCommand,
  MoveRangeCommand,
  SetFrozenCommand,
  SetRangeValuesCommand,
  SetWorksheetColumnCountCommand,
  SetWorksheetRowCountCommand,
} from "@univerjs/sheets";
import { AddSheetDataValidationCommand } from "@univerjs/sheets-data-validation";
import { RemoveNoteMutation, SheetUpdateNoteCommand, UpdateNoteMutation } from "@univerjs/sheets-note";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableCommand,
  TableColumnDataTypeEnum,
  TableManager,
} from "@univerjs/sheets-table";
import type { Cell } from "../../chart/cell.ts";
import { areasMeet } from "../../workbook/address.ts";
import { widest } from "../../workbook/checkEdits.ts";
import { tableNamed } from "../../workbook/existing.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import type { Area, CellAddress, Edit, TableInfo } from "../../workbook/port.ts";
import { shiftFormula } from "../../workbook/xlsx/shiftFormula.ts";
import { lookChange, markChange } from "./cellLook.ts";
import { toGridFormula } from "./gridFormula.ts";
import type { GroupedUndo } from "./groupedUndo.ts";
import type { GridUnit } from "./gridSheets.ts";
import { gridTable, noteAt, sheetOf, styleOf, tablesOf, toRectangle, usedIn } from "./gridSheets.ts";
import { toRule } from "./pickLists.ts";
import { customOf, sheetSize, tableOptions, toColumnData, toFreeze, toNote } from "./toSnapshot.ts";
import { toCellData } from "./values.ts";

/** The grid’s workbook together with its list of undo steps. */
export interface EditableUnit extends GridUnit {
  readonly undo: GroupedUndo;
}

type EditOf<K extends Edit["kind"]> = Extract<Edit, { kind: K }>;

/** Apply one edit. It has been checked; what fails here all the same is a fault of ours or of the grid. */
export async function applyEdit(unit: EditableUnit, edit: Edit): Promise<void> {
  switch (edit.kind) {
    case "cells":
      return writeCells(unit, edit.at, edit.cells);
    case "sheet":
      return addSheet(unit, edit.sheet);
    case "table":
      return addTable(unit, edit);
    case "rows":
      return addRows(unit, edit);
    case "column":
      return addColumn(unit, edit);
    case "mark":
      return mark(unit, edit);
    case "note":
      return setNote(unit, edit.at, edit.text);
    case "freeze":
      return freeze(unit, edit);
  }
}

async function run(unit: GridUnit, id: string, parameters: object): Promise<void> {
  const done = await unit.injector
    .get(ICommandService)
    .executeCommand(id, { unitId: unit.unitId, ...parameters });
  if (done !== true) throw new Error(`The grid could not carry out “${id}”.`);
}

type Change = (now: Nullable<ICellData>, row: number, column: number) => ICellData | undefined;

/** Change cells of an area one by one; cells without a change stay as they are. */
async function changeCells(unit: GridUnit, area: Area, change: Change): Promise<void> {
  const sheet = sheetOf(unit, area.sheet);
  const value: Record<number, Record<number, ICellData>> = {};
  for (let row = area.row; row < area.row + area.rows; row++) {
    for (let column = area.column; column < area.column + area.columns; column++) {
      const changed = change(sheet.getCellRaw(row, column), row, column);
      if (changed) (value[row] ??= {})[column] = changed;
    }
  }
  if (Object.keys(value).length === 0) return;
  await makeRoom(unit, sheet, area);
  await run(unit, SetRangeValuesCommand.id, {
    subUnitId: sheet.getSheetId(),
    range: toRectangle(area),
    value,
  });
}

/** Sheets of the grid end somewhere; move the end out of the way. */
async function makeRoom(unit: GridUnit, sheet: Worksheet, area: Omit<Area, "sheet">): Promise<void> {
  const subUnitId = sheet.getSheetId();
  const rowCount = area.row + area.rows;
  const columnCount = area.column + area.columns;
  if (rowCount > sheet.getRowCount())
    await run(unit, SetWorksheetRowCountCommand.id, { subUnitId, rowCount: rowCount + 100 });
  if (columnCount > sheet.getColumnCount())
    await run(unit, SetWorksheetColumnCountCommand.id, { subUnitId, columnCount: columnCount + 8 });
}

async function writeCells(unit: GridUnit, at: CellAddress, cells: SheetContent["cells"]): Promise<void> {
  const area = { ...at, rows: cells.length, columns: widest(cells) };
  const tables = tablesOf(unit).filter(
    (table) => table.area.sheet === sheetOf(unit, at.sheet).getName() && areasMeet(table.area, area),
  );
  await changeCells(unit, area, (now, row, column) => {
    const content = cells[row - at.row]?.[column - at.column];
    if (!content || content.spilled) return undefined;
    return written(asValue(content, styleOf(unit, now)?.n?.pattern), now, tableAt(tables, row, column));
  });
}

/** In a cell formatted as text, a number would be shown and typed on as text, and a formula too: they get the usual format. */
function asValue(content: CellContent, pattern: string | undefined): CellContent {
  const { formula, value, format = pattern } = content;
  const isText = formula === undefined && (value === undefined || typeof value === "string");
  return !isText && format !== undefined && isTextFormat(format)
    ? { ...content, format: "General" }
    : content;
}

function tableAt(tables: readonly TableInfo[], row: number, column: number): string | undefined {
  return tables.find((table) => areasMeet(table.area, { row, column, rows: 1, columns: 1 }))?.name;
}

/** New content for a cell, in the place of whatever it held. */
function written(content: CellContent, now: Nullable<ICellData>, table?: string): ICellData {
  const { formula } = content;
  return {
    ...(formula === undefined
      ? { ...toCellData(content.value), f: null }
      : { ...toCellData(undefined), f: toGridFormula(formula, table) }),
    si: null,
    p: null,
    ...lookChange(content, now),
  };
}

async function addSheet(unit: EditableUnit, sheet: SheetContent): Promise<void> {
  const { name } = sheet;
  await run(unit, InsertSheetCommand.id, {
    sheet: { name, ...sheetSize(sheet), columnData: toColumnData(sheet), ...customOf(sheet) },
  });
  await writeCells(unit, { sheet: name, row: 0, column: 0 }, sheet.cells);
  for (const table of sheet.tables ?? [])
    await addTable(unit, { kind: "table", name: table.name, area: { ...table, sheet: name } });
  const subUnitId = sheetOf(unit, name).getSheetId();
  for (const list of sheet.pickLists ?? [])
    await run(unit, AddSheetDataValidationCommand.id, { subUnitId, rule: toRule(list) });
  for (const note of sheet.notes ?? []) await setNote(unit, { ...note, sheet: name }, note.text);
  const [rows, columns] = [sheet.frozenRows ?? 0, sheet.frozenColumns ?? 0];
  if (rows > 0 || columns > 0) await freeze(unit, { kind: "freeze", sheet: name, rows, columns });
}

async function addTable(unit: EditableUnit, { name, area }: EditOf<"table">): Promise<void> {
  const { injector, unitId } = unit;
  const subUnitId = sheetOf(unit, area.sheet).getSheetId();
  const range = toRectangle(area);
  const tableId = generateRandomId();
  const header = injector.get(TableManager).getColumnHeader(unitId, subUnitId, range, "Column");
  // The grid’s own command gives another name to a table that is called as a sheet is; Excel allows it.
  const params = { unitId, subUnitId, tableId, name, range, header, options: { ...tableOptions } };
  await run(unit, AddSheetTableMutation.id, params);
  unit.undo.pushUndoRedo({
    unitID: unitId,
    undoMutations: [{ id: DeleteSheetTableMutation.id, params: { unitId, tableId } }],
    redoMutations: [{ id: AddSheetTableMutation.id, params }],
  });
  if (gridTable(unit, name)?.name !== name) throw new Error(`The grid refuses the table name “${name}”.`);
}

async function addRows(unit: GridUnit, edit: EditOf<"rows">): Promise<void> {
  if (edit.rows.length === 0) return;
  const { area, name } = tableNamed(tablesOf(unit), edit.table);
  const gap = { ...area, row: area.row + area.rows, rows: edit.rows.length };
  await clear(unit, gap, "down");
  const sheet = sheetOf(unit, area.sheet);
  await changeCells(unit, gap, (_, row, column) => {
    const value = edit.rows[row - gap.row]?.[column - gap.column];
    const above = sheet.getCellRaw(gap.row - 1, column);
    // A column of formulas goes on where a new row brings no value for it.
    const goesOn = value === undefined && typeof above?.f === "string";
    return {
      ...(goesOn
        ? {
            ...toCellData(undefined),
            f: shiftFormula(above.f ?? "", row - gap.row + 1, 0),
            si: null,
            p: null,
          }
        : written({ value }, undefined)),
      ...formatLike(unit, above),
    };
  });
  await setTable(unit, name, {
    updateRange: { newRange: toRectangle({ ...area, rows: area.rows + edit.rows.length }) },
  });
}

/** A number format runs on down a column. The text format does not: it would turn numbers into text. */
function formatLike(unit: GridUnit, above: Nullable<ICellData>): Pick<ICellData, "s"> {
  const pattern = styleOf(unit, above)?.n?.pattern;
  return pattern && !isTextFormat(pattern) ? { s: { n: { pattern } } } : {};
}

async function addColumn(unit: GridUnit, edit: EditOf<"column">): Promise<void> {
  const { area, name } = tableNamed(tablesOf(unit), edit.table);
  const gap = { ...area, column: area.column + area.columns, columns: 1 };
  await clear(unit, gap, "right");
  const values: readonly Cell[] = [edit.heading, ...edit.values];
  await changeCells(unit, gap, (_, row) => written({ value: values[row - gap.row] }, undefined));
  await setTable(unit, name, {
    rowColOperation: {
      operationType: "insert",
      rowColType: "column",
      index: gap.column,
      count: 1,
      columnsJson: [newColumn(edit.heading)],
    },
  });
}

/** A table’s column as the grid’s command takes it. */
export function newColumn(displayName: string) {
  return {
    id: generateRandomId(),
    displayName,
    dataType: TableColumnDataTypeEnum.String,
    formula: "",
    meta: {},
    style: {},
  };
}

async function setTable(unit: GridUnit, name: string, change: object): Promise<void> {
  await run(unit, SetSheetTableCommand.id, { tableId: gridTable(unit, name)?.id, ...change });
}

/** Move what stands in a gap out of the way, all that follows it included. Formulas that point there follow. */
async function clear(unit: GridUnit, gap: Area, direction: "down" | "right"): Promise<void> {
  const sheet = sheetOf(unit, gap.sheet);
  const within =
    direction === "down"
      ? { ...toRectangle(gap), endRow: Infinity }
      : { ...toRectangle(gap), endColumn: Infinity };
  const used = usedIn(unit, sheet, within);
  if (!used) return;
  const from =
    direction === "down" ? { ...within, endRow: used.endRow } : { ...within, endColumn: used.endColumn };
  const [down, right] = direction === "down" ? [gap.rows, 0] : [0, gap.columns];
  const to = {
    startRow: from.startRow + down,
    endRow: from.endRow + down,
    startColumn: from.startColumn + right,
    endColumn: from.endColumn + right,
  };
  await makeRoom(unit, sheet, { row: 0, column: 0, rows: to.endRow + 1, columns: to.endColumn + 1 });
  const subUnitId = sheet.getSheetId();
  await run(unit, MoveRangeCommand.id, {
    fromRange: from,
    toRange: to,
    fromUnitId: unit.unitId,
    toUnitId: unit.unitId,
    fromSubUnitId: subUnitId,
    toSubUnitId: subUnitId,
  });
}

async function mark(unit: GridUnit, { cells, marked }: EditOf<"mark">): Promise<void> {
  for (const cell of cells) {
    await changeCells(unit, { ...cell, rows: 1, columns: 1 }, (now) =>
      markChange(now, styleOf(unit, now), marked),
    );
  }
}

async function setNote(unit: EditableUnit, at: CellAddress, text: string | undefined): Promise<void> {
  const { row, column } = at;
  const sheetId = sheetOf(unit, at.sheet).getSheetId();
  const now = noteAt(unit, sheetId, row, column);
  if (text !== undefined) {
    const note = { ...toNote({ row, column, text }), ...(now && { id: now.id }) };
    await run(unit, SheetUpdateNoteCommand.id, { subUnitId: sheetId, sheetId, row, col: column, note });
    return;
  }
  if (!now) return;
  // The grid’s own command removes the note of the selected cell only.
  const place = { unitId: unit.unitId, sheetId, row, col: column };
  await run(unit, RemoveNoteMutation.id, place);
  unit.undo.pushUndoRedo({
    unitID: unit.unitId,
    undoMutations: [{ id: UpdateNoteMutation.id, params: { ...place, note: { ...now } } }],
    redoMutations: [{ id: RemoveNoteMutation.id, params: place }],
  });
}

async function freeze(unit: GridUnit, { sheet: name, rows, columns }: EditOf<"freeze">): Promise<void> {
  const sheet = sheetOf(unit, name);
  await makeRoom(unit, sheet, { row: 0, column: 0, rows: rows + 1, columns: columns + 1 });
  await run(unit, SetFrozenCommand.id, { subUnitId: sheet.getSheetId(), ...toFreeze(rows, columns) });
}
