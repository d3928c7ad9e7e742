import { Direction, ICommandService, RedoCommand, UndoCommand } from "@univerjs/core";
import {
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import {
  AutoFillCommand,
  ClearSelectionContentCommand,
  InsertColCommand,
  InsertRowCommand,
  MoveRangeCommand,
  RemoveColCommand,
  RemoveRowCommand,
  ReorderRangeCommand,
  SetRangeValuesCommand,
  SetWorksheetNameCommand,
} from "@univerjs/sheets";
import {
  SetSheetTableCommand,
  SetSheetTableFilterCommand,
  TableColumnFilterTypeEnum,
} from "@univerjs/sheets-table";
import { vi } from "vitest";
import type { HeadlessGrid } from "./headless.ts";
import type { Rectangle } from "../../../addin/standalone/grid/gridSheets.ts";
import { gridTable, sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";

type Typed = string | number;

/** What hands do in a grid without its screen: the commands that keys, menus and the mouse give. */
export interface GridHands {
  type(sheet: string, row: number, column: number, text: Typed): Promise<boolean>;
  /** Writes a block, as pasting does. */
  paste(sheet: string, row: number, column: number, cells: readonly (readonly Typed[])[]): Promise<boolean>;
  clear(sheet: string, area: Rectangle): Promise<boolean>;
  insertRows(sheet: string, row: number, count: number): Promise<boolean>;
  removeRows(sheet: string, row: number, count: number): Promise<boolean>;
  insertColumns(sheet: string, column: number, count: number): Promise<boolean>;
  removeColumns(sheet: string, column: number, count: number): Promise<boolean>;
  /** Puts rows into another order, as sorting does. `order` gives for each row the one that comes there. */
  reorder(sheet: string, area: Rectangle, order: Readonly<Record<number, number>>): Promise<boolean>;
  move(sheet: string, from: Rectangle, down: number, right: number): Promise<boolean>;
  rename(sheet: string, name: string): Promise<boolean>;
  /** Drags the corner of cells over further ones. */
  fill(sheet: string, from: Rectangle, over: Rectangle): Promise<boolean>;
  renameTable(table: string, name: string): Promise<boolean>;
  /** Shows only the rows of a table that hold one of these texts in a column; all rows without them. */
  filter(table: string, column: number, texts: readonly string[] | undefined): Promise<boolean>;
  undo(): Promise<boolean>;
  redo(): Promise<boolean>;
  /** Lets time pass until nothing is calculated any more. Timers must be faked. */
  settle(): Promise<void>;
}

export function handsOn(grid: HeadlessGrid): GridHands {
  const { unit } = grid;
  const commands = unit.injector.get(ICommandService);
  let running = 0;
  commands.onCommandExecuted(({ id, params }) => {
    if (id === SetFormulaCalculationStartMutation.id) running = 1;
    if (id === SetFormulaCalculationNotificationMutation.id && params && "functionsExecutedState" in params)
      running = 0;
  });
  const on = (sheet: string) => ({
    unitId: unit.unitId,
    subUnitId: sheetOf(unit, sheet).getSheetId(),
  });
  const wholeRows = (sheet: string, row: number, count: number): Rectangle => ({
    startRow: row,
    endRow: row + count - 1,
    startColumn: 0,
    endColumn: sheetOf(unit, sheet).getColumnCount() - 1,
  });
  const wholeColumns = (sheet: string, column: number, count: number): Rectangle => ({
    startRow: 0,
    endRow: sheetOf(unit, sheet).getRowCount() - 1,
    startColumn: column,
    endColumn: column + count - 1,
  });
  const write: GridHands["paste"] = (sheet, row, column, cells) =>
    grid.command(SetRangeValuesCommand.id, {
      ...on(sheet),
      range: {
        startRow: row,
        endRow: row + cells.length - 1,
        startColumn: column,
        endColumn: column + (cells[0]?.length ?? 1) - 1,
      },
      value: cells.map((line) => line.map(toData)),
    });
  return {
    type: (sheet, row, column, text) => write(sheet, row, column, [[text]]),
    paste: write,
    clear: (sheet, area) => grid.command(ClearSelectionContentCommand.id, { ...on(sheet), ranges: [area] }),
    insertRows: (sheet, row, count) =>
      grid.command(InsertRowCommand.id, {
        ...on(sheet),
        range: wholeRows(sheet, row, count),
        direction: Direction.UP,
      }),
    removeRows: (sheet, row, count) =>
      grid.command(RemoveRowCommand.id, { ...on(sheet), range: wholeRows(sheet, row, count) }),
    insertColumns: (sheet, column, count) =>
      grid.command(InsertColCommand.id, {
        ...on(sheet),
        range: wholeColumns(sheet, column, count),
        direction: Direction.LEFT,
      }),
    removeColumns: (sheet, column, count) =>
      grid.command(RemoveColCommand.id, { ...on(sheet), range: wholeColumns(sheet, column, count) }),
    reorder: (sheet, range, order) => grid.command(ReorderRangeCommand.id, { ...on(sheet), range, order }),
    move: (sheet, from, down, right) => {
      const { unitId, subUnitId } = on(sheet);
      return grid.command(MoveRangeCommand.id, {
        fromRange: from,
        toRange: {
          startRow: from.startRow + down,
          endRow: from.endRow + down,
          startColumn: from.startColumn + right,
          endColumn: from.endColumn + right,
        },
        fromUnitId: unitId,
        toUnitId: unitId,
        fromSubUnitId: subUnitId,
        toSubUnitId: subUnitId,
      });
    },
    rename: (sheet, name) => grid.command(SetWorksheetNameCommand.id, { ...on(sheet), name }),
    fill: (sheet, sourceRange, targetRange) =>
      grid.command(AutoFillCommand.id, { ...on(sheet), sourceRange, targetRange }),
    renameTable: (table, name) =>
      grid.command(SetSheetTableCommand.id, {
        unitId: unit.unitId,
        tableId: gridTable(unit, table)?.id,
        name,
      }),
    filter: (table, column, texts) =>
      grid.command(SetSheetTableFilterCommand.id, {
        unitId: unit.unitId,
        tableId: gridTable(unit, table)?.id,
        column,
        tableFilter: texts && { filterType: TableColumnFilterTypeEnum.manual, values: texts },
      }),
    undo: () => grid.command(UndoCommand.id, {}),
    redo: () => grid.command(RedoCommand.id, {}),
    settle: async () => {
      do {
        // Longer than the grid waits for more changes before it calculates.
        await vi.advanceTimersByTimeAsync(250);
        await new Promise((resolve) => setImmediate(resolve));
      } while (running > 0);
      await vi.advanceTimersByTimeAsync(250);
    },
  };
}

function toData(text: Typed): object {
  return typeof text === "string" && text.startsWith("=")
    ? { f: text, v: null }
    : { v: text === "" ? null : text, f: null };
}
