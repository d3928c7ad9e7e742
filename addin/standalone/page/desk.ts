import type { IWorkbookData } from "@univerjs/core";
import { InputError } from "../../measures/inputError.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import type { CellMessage, OpenGrid } from "../grid/openGrid.ts";
import type { GridWorkbook } from "../grid/gridWorkbook.ts";
import type { Autosave, SaveState } from "../storage/autosave.ts";
import { createAutosave, saveWhenLeaving } from "../storage/autosave.ts";
import { openStore } from "../storage/openStore.ts";
import { watchOtherTabs } from "../storage/otherTabs.ts";
import type { Opened, SetAside, WorkbookStore } from "../storage/store.ts";
import { changedWords, leftOutWords } from "../../workbook/xlsx/leftOutWords.ts";
import { download } from "../../../taskpane/drawing/download.ts";
import { xlsxType } from "./files.ts";
import { fromKeptText, toKeptText } from "./keptText.ts";

/** What the page tells the user, with what can be done about it. */
export interface PageNotice {
  readonly id: string;
  readonly kind: "done" | "look" | "failed";
  readonly text: string;
  readonly actions?: readonly { readonly label: string; readonly run: () => void }[];
}

export interface DeskState {
  /** What is being done, in words. */
  readonly working: string | undefined;
  readonly workbook: GridWorkbook | undefined;
  readonly saved: SaveState | undefined;
  readonly notices: readonly PageNotice[];
  /** What is wrong in the selected cell. */
  readonly message: CellMessage | undefined;
}

/** The page’s work: opens, keeps, replaces and saves the workbook. Knows nothing of how the page looks. */
export interface Desk {
  state(): DeskState;
  subscribe(listener: () => void): () => void;
  openFile(file: File): Promise<void>;
  saveFile(how?: { formulas: boolean }): Promise<void>;
  openDemo(): Promise<void>;
  dismiss(id: string): void;
}

const longestCalculationMs = 30_000;

type Source = WorkbookContent | IWorkbookData;

/** @param place the element that the grid fills */
export function createDesk(place: HTMLElement): Desk {
  const listeners = new Set<() => void>();
  let state: DeskState = {
    working: "Opening your workbook …",
    workbook: undefined,
    saved: undefined,
    notices: [],
    message: undefined,
  };
  let grid: OpenGrid | undefined;
  let store: WorkbookStore | undefined;
  let autosave: Autosave | undefined;
  let isEdited = false;

  const set = (change: Partial<DeskState>): void => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  const say = (notice: PageNotice): void => {
    set({ notices: [...state.notices.filter((other) => other.id !== notice.id), notice] });
  };
  const dismiss = (id: string): void => {
    set({ notices: state.notices.filter((notice) => notice.id !== id) });
  };
  const text = (): string => {
    if (!grid) throw new Error("No workbook is open.");
    return toKeptText(grid.workbook.snapshot());
  };

  /** Show a workbook in the grid, in the place of the one that is there. */
  const show = async (source: Source): Promise<void> => {
    const { openGrid } = await import("../grid/openGrid.ts");
    grid?.close();
    const sheet = document.createElement("div");
    sheet.className = "sheet";
    place.replaceChildren(sheet);
    const next = openGrid(sheet, source, {
      darkMode: matchMedia("(prefers-color-scheme: dark)").matches,
      toolbar: matchMedia("(min-width: 760px)").matches,
    });
    grid = next;
    next.workbook.onEdit(() => {
      isEdited = true;
      autosave?.edited();
    });
    next.onMessage((message) => {
      if (message?.text !== state.message?.text || message?.cell !== state.message?.cell) set({ message });
    });
    set({ workbook: next.workbook, message: undefined });
    // A calculation that never ends must not lock the page.
    await Promise.race([
      next.calculated,
      new Promise((resolve) => setTimeout(resolve, longestCalculationMs)),
    ]);
  };

  const keep = (into: WorkbookStore, opened: Opened): void => {
    autosave = createAutosave({
      store: into,
      read: text,
      basedOn: opened.kept?.id,
      savedAt: opened.kept?.savedAt,
      onState: (saved) => {
        set({ saved });
        if (saved.kind === "failed") say({ id: "save", kind: "failed", text: saved.message });
        else if (saved.kind === "other tab") say(otherTabNotice(() => void takeOver()));
        else if (saved.kind === "kept") dismiss("save");
      },
    });
    set({ saved: autosave.state });
    saveWhenLeaving(autosave);
    if (!opened.kept) autosave.edited();
  };

  const takeOver = async (): Promise<void> => {
    dismiss("other tab");
    await autosave?.takeOver();
  };

  const start = async (): Promise<void> => {
    store = await openStore();
    if (!store.keeps) say(notKeptNotice);
    const opened = await openNewest(store, show, say);
    keep(store, opened);
    set({ working: undefined });
    document.documentElement.dataset.ready = "true";
    watchOtherTabs(() => {
      say(twoTabsNotice);
    });
    addEventListener("beforeunload", (event) => {
      const isLost = isEdited && (state.saved?.kind === "not kept" || state.saved?.kind === "failed");
      if (isLost) event.preventDefault();
    });
  };

  const work = async (working: string, failed: string, job: () => Promise<void>): Promise<void> => {
    if (state.working !== undefined) return;
    set({ working });
    dismiss("work");
    try {
      await job();
    } catch (error) {
      say({ id: "work", kind: "failed", text: `${failed} ${inWords(error)}` });
    } finally {
      set({ working: undefined });
    }
  };

  /** Open another workbook; the one before stays within reach. */
  const replace = async (source: Source, done: string): Promise<void> => {
    const before = text();
    await store?.keepBefore(before);
    try {
      await show(source);
    } catch (error) {
      const way = fromKeptText(before);
      if (way) await show(way);
      throw error;
    }
    autosave?.edited();
    await autosave?.flush();
    say({
      id: "replaced",
      kind: "done",
      text: `${done} The workbook that was open before is kept too.`,
      actions: [{ label: "Go back to the workbook before", run: () => void goBack() }],
    });
  };

  const goBack = (): Promise<void> =>
    work("Going back …", "The workbook before could not be opened.", async () => {
      dismiss("replaced");
      const before = await store?.before();
      const source = before && fromKeptText(before.text);
      if (!source) throw new InputError("It is no longer there.");
      await replace(source, "This is the workbook before.");
    });

  const saveFile = ({ formulas } = { formulas: true }): Promise<void> =>
    work("Saving …", "The workbook was not saved.", async () => {
      if (!grid) return;
      const { writeXlsx } = await import("../../workbook/xlsx/writeXlsx.ts");
      const { bytes, changed } = await writeXlsx(grid.workbook.content(), {
        cells: formulas ? "formulas" : "values",
      });
      const name = formulas ? "measure-book.xlsx" : "measure-book-values.xlsx";
      download(name, new Uint8Array(bytes), xlsxType);
      say({
        id: "saved",
        kind: "done",
        text: formulas
          ? `Saved as ${name}. Excel shows the results once Measure Book is added to it; other programs need the values alone.`
          : `Saved as ${name}, with results in the place of formulas.`,
        ...(formulas && {
          actions: [{ label: "Save the values alone", run: () => void saveFile({ formulas: false }) }],
        }),
      });
      const otherwise = changedWords(changed);
      if (otherwise === undefined) dismiss("changed");
      else say({ id: "changed", kind: "look", text: otherwise });
    });

  start().catch((error: unknown) => {
    set({ working: undefined });
    say({ id: "start", kind: "failed", text: `The sheet could not be opened. ${inWords(error)}` });
  });

  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    openFile: (file) =>
      work(
        `Opening ${file.name} …`,
        `“${file.name}” was not opened; your workbook is as it was.`,
        async () => {
          const { readXlsx } = await import("../../workbook/xlsx/readXlsx.ts");
          const content = await readXlsx(new Uint8Array(await file.arrayBuffer()));
          dismiss("left out");
          await replace(content, `“${file.name}” is open.`);
          const missing = leftOutWords(file.name, content.leftOut);
          if (missing !== undefined) say({ id: "left out", kind: "look", text: missing });
        },
      ),
    saveFile,
    openDemo: () =>
      work("Opening the demo …", "The demo was not opened; your workbook is as it was.", async () => {
        await replace(await demo(), "The demo is open.");
      }),
    dismiss,
  };
}

async function demo(): Promise<WorkbookContent> {
  const { demoWorkbook } = await import("../../demo/demoWorkbook.ts");
  return demoWorkbook();
}

/** Open the newest save that can be shown; those that cannot are set aside. The demo opens where there is none. */
async function openNewest(
  store: WorkbookStore,
  show: (source: Source) => Promise<void>,
  say: (notice: PageNotice) => void,
): Promise<Opened> {
  let opened = await store.open();
  for (;;) {
    for (const aside of opened.setAside) say(setAsideNotice(aside, opened));
    if (!opened.kept) {
      await show(await demo());
      return opened;
    }
    try {
      const source = fromKeptText(opened.kept.text);
      if (!source) throw new InputError("The save is not a workbook.");
      await show(source);
      return opened;
    } catch {
      opened = await store.refuse(opened.kept.id);
    }
  }
}

function setAsideNotice(aside: SetAside, opened: Opened): PageNotice {
  const instead = opened.kept
    ? `The save before it is open instead, from ${clock(opened.kept.savedAt)}.`
    : "The demo is open instead.";
  return {
    id: aside.key,
    kind: "failed",
    text: `What was kept last is damaged and cannot be opened. Nothing was thrown away: it is set aside. ${instead}`,
    actions: [
      {
        label: "Download the damaged save",
        run: () => {
          download("measure-book-damaged.json", aside.text, "application/json");
        },
      },
    ],
  };
}

const notKeptNotice: PageNotice = {
  id: "not kept",
  kind: "look",
  text: "This browser keeps nothing for this page (a private window, perhaps). Your work is gone when you close it: save it as .xlsx.",
};

const twoTabsNotice: PageNotice = {
  id: "two tabs",
  kind: "look",
  text: "Measure Book is open in another tab too. Work in one of them only, and close the other.",
};

function otherTabNotice(takeOver: () => void): PageNotice {
  return {
    id: "other tab",
    kind: "look",
    text: "Another tab has kept a workbook since this one was opened, so the changes made here are not kept. Save this workbook as .xlsx, or keep it in the place of the other one.",
    actions: [
      { label: "Keep this one", run: takeOver },
      {
        label: "Open the other one here",
        run: () => {
          location.reload();
        },
      },
    ],
  };
}

export function clock(time: number): string {
  return new Date(time).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
}

function inWords(error: unknown): string {
  if (error instanceof InputError) return error.message;
  return `This is a fault in Measure Book (${error instanceof Error ? error.message : String(error)}).`;
}
