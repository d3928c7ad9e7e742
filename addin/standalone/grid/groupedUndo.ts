import type { DependencyOverride, IDisposable, IMutationInfo, IUndoRedoItem } from "@univerjs/core";
import {
  ICommandService,
  IContextService,
  IUndoRedoService,
  IUniverInstanceService,
  LocalUndoRedoService,
  RedoCommandId,
  sequenceExecute,
  UndoCommandId,
} from "@univerjs/core";
import { RemoveSheetMutation } from "@univerjs/sheets";

/** Steps that can be taken back with Ctrl+Z. */
const depth = 100;

/**
 * The grid’s list of undo steps, with one thing added: several commands can count as one step.
 * The grid’s own batching undoes the commands of a batch first to last, which fails when they build on one another.
 */
export class GroupedUndo extends LocalUndoRedoService {
  #group: IUndoRedoItem | undefined;
  #isRunning = false;

  /** True while a step is taken back or done again, in whichever way. */
  get isRunning(): boolean {
    return this.#isRunning;
  }

  /** Notices when Ctrl+Z and Ctrl+Y are at work. */
  watchKeys(commands: ICommandService): IDisposable {
    const isOfKeys = (id: string): boolean => id === UndoCommandId || id === RedoCommandId;
    const before = commands.beforeCommandExecuted(({ id }) => {
      if (isOfKeys(id)) this.#isRunning = true;
    });
    const after = commands.onCommandExecuted(({ id }) => {
      if (isOfKeys(id)) this.#isRunning = false;
    });
    return {
      dispose: () => {
        before.dispose();
        after.dispose();
      },
    };
  }

  /** From now on, commands count as one step, until `endGroup`. */
  beginGroup(unitId: string): void {
    this.#group = { unitID: unitId, undoMutations: [], redoMutations: [] };
  }

  /** The step, now the last one that Ctrl+Z takes back; `undefined` when nothing was done. */
  endGroup(): IUndoRedoItem | undefined {
    const group = this.#group;
    this.#group = undefined;
    if (!group || group.redoMutations.length === 0) return undefined;
    this.pushUndoRedo(group);
    return group;
  }

  /** Count what a piece of work does as part of the step before it. The work must not wait for anything. */
  extendLast(unitId: string, work: () => void): void {
    if (this.#group?.unitID === unitId) {
      work();
      return;
    }
    this.beginGroup(unitId);
    work();
    const more = this.#group;
    this.#group = undefined;
    const last = this._getUndoStack(unitId)?.at(-1);
    if (!more || more.redoMutations.length === 0) return;
    if (!last) {
      this.pushUndoRedo(more);
      return;
    }
    last.undoMutations.unshift(...more.undoMutations);
    last.redoMutations.push(...more.redoMutations);
  }

  override pushUndoRedo(item: IUndoRedoItem): void {
    if (this.#group?.unitID === item.unitID) {
      this.#group = joined(this.#group, item);
      return;
    }
    this._getRedoStack(item.unitID, true).length = 0;
    const steps = this._getUndoStack(item.unitID, true);
    steps.push(item);
    steps.splice(0, steps.length - depth);
    this._updateStatus();
  }

  /** The steps that can be taken back, oldest first. */
  steps(unitId: string): readonly IUndoRedoItem[] {
    return this._getUndoStack(unitId) ?? [];
  }

  /** Take back the last step; it can be done again with Ctrl+Y. */
  takeBackLast(unitId: string): void {
    const item = this._getUndoStack(unitId, true).pop();
    if (!item) return;
    this.#run(item.undoMutations);
    this._getRedoStack(unitId, true).push(item);
    this._updateStatus();
  }

  /** Take back the last step for good, because it has failed half-way. */
  discardLast(unitId: string): void {
    this.takeBackLast(unitId);
    this._getRedoStack(unitId, true).pop();
    this._updateStatus();
  }

  /** Take back an earlier step and keep those after it: counts as a step of its own. */
  takeBack(item: IUndoRedoItem): void {
    this.#run(item.undoMutations);
    this.pushUndoRedo({
      unitID: item.unitID,
      undoMutations: item.redoMutations,
      redoMutations: item.undoMutations,
    });
  }

  #run(mutations: IMutationInfo[]): void {
    this.#isRunning = true;
    const { result } = sequenceExecute(sheetsLast(mutations), this._commandService);
    this.#isRunning = false;
    if (!result) throw new Error("A step could not be taken back as a whole.");
  }
}

/**
 * The grid cannot change cells right after the sheet in sight was removed, as when several new sheets are taken back: it
 * has not drawn another yet. So sheets go last; what else a step changes does not need them gone.
 */
function sheetsLast(mutations: IMutationInfo[]): IMutationInfo[] {
  const isRemoval = ({ id }: IMutationInfo): boolean => id === RemoveSheetMutation.id;
  return [...mutations.filter((each) => !isRemoval(each)), ...mutations.filter(isRemoval)];
}

function joined(group: IUndoRedoItem, next: IUndoRedoItem): IUndoRedoItem {
  return {
    ...group,
    undoMutations: [...next.undoMutations, ...group.undoMutations],
    redoMutations: [...group.redoMutations, ...next.redoMutations],
  };
}

/** Puts `GroupedUndo` in the place of the grid’s own service. */
export const groupedUndoOverride: DependencyOverride = [
  [
    IUndoRedoService,
    {
      useFactory: (instances: IUniverInstanceService, commands: ICommandService, contexts: IContextService) =>
        new GroupedUndo(instances, commands, contexts),
      deps: [IUniverInstanceService, ICommandService, IContextService],
    },
  ],
];
