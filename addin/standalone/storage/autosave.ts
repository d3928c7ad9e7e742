import type { WorkbookStore } from "./store.ts";
import { StorageError, whatever } from "./store.ts";

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
  /** Something changed: keep it soon. */
  edited(): void;
  /** Keep it now, if anything changed. */
  flush(): Promise<void>;
  /** The page is going away: keep what was not kept yet, at once. */
  leave(): void;
  /** Keep it now, and overwrite what another tab has kept. */
  takeOver(): Promise<void>;
  stop(): void;
}

export interface AutosaveOptions {
  readonly store: WorkbookStore;
  /** The workbook as text, as it is now. */
  readonly read: () => string;
  readonly onState: (state: SaveState) => void;
  /** The save that was opened, if any. */
  readonly basedOn: string | undefined;
  readonly savedAt?: number | undefined;
  /** After the last edit. */
  readonly quietMs?: number;
  /** Even while edits go on. */
  readonly longestMs?: number;
}

/** Keeps a workbook while it is edited. */
export function createAutosave(options: AutosaveOptions): Autosave {
  const { store, read, onState, quietMs = 800, longestMs = 4000 } = options;
  let state: SaveState = !store.keeps
    ? { kind: "not kept" }
    : options.savedAt === undefined
      ? { kind: "keeping" }
      : { kind: "kept", at: options.savedAt };
  let basedOn = options.basedOn;
  let isChanged = false;
  let firstEdit = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: Promise<unknown> = Promise.resolve();

  const say = (next: SaveState): void => {
    state = next;
    onState(next);
  };

  const saveNow = async (over: boolean): Promise<void> => {
    if (!isChanged && !over) return;
    isChanged = false;
    try {
      const { id, savedAt } = await store.save(read(), over ? whatever : basedOn);
      basedOn = id;
      say(store.keeps ? { kind: "kept", at: savedAt } : { kind: "not kept" });
    } catch (error) {
      isChanged = true;
      if (error instanceof StorageError && error.reason === "other tab") say({ kind: "other tab" });
      else say({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
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
      if (!isChanged || state.kind === "other tab") return;
      store.saveAtOnce(read(), basedOn);
      void save(false);
    },
    takeOver: () => save(true),
    stop: () => {
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
