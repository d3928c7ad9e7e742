import type { Keeper } from "./bookStore.ts";
import { whatever } from "./bookStore.ts";
import { StorageError } from "./records.ts";

/** What became of the user’s work, for the page to say in words. */
export type SaveState =
  | { readonly kind: "kept"; readonly at: number }
  | { readonly kind: "keeping" }
  /** The browser keeps nothing on this page. */
  | { readonly kind: "not kept" }
  | { readonly kind: "other tab" }
  | { readonly kind: "failed"; readonly message: string };

export interface Autosave {
  readonly state: SaveState;
  /** The save that was opened or made last. */
  readonly lastSave: LastSave | undefined;
  /** Something changed: keep it soon. */
  edited(): void;
  /** Keep it now, if anything changed. */
  flush(): Promise<void>;
  /** The page is going away: keep what was not kept yet, at once. */
  leave(): void;
  /** Keep it now, and overwrite what another tab has kept. */
  takeOver(): Promise<void>;
  /** The workbook is no longer the one to keep. */
  stop(): void;
}

export interface LastSave {
  readonly id: string;
  readonly savedAt: number;
}

export interface AutosaveOptions {
  readonly into: Keeper;
  /** The workbook as text, as it is now. */
  readonly read: () => string;
  readonly onState: (state: SaveState) => void;
  /** The save that was opened, if any. */
  readonly basedOn: LastSave | undefined;
  /** After the last edit. */
  readonly quietMs?: number;
  /** Even while edits go on. */
  readonly longestMs?: number;
}

/** Keeps a workbook while it is edited. */
export function createAutosave(options: AutosaveOptions): Autosave {
  const { into, read, onState, quietMs = 800, longestMs = 4000 } = options;
  let state: SaveState = !into.keeps
    ? { kind: "not kept" }
    : options.basedOn === undefined
      ? { kind: "keeping" }
      : { kind: "kept", at: options.basedOn.savedAt };
  let lastSave = options.basedOn;
  let isChanged = false;
  let isSaving = false;
  let firstEdit = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: Promise<unknown> = Promise.resolve();
  let isStopped = false;

  const say = (next: SaveState): void => {
    state = next;
    if (!isStopped) onState(next);
  };

  const saveNow = async (over: boolean): Promise<void> => {
    if (isStopped || (!isChanged && !over)) return;
    isChanged = false;
    isSaving = true;
    try {
      const { id, savedAt } = await into.save(read(), over ? whatever : lastSave?.id);
      lastSave = { id, savedAt };
      // What was changed meanwhile is not kept yet.
      const kept: SaveState = isChanged ? { kind: "keeping" } : { kind: "kept", at: savedAt };
      say(into.keeps ? kept : { kind: "not kept" });
    } catch (error) {
      isChanged = true;
      if (error instanceof StorageError && error.reason === "other tab") say({ kind: "other tab" });
      else say({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
    } finally {
      isSaving = false;
    }
  };

  /** One save after the other, so that each is based on the one before. */
  const save = (over: boolean): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    const next = last.then(() => saveNow(over));
    last = next;
    return next;
  };

  return {
    get state() {
      return state;
    },
    get lastSave() {
      return lastSave;
    },
    edited: () => {
      isChanged = true;
      if (state.kind === "other tab") return;
      if (state.kind === "kept") say({ kind: "keeping" });
      const now = Date.now();
      if (timer === undefined) firstEdit = now;
      clearTimeout(timer);
      timer = setTimeout(() => void save(false), Math.min(quietMs, Math.max(0, firstEdit + longestMs - now)));
    },
    flush: () => (state.kind === "other tab" ? Promise.resolve() : save(false)),
    leave: () => {
      // A save under way may be broken off with the page: a connection that closes with it aborts what has not ended (from memory).
      if (isStopped || !(isChanged || isSaving) || state.kind === "other tab") return;
      into.saveAtOnce(read(), lastSave?.id);
      void save(false);
    },
    takeOver: () => save(true),
    stop: () => {
      isStopped = true;
      clearTimeout(timer);
    },
  };
}

/** Keep what is there when the page goes out of sight, which may be the last that is heard of it. */
export function saveWhenLeaving(autosave: Pick<Autosave, "leave">): () => void {
  const leave = (): void => {
    autosave.leave();
  };
  const hide = (): void => {
    if (document.visibilityState === "hidden") leave();
  };
  window.addEventListener("pagehide", leave);
  document.addEventListener("visibilitychange", hide);
  return () => {
    window.removeEventListener("pagehide", leave);
    document.removeEventListener("visibilitychange", hide);
  };
}
