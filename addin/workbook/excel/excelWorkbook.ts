import { InputError } from "../../measures/inputError.ts";
import { checkArea, checkEdits, sheetNamed, tableNamed } from "../checkEdits.ts";
import { formulasLast } from "../formulasLast.ts";
import { phases } from "../phases.ts";
import type { Area, Edit, RangeData, Workbook } from "../port.ts";
import { saveBefore, lastLook, type Before } from "./before.ts";
import { refuseProtected } from "./blocked.ts";
import { watchChanges } from "./changes.ts";
import { editOperations, marksOf, settlingOperations } from "./editOperations.ts";
import { inWords, isMendable } from "./excelError.ts";
import { findCells } from "./findCells.ts";
import { fingerprint } from "./fingerprint.ts";
import { finishGrowths, keepSizes } from "./growth.ts";
import { putMarks } from "./marks.ts";
import { addPickLists } from "./pickLists.ts";
import { rangeOf, readRange } from "./ranges.ts";
import { inTurn, send, supports } from "./requests.ts";
import { loadShape, loadSheets, loadTables } from "./shape.ts";
import { restorePart, takeBack } from "./takeBack.ts";

interface Action {
  readonly label: string;
  readonly edits: readonly Edit[];
  readonly before: readonly Before[];
  /** What it left; `undefined` where it was taken back in part, so that the rest may follow. */
  readonly after: string | undefined;
}

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
  let actions: readonly Action[] = [];
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
    select: (area) => run((context) => select(context, area)),
    apply: (label, edits) =>
      oneAtATime(async () => {
        const action = await applyAction(label, edits);
        actions = [...actions, action].slice(-actionsKept);
      }),
    lastAction: () => actions.at(-1)?.label,
    undo: () =>
      oneAtATime(async () => {
        const last = actions.at(-1);
        if (!last) return undefined;
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

/** What is used without asking: sorting as an event and comments came last of it. */
export const leastApi = "1.10";

/** @throws {InputError} when this Excel is older than the pane needs */
function requireExcel(): void {
  if (supports(leastApi)) return;
  throw new InputError(
    "This Excel is too old for the pane. It needs Excel for Microsoft 365, Excel 2021 or later, or Excel on the web.",
  );
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

/**
 * Apply edits as one step of Excel’s own undo list where Excel offers that. Where the step cannot be had, which also
 * happens to many formulas at once, what was done is taken back and done again as several steps.
 */
async function applyAction(label: string, edits: readonly Edit[]): Promise<Action> {
  requireExcel();
  try {
    if (!supports("1.20")) return await attempt(label, edits, {});
    return await attempt(label, edits, { mergeUndoGroup: true }).catch((error: unknown) => {
      if (isMendable(error)) throw error;
      return attempt(label, edits, {});
    });
  } catch (error) {
    throw inWords(error);
  }
}

/** @throws what Excel or the edits have against it, once all is as before */
async function attempt(label: string, edits: readonly Edit[], options: Excel.RunOptions): Promise<Action> {
  const done: Before[] = [];
  try {
    return await Excel.run(options, (context) => applyEdits(context, label, edits, done));
  } catch (error) {
    await takeBackAll(done).catch(() => {
      throw new InputError(
        `${inWords(error).message} Part of the change could not be taken back: use Excel’s own Undo until the sheet looks as before.`,
      );
    });
    throw error;
  }
}

/** @param done gets what each phase is about to change, before it does */
async function applyEdits(
  context: Excel.RequestContext,
  label: string,
  edits: readonly Edit[],
  done: Before[],
): Promise<Action> {
  const shape = await loadShape(context, edits);
  checkEdits(shape, edits);
  await refuseProtected(context, edits, shape);
  const sheets = new Map(shape.tables.map(({ name, area }) => [name.toLowerCase(), area.sheet]));
  const sheetOf = (table: string) => sheets.get(table.toLowerCase());
  await inTurn(phases(formulasLast(edits, sheetOf), sheetOf), async (phase) => {
    const tables = done.length === 0 ? shape.tables : await loadTables(context);
    const { before, found, marks } = await saveBefore(context, phase, tables);
    const look = lastLook(before);
    done.push(before);
    await send(context, [look.operation, ...phase.flatMap((edit) => editOperations(edit, found))]);
    const meanwhile = look.changed();
    if (meanwhile) {
      done.splice(-1, 1, meanwhile);
      throw new InputError("Somebody else changed the same cells just now. Look at them, then try again.");
    }
    await finishGrowths(context, before.growths);
    await send(
      context,
      phase.flatMap((edit) => settlingOperations(edit, found)),
    );
    await keepSizes(context, before.neighbours, before.asides.flatMap(restorePart));
    const wanted = marksOf(phase);
    if (wanted.length > 0) await putMarks(context, wanted, await loadTables(context), marks);
  });
  await addPickLists(context, edits);
  return { label, edits, before: [...done], after: await fingerprint(context, edits, done) };
}

/**
 * Bring back all that was done, last first. Never as one step of Excel’s own undo list: removing a sheet cannot be undone,
 * and in such a step it fails. What breaks off once is tried again: it does not matter how far it got.
 */
async function takeBackAll(done: readonly Before[]): Promise<void> {
  if (done.length === 0) return;
  const work = () =>
    Excel.run({ delayForCellEdit: true }, (context) =>
      inTurn([...done].reverse(), (before) => takeBack(context, before)),
    );
  await work().catch(work);
}

async function requireUntouched(context: Excel.RequestContext, action: Action): Promise<void> {
  if (action.after === undefined) return;
  const known = { sheets: await loadSheets(context), tables: await loadTables(context) };
  await refuseProtected(context, action.edits, known);
  if ((await fingerprint(context, action.edits, action.before)) !== action.after) {
    throw new InputError(
      `“${action.label}” cannot be undone here, because cells that it wrote were changed since. Nothing was touched.`,
    );
  }
}

async function undoAction(action: Action): Promise<void> {
  try {
    await takeBackAll(action.before);
  } catch (error) {
    throw new InputError(
      `“${action.label}” is taken back in part only. ${inWords(error).message} Undo goes on from there.`,
    );
  }
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
