import type { IRange, IUndoRedoItem, IWorkbookData } from "@univerjs/core";
import { ICommandService, IResourceLoaderService, IUndoRedoService, RANGE_TYPE } from "@univerjs/core";
import {
  SetSelectionsOperation,
  SetWorksheetActivateCommand,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { isCellError } from "../../chart/cell.ts";
import { InputError } from "../../measures/inputError.ts";
import { checkEdits } from "../../workbook/checkEdits.ts";
import { checkArea, tableNamed } from "../../workbook/existing.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import type {
  Area,
  CellAddress,
  FoundCell,
  RangeData,
  TypedCell,
  Workbook,
  WorkbookChange,
} from "../../workbook/port.ts";
import type { EditableUnit } from "./applyEdit.ts";
import { applyEdit } from "./applyEdit.ts";
import { allCalculated } from "./calculated.ts";
import type { GridChange } from "./changes.ts";
import { watchChanges } from "./changes.ts";
import type { FormulaErrors } from "./formulaErrors.ts";
import { filledCells, readContent } from "./fromGrid.ts";
import { guardCalculation } from "./guardCalculation.ts";
import { GroupedUndo } from "./groupedUndo.ts";
import type { GridUnit } from "./gridSheets.ts";
import {
  readArea,
  sheetNames,
  sheetOf,
  spilledIn,
  tablesOf,
  toArea,
  toRectangle,
  usedIn,
  workbookOf,
} from "./gridSheets.ts";
import type { LostHeading } from "./followHeadings.ts";
import { followHeadings } from "./followHeadings.ts";
import type { KeptAsText } from "./keepAsText.ts";
import { keepAsText } from "./keepAsText.ts";
import { keepFilters } from "./keepFilters.ts";
import { renewFormulas } from "./renewFormulas.ts";
import { roomyNewSheets } from "./roomyNewSheets.ts";
import type { BesideTable } from "./tendTables.ts";
import { takeIn, tendTables } from "./tendTables.ts";
import { readTypedFormulas } from "./typedFormulas.ts";
import { conflicts } from "./undoConflict.ts";
import { toCell } from "./values.ts";
import { columnLetters } from "../../chart/columnLetters.ts";

/** The port on the embedded grid, and what the page around it needs beside the port. */
export interface GridWorkbook extends Workbook {
  errorAt(at: CellAddress): string | undefined;
  /** Resolves when nothing that was changed until now waits to be calculated. */
  calculated(): Promise<void>;
  /** All that the workbook holds, formulas with what they give now. */
  content(): WorkbookContent;
  /** The grid’s own form of the workbook, which keeps every look that a user has given it. */
  snapshot(): IWorkbookData;
  /** Called at once after every change that is worth keeping, whoever made it. Returns the unsubscriber. */
  onEdit(listener: () => void): () => void;
  /** Called for every formula that is kept as text, because it must not be calculated. Returns the unsubscriber. */
  onKeptAsText(listener: KeptAsText): () => void;
  /** Called when something typed has not become what it may have been meant to be. Returns the unsubscriber. */
  onTableHint(listener: (hint: TableHint) => void): () => void;
  /** Stop listening to the grid. */
  close(): void;
}

/** What a user should know about a table after typing, with a way to mend it. */
export type TableHint =
  /** `takeIn` makes the column part of the table, and gives its heading. */
  | (BesideTable & { readonly kind: "beside"; readonly takeIn: () => Promise<string> })
  /** `takeBack` takes back the step that changed the heading. */
  | (LostHeading & { readonly kind: "heading lost"; readonly takeBack: () => Promise<void> });

interface Action {
  readonly label: string;
  readonly step: IUndoRedoItem;
}

/** Changes come in bursts; subscribers hear once, this long after the last one. */
const quietMs = 150;

const scrollToCell = "sheet.command.scroll-to-cell";

/** @param opened the workbook as it was opened */
export function createGridWorkbook(
  unit: GridUnit,
  errors: FormulaErrors,
  opened: IWorkbookData,
): GridWorkbook {
  const undo = groupedUndo(unit);
  const editable: EditableUnit = { ...unit, undo };
  const listeners = new Set<(change: WorkbookChange) => void>();
  const editListeners = new Set<() => void>();
  const textListeners = new Set<KeptAsText>();
  const hintListeners = new Set<(hint: TableHint) => void>();
  /** The sheets to tell of, with what was typed into them. */
  const told = new Map<string, readonly TypedCell[]>();
  let actions: readonly Action[] = [];
  let isOwn = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: Promise<unknown> = Promise.resolve();

  const tell = (): void => {
    const changes = [...told].map(([id, typed]): WorkbookChange => {
      const sheet = workbookOf(unit).getSheetBySheetId(id)?.getName() ?? "";
      return typed.length > 0 ? { sheet, typed } : { sheet };
    });
    told.clear();
    for (const listener of listeners) for (const change of changes) listener(change);
  };

  const changed = ({ kind, sheetId, typed }: GridChange): void => {
    if (kind === "edit") for (const listener of editListeners) listener();
    if (isOwn) return;
    told.set(sheetId, [...(told.get(sheetId) ?? []), ...(typed ? [typed] : [])]);
    clearTimeout(timer);
    timer = setTimeout(tell, quietMs);
  };

  const hint = (told: TableHint): void => {
    for (const listener of hintListeners) listener(told);
  };
  const onBeside = (beside: BesideTable): void => {
    hint({
      kind: "beside",
      ...beside,
      takeIn: () =>
        act(`Take column ${columnLetters(beside.at.column)} into ${beside.table}`, () =>
          takeIn(editable, beside),
        ),
    });
  };
  const onLostHeading = (lost: LostHeading): void => {
    const step = undo.steps(unit.unitId).at(-1);
    hint({
      kind: "heading lost",
      ...lost,
      takeBack: () =>
        inTurn(() => {
          if (step) takeBack(editable, { label: `The change of “${lost.heading}”`, step });
        }),
    });
  };

  const watching = [
    undo.watchKeys(unit.injector.get(ICommandService)),
    guardCalculation(unit, errors),
    keepAsText(unit, (formula, why) => {
      for (const listener of textListeners) listener(formula, why);
    }),
    watchChanges(unit, errors, changed),
    tendTables(editable, { isOwn: () => isOwn, onBeside }),
    followHeadings(editable, onLostHeading),
    readTypedFormulas(unit),
    keepFilters(unit, opened),
    renewFormulas(unit, errors),
    roomyNewSheets(editable),
  ];

  /** One action after the other, and what it changes is known to be ours. */
  const inTurn = <T>(work: () => Promise<T> | T): Promise<T> => {
    const turn = last.then(async () => {
      isOwn = true;
      try {
        return await work();
      } finally {
        isOwn = false;
      }
    });
    last = turn.catch(() => undefined);
    return turn;
  };

  /** Does something as one step of the undo list. When it fails, what it has done so far is taken back. */
  const act = <T>(label: string, work: () => Promise<T>, check = (): void => undefined): Promise<T> =>
    inTurn(async () => {
      check();
      undo.beginGroup(unit.unitId);
      try {
        const result = await work();
        const step = undo.endGroup();
        if (step) actions = [...actions, { label, step }];
        return result;
      } catch (error) {
        if (undo.endGroup()) undo.discardLast(unit.unitId);
        throw error;
      }
    });

  /** Actions that have not been taken back, with Ctrl+Z for example. */
  const open = (): readonly Action[] => {
    const steps = new Set(undo.steps(unit.unitId));
    return actions.filter((action) => steps.has(action.step));
  };

  return {
    host: "standalone",
    sheets: later(() => sheetNames(unit)),
    tables: later(() => tablesOf(unit)),
    readTable: later((name: string) => readArea(unit, tableNamed(tablesOf(unit), name).area)),
    readArea: later((area: Area) => {
      checkArea({ sheets: sheetNames(unit) }, area);
      return readArea(unit, area);
    }),
    usedArea: later((name: string) => usedArea(unit, name)),
    findCells: later((isWanted: (cell: FoundCell) => boolean) => filledCells(unit).filter(isWanted)),
    readSelection: later(() => readSelection(unit)),
    selectedCell: later(() => firstSelected(unit)),
    select: later((area: Area) => select(unit, area)),
    apply: (label, edits) =>
      act(
        label,
        async () => {
          for (const edit of edits) await applyEdit(editable, edit);
        },
        () => {
          checkEdits(shapeOf(unit), edits);
        },
      ),
    lastAction: () => open().at(-1)?.label,
    undo: () =>
      inTurn(() => {
        const action = open().at(-1);
        if (!action) return undefined;
        takeBack(editable, action);
        const isOnRecord = undo.steps(unit.unitId).includes(action.step);
        if (isOnRecord) actions = actions.filter((other) => other !== action);
        return action.label;
      }),
    errorAt: (at) => errorAt(unit, errors, at),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    preference: later((key: string): unknown => preferencesOf(unit)[key]),
    setPreference: later((key: string, value: unknown) => {
      const others = Object.entries(preferencesOf(unit)).filter(([name]) => name !== key);
      const preferences = Object.fromEntries(
        value === undefined ? others : [...others, [key, toJson(value)]],
      );
      const workbook = workbookOf(unit);
      workbook.setCustomMetadata({ ...workbook.getCustomMetadata(), preferences });
      for (const listener of editListeners) listener();
    }),
    calculated: () => allCalculated(unit.injector),
    content: () => readContent(unit),
    snapshot: () => unit.injector.get(IResourceLoaderService).saveUnit<IWorkbookData>(unit.unitId)!,
    onEdit: (listener) => {
      editListeners.add(listener);
      return () => editListeners.delete(listener);
    },
    onKeptAsText: (listener) => {
      textListeners.add(listener);
      return () => textListeners.delete(listener);
    },
    onTableHint: (listener) => {
      hintListeners.add(listener);
      return () => hintListeners.delete(listener);
    },
    close: () => {
      clearTimeout(timer);
      for (const each of watching) each.dispose();
      listeners.clear();
      editListeners.clear();
      textListeners.clear();
      hintListeners.clear();
    },
  };
}

/** The same work behind a promise: what it throws becomes a rejection. */
function later<A extends unknown[], R>(work: (...args: A) => R | Promise<R>): (...args: A) => Promise<R> {
  return async (...args) => Promise.resolve().then(() => work(...args));
}

function groupedUndo({ injector }: GridUnit): GroupedUndo {
  const undo = injector.get(IUndoRedoService);
  if (undo instanceof GroupedUndo) return undo;
  throw new Error("The grid was opened without the undo list that groups steps.");
}

function shapeOf(unit: GridUnit) {
  return {
    sheets: sheetNames(unit),
    tables: tablesOf(unit),
    firstRow: (area: Area) => readArea(unit, { ...area, rows: 1 }).values[0] ?? [],
  };
}

function isLastStep({ undo, unitId }: EditableUnit, { step }: Action): boolean {
  return undo.steps(unitId).at(-1) === step;
}

/** @throws {InputError} when what the action wrote was changed since */
function takeBack(unit: EditableUnit, action: Action): void {
  const { undo, unitId } = unit;
  if (isLastStep(unit, action)) {
    undo.takeBackLast(unitId);
    return;
  }
  const steps = undo.steps(unitId);
  if (conflicts(action.step, steps.slice(steps.indexOf(action.step) + 1))) {
    throw new InputError(
      `“${action.label}” cannot be undone, because cells that it wrote were changed since. Nothing was touched. Take back your later changes first, with Ctrl+Z in the sheet.`,
    );
  }
  undo.takeBack(action.step);
}

function usedArea(unit: GridUnit, name: string): Area | undefined {
  const sheet = sheetOf(unit, name);
  const used = usedIn(unit, sheet);
  return used && toArea(sheet.getName(), used);
}

function readSelection(unit: GridUnit): RangeData {
  const selected = unit.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
  const sheet = workbookOf(unit).getActiveSheet();
  const used = selected && usedIn(unit, sheet, wholeLines(selected));
  if (!used) {
    throw new InputError("The selected cells are empty. Select the cells that you mean, then try again.");
  }
  return readArea(unit, toArea(sheet.getName(), used));
}

function firstSelected(unit: GridUnit): CellAddress {
  const selected = unit.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
  const sheet = workbookOf(unit).getActiveSheet().getName();
  if (!selected) throw new InputError("No cell is selected. Click the cell that you mean, then try again.");
  const { startRow, startColumn } = wholeLines(selected);
  return { sheet, row: startRow, column: startColumn };
}

/** The cell that is selected now; of an area, the one that is typed into. */
export function selectedCell(unit: GridUnit): CellAddress | undefined {
  const primary = unit.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
  if (!primary) return undefined;
  const sheet = workbookOf(unit).getActiveSheet().getName();
  return { sheet, row: primary.startRow, column: primary.startColumn };
}

/** Whole rows and columns are selected without ends. */
function wholeLines(range: IRange) {
  const { startRow, endRow, startColumn, endColumn } = range;
  return {
    startRow: Number.isFinite(startRow) ? startRow : 0,
    endRow: Number.isFinite(endRow) ? endRow : Infinity,
    startColumn: Number.isFinite(startColumn) ? startColumn : 0,
    endColumn: Number.isFinite(endColumn) ? endColumn : Infinity,
  };
}

async function select(unit: GridUnit, area: Area): Promise<void> {
  checkArea({ sheets: sheetNames(unit) }, area);
  const commands = unit.injector.get(ICommandService);
  const place = { unitId: unit.unitId, subUnitId: sheetOf(unit, area.sheet).getSheetId() };
  const range = { ...toRectangle(area), rangeType: RANGE_TYPE.NORMAL, ...place, sheetId: place.subUnitId };
  const { row, column } = area;
  const primary = {
    ...toRectangle({ row, column, rows: 1, columns: 1 }),
    actualRow: row,
    actualColumn: column,
    isMerged: false,
    isMergedMainCell: false,
  };
  await commands.executeCommand(SetWorksheetActivateCommand.id, place);
  await commands.executeCommand(SetSelectionsOperation.id, {
    ...place,
    selections: [{ range, primary, style: null }],
  });
  if (commands.hasCommand(scrollToCell)) await commands.executeCommand(scrollToCell, { range });
}

function errorAt(unit: GridUnit, errors: FormulaErrors, at: CellAddress): string | undefined {
  const sheet = workbookOf(unit).getSheetBySheetName(at.sheet);
  if (!sheet) return undefined;
  const sheetId = sheet.getSheetId();
  const { row, column } = at;
  const value = toCell(spilledIn(unit, sheetId).get(row, column) ?? sheet.getCellRaw(row, column));
  return isCellError(value) ? errors.messageFor({ sheetId, row, column }, value.error) : undefined;
}

function preferencesOf(unit: GridUnit): Record<string, unknown> {
  const kept: unknown = workbookOf(unit).getCustomMetadata()?.preferences;
  return isRecord(kept) ? kept : {};
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function toJson(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}
