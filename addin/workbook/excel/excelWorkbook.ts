import { InputError } from "../../measures/inputError.ts";
import { checkArea, sheetNamed, tableNamed } from "../existing.ts";
import type { Area, CellAddress, RangeData, Workbook } from "../port.ts";
import type * as Actions from "./actions.ts";
import { watchChanges } from "./changes.ts";
import { inWords } from "./excelError.ts";
import { findCells } from "./findCells.ts";
import { rangeOf, readRange } from "./ranges.ts";
import { requireExcel } from "./requests.ts";
import { loadSheets, loadTables } from "./shape.ts";

/** Actions that are kept for undo; each may hold some hundred thousand cells. */
const actionsKept = 20;

/**
 * The workbook that is open in Excel. Needs ExcelApi 1.10; resizes tables (1.13), sets notes (1.18) and makes one step
 * in Excel’s own undo list of one action (1.20) where that is offered.
 *
 * @param settleMs how long the sheet has to be quiet before subscribers are told of a change, in milliseconds
 */
export function createExcelWorkbook({ settleMs = 300 }: { readonly settleMs?: number } = {}): Workbook {
  const changes = watchChanges(settleMs);
  let actions: readonly Actions.Action[] = [];
  let queue: Promise<unknown> = Promise.resolve();

  /** Actions wait for one another, so that none sees another half-done. */
  const oneAtATime = <T>(work: () => Promise<T>): Promise<T> => {
    const done = queue.then(() => changes.ours(work));
    queue = done.catch(() => undefined);
    return done;
  };

  return {
    host: "excel",
    sheets: () => run(loadSheets),
    tables: () => run(loadTables),
    readTable: (name) =>
      run(async (context) => readRange(context, tableNamed(await loadTables(context), name).area)),
    readArea: (area) =>
      run(async (context) => {
        const sheets = await loadSheets(context);
        checkArea({ sheets }, area);
        return readRange(context, { ...area, sheet: sheetNamed(sheets, area.sheet) });
      }),
    usedArea: (sheet) => run((context) => usedArea(context, sheet)),
    findCells: (isWanted) => run((context) => findCells(context, isWanted)),
    readSelection: () => run(readSelection),
    selectedCell: () => run(selectedCell),
    select: (area) => run((context) => select(context, area)),
    apply: (label, edits) =>
      oneAtATime(async () => {
        const { applyAction } = await loadActions();
        const action = await applyAction(label, edits);
        actions = [...actions, action].slice(-actionsKept);
      }),
    lastAction: () => actions.at(-1)?.label,
    undo: () =>
      oneAtATime(async () => {
        const last = actions.at(-1);
        if (!last) return undefined;
        const { requireUntouched, undoAction } = await loadActions();
        await run((context) => requireUntouched(context, last));
        const earlier = actions.slice(0, -1);
        actions = [...earlier, { ...last, after: undefined }];
        await undoAction(last);
        actions = earlier;
        return last.label;
      }),
    calculatesByItself: () => run(calculatesByItself),
    subscribe: changes.subscribe,
    preference: (key) => run((context) => readPreference(context, key)),
    setPreference: (key, value) => run((context) => writePreference(context, key, value)),
  };
}

/** What writes comes when something is first written. */
async function loadActions(): Promise<typeof Actions> {
  requireExcel();
  try {
    return await import("./actions.ts");
  } catch {
    throw new InputError(
      "The part of Measure Book that writes into the workbook could not be fetched. Look at the connection to the internet, then try again. Nothing was changed.",
    );
  }
}

async function run<T>(
  batch: (context: Excel.RequestContext) => Promise<T>,
  options: Excel.RunOptions = {},
): Promise<T> {
  requireExcel();
  try {
    return await Excel.run(options, batch);
  } catch (error) {
    throw inWords(error);
  }
}

async function usedArea(context: Excel.RequestContext, name: string): Promise<Area | undefined> {
  const sheet = sheetNamed(await loadSheets(context), name);
  const used = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(true);
  used.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
  await context.sync();
  if (used.isNullObject) return undefined;
  const { rowIndex, columnIndex, rowCount, columnCount } = used;
  return { sheet, row: rowIndex, column: columnIndex, rows: rowCount, columns: columnCount };
}

async function readSelection(context: Excel.RequestContext): Promise<RangeData> {
  const selected = context.workbook.getSelectedRange();
  const sheet = selected.worksheet;
  sheet.load("name");
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("address");
  await context.sync();
  if (used.isNullObject) throw nothingSelected();
  const part = selected.getIntersectionOrNullObject(used);
  part.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
  await context.sync();
  if (part.isNullObject) throw nothingSelected();
  return readRange(context, {
    sheet: sheet.name,
    row: part.rowIndex,
    column: part.columnIndex,
    rows: part.rowCount,
    columns: part.columnCount,
  });
}

async function selectedCell(context: Excel.RequestContext): Promise<CellAddress> {
  const selected = context.workbook.getSelectedRange();
  selected.load(["rowIndex", "columnIndex"]);
  const sheet = selected.worksheet;
  sheet.load("name");
  await context.sync();
  return { sheet: sheet.name, row: selected.rowIndex, column: selected.columnIndex };
}

async function calculatesByItself(context: Excel.RequestContext): Promise<boolean> {
  const { application } = context;
  application.load("calculationMode");
  await context.sync();
  return application.calculationMode !== "Manual";
}

function nothingSelected(): InputError {
  return new InputError("The selected cells are empty. Select the cells that you mean, then try again.");
}

async function select(context: Excel.RequestContext, area: Area): Promise<void> {
  const sheets = await loadSheets(context);
  checkArea({ sheets }, area);
  const range = rangeOf(context, { ...area, sheet: sheetNamed(sheets, area.sheet) });
  range.worksheet.activate();
  range.select();
  await context.sync();
}

/** Preferences are kept as JSON text in the workbook’s settings, under names of our own. */
function settingName(key: string): string {
  return `MeasureBook.${key}`;
}

async function readPreference(context: Excel.RequestContext, key: string): Promise<unknown> {
  const setting = context.workbook.settings.getItemOrNullObject(settingName(key));
  setting.load("value");
  await context.sync();
  return setting.isNullObject ? undefined : JSON.parse(String(setting.value));
}

async function writePreference(context: Excel.RequestContext, key: string, value: unknown): Promise<void> {
  const { settings } = context.workbook;
  const setting = settings.getItemOrNullObject(settingName(key));
  setting.load("value");
  await context.sync();
  if (value !== undefined) settings.add(settingName(key), JSON.stringify(value));
  else if (!setting.isNullObject) setting.delete();
  await context.sync();
}
