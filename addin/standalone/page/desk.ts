import type { IWorkbookData } from "@univerjs/core";
import { InputError } from "../../measures/inputError.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import type { Workbook } from "../../workbook/port.ts";
import { checkFileSize } from "../../workbook/tooLarge.ts";
import type { ReadWorkbook } from "../../workbook/xlsx/readXlsx.ts";
import { changedWords, leftOutWords } from "../../workbook/xlsx/leftOutWords.ts";
import { download } from "../../../taskpane/drawing/download.ts";
import type { ActiveCell } from "../grid/activeCell.ts";
import { cellsField } from "../grid/cellsField.ts";
import type { OpenGrid } from "../grid/openGrid.ts";
import type { TableHint } from "../grid/gridWorkbook.ts";
import type { Autosave, LastSave, SaveState } from "../storage/autosave.ts";
import { createAutosave, saveWhenLeaving } from "../storage/autosave.ts";
import type { Book, Version } from "../storage/books.ts";
import { nameAmong, tidyName } from "../storage/books.ts";
import type { BookStore, SetAside } from "../storage/bookStore.ts";
import { watchVersions } from "../offline/watchVersions.ts";
import { openStore } from "../storage/openStore.ts";
import { watchOtherTabs } from "../storage/otherTabs.ts";
import { xlsxType } from "./files.ts";
import { earlyWorkbook } from "./earlyWorkbook.ts";
import { fromKeptText, toKeptText } from "./keptText.ts";
import type { PageNotice } from "./notices.ts";
import {
  besideNotice,
  dayAndClock,
  downloadAside,
  fileNameFor,
  inWords,
  keptAsTextNotice,
  lostHeadingNotice,
  newVersionNotice,
  notKeptNotice,
  notOpenedNotice,
  otherTabNotice,
  setAsideNotice,
  twoTabsNotice,
  when,
  WouldBeLost,
} from "./notices.ts";
import { unfinished } from "./unfinished.ts";
import { columnLetters } from "../../chart/columnLetters.ts";

/** What a saved file holds: formulas, for Excel, or their results, for every program. */
export type FileForm = "formulas" | "values";

export interface DeskState {
  /** What is being done, in words. */
  readonly working: string | undefined;
  /** What is shown, through its port: as it is stored until the sheet is there. */
  readonly workbook: Workbook | undefined;
  readonly isSheetOpen: boolean;
  /** The book that is open. */
  readonly book: Book | undefined;
  readonly saved: SaveState | undefined;
  readonly notices: readonly PageNotice[];
  /** The selected cell. */
  readonly cell: ActiveCell | undefined;
  /** All that is kept; opened last first. */
  readonly books: readonly Book[];
  readonly setAside: readonly SetAside[];
  /** Stops what is being done, where it can be stopped. */
  readonly stop?: (() => void) | undefined;
}

/** The page’s work: opens, keeps, replaces and saves workbooks. Knows nothing of how the page looks. */
export interface Desk {
  state(): DeskState;
  subscribe(listener: () => void): () => void;
  openFile(file: File): Promise<void>;
  openDemo(): Promise<void>;
  /** An empty book to begin with. */
  beginBook(name: string, unit: LengthUnit): Promise<void>;
  /** Save the book that is open as .xlsx. */
  saveFile(form: FileForm): Promise<void>;
  dismiss(id: string): void;
  /** Put the keyboard into the cells. */
  focusSheet(): void;
  /** Whether something is being typed into a cell. */
  isTyping(): boolean;
  openBook(book: Book): Promise<void>;
  /** Open an earlier save, as a book of its own: the present state stays. */
  openVersion(book: Book, version: Version): Promise<void>;
  rename(book: Book, name: string): Promise<void>;
  duplicate(book: Book): Promise<void>;
  /** Save any book as .xlsx. */
  downloadBook(book: Book, form: FileForm): Promise<void>;
  remove(book: Book): Promise<void>;
  bringBack(book: Book): Promise<void>;
  /** Delete for good. */
  forget(book: Book): Promise<void>;
  downloadAside(aside: SetAside): void;
  forgetAside(aside: SetAside): Promise<void>;
}

const longestCalculationMs = 30_000;

type Source = WorkbookContent | IWorkbookData;

export const openingState: DeskState = {
  working: "Opening your workbook …",
  workbook: undefined,
  isSheetOpen: false,
  book: undefined,
  saved: undefined,
  notices: [],
  cell: undefined,
  books: [],
  setAside: [],
};

/**
 * @param place the element that the grid fills
 * @param paneShown resolves when the pane shows a workbook that the desk has; the grid, which takes long, comes after it
 */
export function createDesk(place: HTMLElement, paneShown: () => Promise<void>): Desk {
  const listeners = new Set<() => void>();
  let state = openingState;
  let grid: OpenGrid | undefined;
  let store: BookStore | undefined;
  let autosave: Autosave | undefined;
  let stopKeeping = (): void => undefined;
  let isEdited = false;
  let mayLose = false;

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
  const tabs = watchOtherTabs(() => {
    say(twoTabsNotice);
  });

  const refreshBooks = async (): Promise<void> => {
    if (!store) return;
    try {
      set({ books: await store.books(), setAside: await store.setAside() });
    } catch {
      // The list stays as it was; what cannot be kept is said where it is kept.
    }
  };

  const sayHint = (hint: TableHint): void => {
    if (hint.kind === "beside") {
      const takeIn = async (): Promise<void> => {
        const heading = await hint.takeIn();
        dismiss("beside");
        const column = columnLetters(hint.at.column);
        say({
          id: "result",
          kind: "done",
          isResult: true,
          text: `Column ${column} is part of the table “${hint.table}” now, with the heading “${heading}”. Type over the heading to change it.`,
          actions: [{ label: "Undo", run: () => void undo() }],
        });
      };
      say(besideNotice(hint, () => void mend(takeIn)));
    } else {
      const takeBack = async (): Promise<void> => {
        await hint.takeBack();
        dismiss("heading lost");
        say({ id: "result", kind: "done", isResult: true, text: `The heading is “${hint.heading}” again.` });
      };
      say(lostHeadingNotice(hint, () => void mend(takeBack)));
    }
  };

  const mend = (job: () => Promise<void>): Promise<void> =>
    work("Changing the table …", "The table was not changed.", job);

  const undo = (): Promise<void> =>
    work("Taking it back …", "It was not taken back.", async () => {
      await grid?.workbook.undo();
      dismiss("result");
    });

  /** Show a workbook in the grid, in the place of the one that is there. */
  const show = async (source: Source): Promise<void> => {
    const early = earlyWorkbook(source);
    if (!grid) {
      set({ workbook: early.workbook });
      await paneShown();
    }
    const { openGrid } = await import(/* webpackChunkName: "grid" */ "../grid/openGrid.ts");
    grid?.close();
    dismiss("beside");
    dismiss("heading lost");
    isEdited = false;
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
    next.workbook.onKeptAsText((formula, why) => {
      say(keptAsTextNotice(formula, why));
    });
    next.workbook.onTableHint(sayHint);
    next.onCell((cell) => {
      if (!isSameCell(cell, state.cell)) set({ cell });
    });
    early.opened(next.workbook);
    set({ workbook: early.workbook, isSheetOpen: true, cell: undefined });
    await withinBounds(next.calculated);
    early.ready();
  };

  /** Keep what the grid shows as that book from now on. Without a save of it, it is kept at once. */
  const keep = (into: BookStore, book: Book, kept: LastSave | undefined): void => {
    stopKeeping();
    const next = createAutosave({
      into: into.keeper(book),
      read: text,
      basedOn: kept,
      onState: (saved) => {
        set({ saved });
        if (saved.kind === "failed") say({ id: "save", kind: "failed", text: saved.message });
        else if (saved.kind === "other tab") say(otherTabNotice(() => void takeOver()));
        else if (saved.kind === "kept") {
          dismiss("save");
          void refreshBooks();
        }
      },
    });
    const stopLeaving = saveWhenLeaving(next);
    stopKeeping = () => {
      next.stop();
      stopLeaving();
    };
    autosave = next;
    dismiss("other tab");
    dismiss("two tabs");
    set({ saved: next.state, book });
    tabs.showing(book.id);
    if (!kept || isEdited) next.edited();
  };

  const takeOver = async (): Promise<void> => {
    dismiss("other tab");
    await autosave?.takeOver();
  };

  /** Open the book that was opened last and can be shown; saves that cannot are set aside. The demo opens where there is none. */
  const openNewest = async (from: BookStore, books: readonly Book[]): Promise<void> => {
    const damaged: SetAside[] = [];
    const opened = await openFirst(from, books, damaged);
    if (opened) {
      keep(from, opened.book, opened.kept);
      from.touch(opened.book).catch(() => undefined);
    } else {
      await show(await demo());
      keep(from, await from.draft("Demo"), undefined);
      await autosave?.flush();
    }
    const instead = opened && { book: opened.book, savedAt: opened.kept.savedAt };
    for (const aside of damaged) say(setAsideNotice(aside, instead));
  };

  const openFirst = async (from: BookStore, books: readonly Book[], damaged: SetAside[]) => {
    for (const book of books) {
      if (book.deletedAt !== undefined) continue;
      const opened = await openOne(from, book, damaged, true);
      if (opened) return opened;
    }
    return undefined;
  };

  /** Show the newest save of a book that can be shown. */
  const openOne = async (from: BookStore, book: Book, damaged: SetAside[], isCareful: boolean) => {
    for (;;) {
      const { kept, setAside } = await from.open(book);
      damaged.push(...setAside);
      if (!kept) return undefined;
      if (isCareful && unfinished.isToBeLeft(kept.id)) {
        say(notOpenedNotice(book, () => void openBook(book)));
        return undefined;
      }
      unfinished.begin(kept.id);
      try {
        const source = fromKeptText(kept.text);
        if (!source) throw new InputError("The save is not a workbook.");
        await show(source);
        return { book, kept };
      } catch {
        damaged.push(await from.refuse(book, kept));
      } finally {
        unfinished.end();
      }
    }
  };

  const useNewVersion = async (): Promise<void> => {
    await autosave?.flush();
    location.reload();
  };

  const start = async (): Promise<void> => {
    addEventListener("pagehide", () => {
      unfinished.end();
    });
    const opened = await openStore();
    store = opened.store;
    if (!store.keeps || opened.trouble) say(notKeptNotice(opened.trouble));
    await openNewest(store, opened.books);
    await refreshBooks();
    set({ working: undefined });
    // The grid takes the keyboard when it opens; a page begins at its beginning.
    if (document.activeElement?.matches(cellsField)) document.getElementById("root")?.focus();
    document.documentElement.dataset.ready = "true";
    if (process.env.NODE_ENV === "production")
      watchVersions(() => {
        say(newVersionNotice(() => void useNewVersion()));
      }).catch(() => undefined);
    addEventListener("beforeunload", (event) => {
      const isLost = isEdited && (state.saved?.kind === "not kept" || state.saved?.kind === "failed");
      if (isLost) event.preventDefault();
    });
  };

  const work = async (
    working: string,
    failed: string,
    job: () => Promise<void>,
    isAtRisk = false,
  ): Promise<void> => {
    if (state.working !== undefined) return;
    mayLose = isAtRisk;
    set({ working });
    dismiss("work");
    try {
      await job();
    } catch (error) {
      const again = (): void => {
        void work(working, failed, job, true);
      };
      say({
        id: "work",
        kind: "failed",
        text: `${failed} ${inWords(error)}`,
        isResult: true,
        ...(error instanceof WouldBeLost && { actions: [{ label: "Go on all the same", run: again }] }),
      });
    } finally {
      set({ working: undefined });
    }
  };

  /** Open another book in the place of this one, which stays among the books. */
  const replace = async (
    next: (into: BookStore) => Promise<{ readonly book: Book; readonly kept: LastSave | undefined }>,
    done: (book: Book) => string,
  ): Promise<void> => {
    const before = state.book;
    if (!store || !before) return;
    const text = await leave(before);
    const lastSave = autosave?.lastSave;
    stopKeeping();
    try {
      const { book, kept } = await next(store);
      keep(store, book, kept);
      if (kept) await store.touch(book).catch(() => undefined);
      else await autosave?.flush();
    } catch (error) {
      const way = fromKeptText(text);
      if (way) await show(way);
      keep(store, before, lastSave);
      throw error;
    }
    await refreshBooks();
    const open = state.book;
    if (!open || open.id === before.id) return;
    say({
      id: "result",
      kind: "done",
      isResult: true,
      text: `${done(open)} “${before.name}”, which was open before, is kept too, in Books.`,
      actions: [{ label: `Go back to “${before.name}”`, run: () => void openBook(before) }],
    });
  };

  const readFile = async (file: File): Promise<ReadWorkbook> => {
    checkFileSize(file.size);
    const { readInWorker } = await import("../../workbook/xlsx/readInWorker.ts");
    const stopping = new AbortController();
    set({
      stop: () => {
        stopping.abort(new InputError("You stopped it."));
      },
    });
    try {
      return await readInWorker(new Uint8Array(await file.arrayBuffer()), { signal: stopping.signal });
    } finally {
      set({ stop: undefined });
    }
  };

  /**
   * Keep what is open for the last time, and give it for the way back.
   *
   * @throws {WouldBeLost} when it cannot be kept, unless the user goes on all the same
   */
  const leave = async ({ name }: Book): Promise<string> => {
    const now = text();
    await autosave?.flush();
    const kind = state.saved?.kind;
    if ((kind === "failed" || kind === "other tab") && !mayLose)
      throw new WouldBeLost(
        `“${name}”, which is open, is not kept and would be lost. Save it as .xlsx first.`,
      );
    return now;
  };

  const openBook = (book: Book): Promise<void> =>
    work(`Opening “${book.name}” …`, `“${book.name}” was not opened.`, async () => {
      dismiss("result");
      dismiss("unfinished");
      const damaged: SetAside[] = [];
      let savedAt = 0;
      try {
        await replace(
          async (from) => {
            const opened = await openOne(from, book, damaged, false);
            if (!opened)
              throw new InputError("None of its saves can be opened. They are set aside, in Books.");
            savedAt = opened.kept.savedAt;
            return opened;
          },
          (open) => `“${open.name}” is open.`,
        );
      } finally {
        for (const aside of damaged) say(setAsideNotice(aside, state.book && { book: state.book, savedAt }));
      }
    });

  const openNew = (name: string, source: () => Promise<Source>, done: string): Promise<void> =>
    replace(
      async (into) => {
        await show(await source());
        return { book: await into.draft(name), kept: undefined };
      },
      (book) => (book.name === name ? done : `${done} It is called “${book.name}” among your books.`),
    );

  const writeFile = async (book: string, content: WorkbookContent, form: FileForm): Promise<void> => {
    const { writeXlsx } = await import("../../workbook/xlsx/writeXlsx.ts");
    const { bytes, changed } = await writeXlsx(content, { cells: form });
    const name = `${fileNameFor(book)}${form === "formulas" ? "" : " (values)"}.xlsx`;
    download(name, new Uint8Array(bytes), xlsxType);
    say({
      id: "result",
      kind: "done",
      isResult: true,
      text:
        form === "formulas"
          ? `Saved as ${name}, with formulas. Excel calculates them once Measure Book is added to it.`
          : `Saved as ${name}, with results in the place of formulas.`,
    });
    const otherwise = changedWords(changed);
    if (otherwise === undefined) dismiss("changed");
    else say({ id: "changed", kind: "look", text: otherwise });
  };

  /** Change something about the books; what was done is said when they show it. */
  const inBooks = (
    doing: string,
    failed: string,
    job: (shelf: BookStore) => Promise<Omit<PageNotice, "id" | "kind">>,
  ): Promise<void> =>
    work(doing, failed, async () => {
      if (!store) return;
      const done = await job(store);
      await refreshBooks();
      say({ id: "result", kind: "done", ...done });
    });

  /** The text of the newest save of a book, with what is open as it is now. */
  const textOf = async (from: BookStore, book: Book): Promise<string> => {
    if (book.id === state.book?.id) return text();
    const { kept } = await from.open(book);
    if (!kept) throw new InputError("None of its saves can be read.");
    return kept.text;
  };

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
    dismiss,
    focusSheet: () => grid?.focus(),
    isTyping: () => grid?.isTyping() ?? false,
    openFile: (file) =>
      work(
        `Opening ${file.name} …`,
        `“${file.name}” was not opened; your workbook is as it was.`,
        async () => {
          const content = await readFile(file);
          dismiss("left out");
          const name = tidyName(file.name.replace(/\.[^.]*$/, "")) ?? "Workbook";
          await openNew(name, () => Promise.resolve(content), `“${file.name}” is open.`);
          const missing = leftOutWords(file.name, content.leftOut);
          if (missing !== undefined) say({ id: "left out", kind: "look", text: missing });
        },
      ),
    openDemo: () =>
      work("Opening the demo …", "The demo was not opened; your workbook is as it was.", () =>
        openNew("Demo", demo, "The demo is open."),
      ),
    beginBook: (typed, unit) =>
      work("Beginning a new book …", "The new book was not begun; your workbook is as it was.", async () => {
        const name = tidyName(typed);
        if (name === undefined) throw new InputError("A book needs a name. Type one, then try again.");
        await openNew(
          name,
          async () => (await import("../../demo/starterWorkbook.ts")).starterWorkbook(unit),
          "Your new book is open. Write your figures on the sheet Figures, one row each.",
        );
      }),
    saveFile: (form) =>
      work("Saving …", "The workbook was not saved.", async () => {
        if (grid) await writeFile(state.book?.name ?? "Workbook", await calculatedContent(grid), form);
      }),
    openBook,
    openVersion: (book, version) =>
      work("Opening an earlier save …", "The earlier save was not opened.", async () => {
        dismiss("result");
        await openNew(
          `${book.name}, ${dayAndClock(version.savedAt)}`,
          async () => {
            const source = fromKeptText((await store?.version(version.id))?.text ?? "");
            if (!source) throw new InputError("It is damaged or no longer there.");
            return source;
          },
          `“${book.name}” is open as it was ${when(version.savedAt)}, as a book of its own.`,
        );
      }),
    rename: (book, typed) =>
      inBooks("Renaming …", "The book was not renamed.", async (shelf) => {
        const name = tidyName(typed);
        if (name === undefined) throw new InputError("A book needs a name. Type one, then try again.");
        const others = (await shelf.books()).filter(({ id }) => id !== book.id).map((other) => other.name);
        if (nameAmong(others, name) !== name)
          throw new InputError(`There is a book “${name}” already. Choose another name.`);
        await shelf.rename(book, name);
        if (state.book?.id === book.id) set({ book: { ...state.book, name } });
        return { text: `“${book.name}” is called “${name}” now.` };
      }),
    duplicate: (book) =>
      inBooks(`Duplicating “${book.name}” …`, `“${book.name}” was not duplicated.`, async (shelf) => {
        const copy = await shelf.draft(`${book.name}, copy`);
        await shelf.keeper(copy).save(await textOf(shelf, book), undefined);
        return { text: `“${copy.name}” is among your books now.` };
      }),
    downloadBook: (book, form) =>
      work(`Saving “${book.name}” …`, `“${book.name}” was not saved.`, async () => {
        if (!store) return;
        if (grid && book.id === state.book?.id) {
          await writeFile(state.book.name, await calculatedContent(grid), form);
          return;
        }
        const source = fromKeptText(await textOf(store, book));
        if (!source)
          throw new InputError("Its last save is damaged. Open the book: the save before it comes up.");
        const { contentOf } = await import("../grid/contentOf.ts");
        await writeFile(book.name, await contentOf(source), form);
      }),
    remove: async (book) => {
      await inBooks(`Deleting “${book.name}” …`, `“${book.name}” was not deleted.`, async (shelf) => {
        const isOpen = book.id === state.book?.id;
        if (isOpen) {
          await autosave?.flush();
          stopKeeping();
        }
        try {
          await shelf.remove(book);
        } catch (error) {
          if (isOpen) keep(shelf, book, autosave?.lastSave);
          throw error;
        }
        if (isOpen) await openNewest(shelf, await shelf.books());
        return {
          isResult: true,
          text: `“${book.name}” is deleted. It can be brought back for 30 days, in Books.${isOpen && state.book ? ` “${state.book.name}” is open now.` : ""}`,
          actions: [{ label: `Bring “${book.name}” back`, run: () => void bringBack(book) }],
        };
      });
    },
    bringBack,
    forget: (book) =>
      inBooks(`Deleting “${book.name}” …`, `“${book.name}” was not deleted.`, async (shelf) => {
        await shelf.forget(book);
        return { isResult: true, text: `“${book.name}” is deleted for good.` };
      }),
    downloadAside,
    forgetAside: (aside) =>
      inBooks("Deleting …", "The damaged save was not deleted.", async (shelf) => {
        await shelf.forgetAside(aside.key);
        dismiss(aside.key);
        return { isResult: true, text: "The damaged save is deleted for good." };
      }),
  };

  function bringBack(book: Book): Promise<void> {
    return inBooks(
      `Bringing “${book.name}” back …`,
      `“${book.name}” was not brought back.`,
      async (shelf) => {
        await shelf.bringBack(book);
        return { isResult: true, text: `“${book.name}” is back among your books.` };
      },
    );
  }
}

/** A calculation that never ends must not lock the page. */
function withinBounds(calculated: Promise<void>): Promise<unknown> {
  return Promise.race([calculated, new Promise((resolve) => setTimeout(resolve, longestCalculationMs))]);
}

/** All that the workbook holds, with the results of what was typed just now. */
async function calculatedContent({ workbook }: OpenGrid): Promise<WorkbookContent> {
  await withinBounds(workbook.calculated());
  return workbook.content();
}

function isSameCell(a: ActiveCell | undefined, b: ActiveCell | undefined): boolean {
  return a?.sheet === b?.sheet && a?.cell === b?.cell && a?.shown === b?.shown && a?.problem === b?.problem;
}

async function demo(): Promise<WorkbookContent> {
  const { calculatedDemo } = await import(/* webpackChunkName: "demo" */ "./calculatedDemo.ts");
  return calculatedDemo;
}
