import { InputError } from "../../measures/inputError.ts";
import { checkArea, checkEdits, sheetNamed, tableNamed } from "../checkEdits.ts";
import { phases } from "../phases.ts";
import type { Area, Edit, RangeData, Workbook } from "../port.ts";
import { saveBefore, type Before } from "./before.ts";
import { watchChanges } from "./changes.ts";
import { editOperations } from "./editOperations.ts";
import { inWords } from "./excelError.ts";
import { fingerprint } from "./fingerprint.ts";
import { rangeOf, readRange } from "./ranges.ts";
import { inTurn, send, supports } from "./requests.ts";
import { loadShape, loadSheets, loadTables } from "./shape.ts";
import { takeBack } from "./takeBack.ts";

interface Action {
  readonly label: string;
  readonly edits: readonly Edit[];
  readonly before: readonly Before[];
  readonly after: string;
}

/** Actions that are kept for undo; each may hold some hundred thousand cells. */
const actionsKept = 20;

/**
 * The workbook that is open in Excel. Needs ExcelApi 1.9; uses notes (1.18) and one step in Excel’s own undo
 * list for one action (1.20) where they are offered.
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
    readSelection: () => run(readSelection),
    select: (area) => run((context) => select(context, area)),
    apply: (label, edits) =>
      oneAtATime(async () => {
        const action = await run((context) => applyEdits(context, label, edits), asOneUndo());
        actions = [...actions, action].slice(-actionsKept);
      }),
    lastAction: () => actions.at(-1)?.label,
    undo: () =>
      oneAtATime(async () => {
        const last = actions.at(-1);
        if (!last) return undefined;
        await run((context) => undoAction(context, last), asOneUndo());
        actions = actions.slice(0, -1);
        return last.label;
      }),
    subscribe: changes.subscribe,
    preference: (key) => run((context) => readPreference(context, key)),
    setPreference: (key, value) => run((context) => writePreference(context, key, value)),
  };
}

function asOneUndo(): Excel.RunOptions {
  return supports("1.20") ? { mergeUndoGroup: true } : {};
}

async function run<T>(
  batch: (context: Excel.RequestContext) => Promise<T>,
  options: Excel.RunOptions = {},
): Promise<T> {
  try {
    return await Excel.run(options, batch);
  } catch (error) {
    throw inWords(error);
  }
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

async function applyEdits(
  context: Excel.RequestContext,
  label: string,
  edits: readonly Edit[],
): Promise<Action> {
  const shape = await loadShape(context, edits);
  checkEdits(shape, edits);
  const sheetOf = new Map(shape.tables.map(({ name, area }) => [name.toLowerCase(), area.sheet]));
  const stretches = phases(edits, (table) => sheetOf.get(table.toLowerCase()));
  const done: Before[] = [];
  try {
    await inTurn(stretches, async (phase) => {
      const tables = done.length === 0 ? shape.tables : await loadTables(context);
      const { before, found } = await saveBefore(context, phase, tables);
      done.push(before);
      await send(
        context,
        phase.flatMap((edit) => editOperations(edit, found)),
      );
    });
    return { label, edits, before: done, after: await fingerprint(context, edits, done) };
  } catch (error) {
    await takeBackAll(context, done, inWords(error));
    throw error;
  }
}

/** After a failure: bring back all that was done before it, last first. */
async function takeBackAll(
  context: Excel.RequestContext,
  done: readonly Before[],
  why: Error,
): Promise<void> {
  try {
    await inTurn([...done].reverse(), (before) => takeBack(context, before));
  } catch {
    throw new InputError(
      `${why.message} Part of the change could not be taken back: use Excel’s own Undo until the sheet looks as before.`,
    );
  }
}

async function undoAction(context: Excel.RequestContext, action: Action): Promise<void> {
  if ((await fingerprint(context, action.edits, action.before)) !== action.after) {
    throw new InputError(
      `“${action.label}” cannot be undone here, because cells that it wrote were changed since. Nothing was touched.`,
    );
  }
  await inTurn([...action.before].reverse(), (before) => takeBack(context, before));
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
