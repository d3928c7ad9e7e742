import { InputError } from "../../measures/inputError.ts";
import { checkEdits } from "../checkEdits.ts";
import { formulasLast } from "../formulasLast.ts";
import { phases } from "../phases.ts";
import type { Edit } from "../port.ts";
import { saveBefore, lastLook, type Before } from "./before.ts";
import { refuseProtected } from "./blocked.ts";
import { editOperations, marksOf, settlingOperations } from "./editOperations.ts";
import { inWords, isMendable } from "./excelError.ts";
import { fingerprint } from "./fingerprint.ts";
import { finishGrowths, keepSizes } from "./growth.ts";
import { putMarks } from "./marks.ts";
import { addPickLists } from "./pickLists.ts";
import { inTurn, send, supports } from "./requests.ts";
import { loadShape, loadSheets, loadTables } from "./shape.ts";
import { restorePart, takeBack } from "./takeBack.ts";

/** What was applied, so that it can be taken back. */
export interface Action {
  readonly label: string;
  readonly edits: readonly Edit[];
  readonly before: readonly Before[];
  /** What it left; `undefined` where it was taken back in part, so that the rest may follow. */
  readonly after: string | undefined;
}

/**
 * Apply edits as one step of Excel’s own undo list where Excel offers that. Where the step cannot be had, which also
 * happens to many formulas at once, what was done is taken back and done again as several steps.
 */
export async function applyAction(label: string, edits: readonly Edit[]): Promise<Action> {
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

/** @throws {InputError} when cells that the action wrote were changed since */
export async function requireUntouched(context: Excel.RequestContext, action: Action): Promise<void> {
  if (action.after === undefined) return;
  const known = { sheets: await loadSheets(context), tables: await loadTables(context) };
  await refuseProtected(context, action.edits, known);
  if ((await fingerprint(context, action.edits, action.before)) !== action.after) {
    throw new InputError(
      `“${action.label}” cannot be undone here, because cells that it wrote were changed since. Nothing was touched.`,
    );
  }
}

/** @throws {InputError} when it is taken back in part only */
export async function undoAction(action: Action): Promise<void> {
  try {
    await takeBackAll(action.before);
  } catch (error) {
    throw new InputError(
      `“${action.label}” is taken back in part only. ${inWords(error).message} Undo goes on from there.`,
    );
  }
}
