import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import fc from "fast-check";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { LastSave, SaveState } from "../../../addin/standalone/storage/autosave.ts";
import { createAutosave } from "../../../addin/standalone/storage/autosave.ts";
import type { Version } from "../../../addin/standalone/storage/books.ts";
import { nameAmong, tidyName, worthKeeping } from "../../../addin/standalone/storage/books.ts";
import type { BookStore, Keeper } from "../../../addin/standalone/storage/bookStore.ts";
import { createBookStore, whatever } from "../../../addin/standalone/storage/bookStore.ts";
import { openBrowserRecords } from "../../../addin/standalone/storage/browserRecords.ts";
import { crc32 } from "../../../addin/standalone/storage/crc32.ts";
import { newGeneration } from "../../../addin/standalone/storage/generation.ts";
import { openStore } from "../../../addin/standalone/storage/openStore.ts";
import { memoryRecords, StorageError } from "../../../addin/standalone/storage/records.ts";

/** As much of the browser’s own small store as the page uses. */
function fakeLocalStorage() {
  const items = new Map<string, string>();
  return {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, value: string) => void items.set(key, value),
    removeItem: (key: string) => void items.delete(key),
    key: (i: number) => [...items.keys()][i] ?? null,
    get length() {
      return items.size;
    },
  };
}

async function inDatabase<T>(work: (database: Awaited<ReturnType<typeof openDB>>) => Promise<T>): Promise<T> {
  const database = await openDB("measure-book");
  try {
    return await work(database);
  } finally {
    database.close();
  }
}

const damage = (id: string) =>
  inDatabase(async (database) => {
    const kept: unknown = await database.get("versions", id);
    await database.put("versions", { ...(kept as object), text: "half a workb" }, id);
  });

/** The newest book as the next visit finds it. */
const reopened = async () => {
  const { store, books } = await openStore();
  const book = books[0];
  return book && (await store.open(book));
};

const openedStore = async (): Promise<BookStore> => (await openStore()).store;

const create = async (store: BookStore, name: string, text: string) => {
  const book = await store.draft(name);
  return { book, saved: await store.keeper(book).save(text, undefined) };
};

/** A store with one book, and a way to keep it again. */
const withBook = async (name: string, text: string) => {
  const store = await openedStore();
  const { book, saved } = await create(store, name, text);
  return { store, book, saved, keeper: store.keeper(book) };
};

const patience = { openMs: 50, stepMs: 50 };

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
  vi.stubGlobal("localStorage", fakeLocalStorage());
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

describe("the checksum", () => {
  // Check value of CRC-32 (polynomial 04C11DB7, reflected) as published in the RevEng catalogue of parametrised CRCs.
  it("is that of the standard", () => {
    expect(crc32("123456789")).toBe("cbf43926");
    expect(crc32("")).toBe("00000000");
  });
});

describe("books in the browser", () => {
  it("are none on the first visit", async () => {
    expect((await openStore()).books).toEqual([]);
  });

  it("are all there on the next visit, opened last first, each with its newest save", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    await keeper.save("two", saved.id);
    const { store, book } = await withBook("Dolls", "three");
    expect((await openStore()).books.map(({ name }) => name).sort()).toEqual(["Chart", "Dolls"]);
    await store.touch(book);
    expect(await reopened()).toMatchObject({ book: { name: "Dolls" }, kept: { text: "three" } });
    const chart = (await openStore()).books.find(({ name }) => name === "Chart");
    expect(await store.open(chart!)).toMatchObject({ kept: { text: "two" }, setAside: [] });
  });

  it("get names of their own, keep them when renamed, and keep their saves when duplicated", async () => {
    const { store, book } = await withBook("Chart", "one");
    expect((await create(store, "chart", "two")).book.name).toBe("chart 2");
    await store.rename(book, "Autumn");
    expect((await store.books()).map(({ name }) => name).sort()).toEqual(["Autumn", "chart 2"]);
  });

  it("come back after deleting, until they are deleted for good", async () => {
    const { store, book } = await withBook("Chart", "one");
    await store.remove(book);
    expect((await store.books())[0]?.deletedAt).toBeGreaterThan(0);
    await store.bringBack(book);
    expect(await reopened()).toMatchObject({ book: { name: "Chart" }, kept: { text: "one" } });
    await store.forget(book);
    expect((await openStore()).books).toEqual([]);
    expect(await inDatabase((database) => database.getAllKeys("versions"))).toEqual([]);
  });

  it("are gone for good 30 days after deleting", async () => {
    const { store, book } = await withBook("Chart", "one");
    await store.remove(book);
    expect((await openStore()).books).toHaveLength(1);
    const later = Date.now() + 31 * 24 * 3_600_000;
    vi.spyOn(Date, "now").mockReturnValue(later);
    expect((await openStore()).books).toEqual([]);
  });

  it("open with the save before when the last one is damaged, which is set aside and not thrown away", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    const second = await keeper.save("two", saved.id);
    await damage(second.id);
    const opened = await reopened();
    expect(opened).toMatchObject({
      kept: { text: "one" },
      setAside: [{ name: "Chart", text: "half a workb" }],
    });
    expect(await (await openedStore()).setAside()).toMatchObject([{ name: "Chart", text: "half a workb" }]);
    expect(await reopened()).toMatchObject({ kept: { text: "one" }, setAside: [] });
  });

  it("set all saves of a book aside when all are damaged", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    const second = await keeper.save("two", saved.id);
    await damage(saved.id);
    await damage(second.id);
    const opened = await reopened();
    expect(opened?.kept).toBeUndefined();
    expect(opened?.setAside).toHaveLength(2);
    expect((await openStore()).books).toEqual([]);
    expect(await (await openedStore()).setAside()).toHaveLength(2);
  });

  it("give the save before when the last one is whole but cannot be shown", async () => {
    const { store, book, keeper, saved } = await withBook("Chart", "one");
    const second = await keeper.save("two", saved.id);
    expect(await store.refuse(book, second)).toMatchObject({ text: "two" });
    expect(await reopened()).toMatchObject({ kept: { text: "one" }, setAside: [] });
  });

  it("are not overwritten by another tab without asking", async () => {
    const mine = await withBook("Chart", "start");
    const theirs = (await openedStore()).keeper(mine.book);
    await theirs.save("theirs", mine.saved.id);
    await expect(mine.keeper.save("mine", mine.saved.id)).rejects.toMatchObject({ reason: "other tab" });
    expect(await reopened()).toMatchObject({ kept: { text: "theirs" } });
    const over = await mine.keeper.save("mine", whatever);
    expect(await reopened()).toMatchObject({ kept: { text: "mine" } });
    await damage(over.id);
    expect(await reopened()).toMatchObject({ kept: { text: "theirs" } });
  });

  it("are found again when the page went away in the middle of an edit", async () => {
    const { keeper, saved } = await withBook("Chart", "before the edit");
    keeper.saveAtOnce("after the edit", saved.id);
    expect(await reopened()).toMatchObject({ kept: { text: "after the edit" } });
    expect(await reopened()).toMatchObject({ kept: { text: "after the edit" } });
  });

  it("do not go back to what was left at closing when another tab has saved since", async () => {
    const { keeper, saved, book } = await withBook("Chart", "start");
    keeper.saveAtOnce("closing", saved.id);
    await createBookStore(await openBrowserRecords())
      .keeper(book)
      .save("later", saved.id);
    expect(await reopened()).toMatchObject({ kept: { text: "later" } });
  });

  it("last as long as the page where the browser keeps nothing", async () => {
    vi.stubGlobal("indexedDB", undefined);
    const { store } = await openStore();
    expect(store.keeps).toBe(false);
    const { book } = await create(store, "Chart", "one");
    expect(await store.open(book)).toMatchObject({ kept: { text: "one" } });
    expect((await openStore()).books).toEqual([]);
  });
});

describe("what the page kept before it kept books", () => {
  const old = async (values: Record<string, unknown>) => {
    const database = await openDB("measure-book", 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("workbooks");
      },
    });
    for (const [key, value] of Object.entries(values)) await database.put("workbooks", value, key);
    database.close();
  };
  const [previous, current, before] = ["yesterday", "today", "another"].map((text, i) => ({
    ...newGeneration(text, "an earlier page"),
    savedAt: 1_700_000_000_000 + i,
  }));

  it("becomes books, with nothing lost", async () => {
    await old({ previous, current, before, "set aside 2026 current": { format: 1, text: "half" } });
    const { store, books } = await openStore();
    expect(books.map(({ name }) => name).sort()).toEqual(["My workbook", "Workbook before"]);
    const mine = books.find(({ name }) => name === "My workbook")!;
    expect(await store.open(mine)).toMatchObject({ kept: { text: "today", id: current?.id } });
    expect(await store.version(mine.versions[1]!.id)).toMatchObject({ text: "yesterday" });
    expect(await store.open(books.find(({ name }) => name === "Workbook before")!)).toMatchObject({
      kept: { text: "another" },
    });
    expect(await store.setAside()).toMatchObject([{ text: "half" }]);
    expect((await openStore()).books).toHaveLength(2);
  });

  it("takes over what was left when that page went away", async () => {
    await old({ current });
    const left = newGeneration("typed at the end", "an earlier page");
    localStorage.setItem(
      "measure-book-last-word",
      JSON.stringify({ basedOn: current?.id, generation: left }),
    );
    expect(await reopened()).toMatchObject({
      book: { name: "My workbook" },
      kept: { text: "typed at the end" },
    });
  });

  it("opens for this visit when there is no room to take it over, and stays where it is", async () => {
    await old({ current });
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    const { store, books, trouble } = await openStore();
    expect(trouble).toMatchObject({ reason: "full" });
    expect(store.keeps).toBe(false);
    expect(await store.open(books[0]!)).toMatchObject({ kept: { text: "today" } });
    expect(await inDatabase((database) => database.get("workbooks", "current"))).toMatchObject({
      text: "today",
    });
  });
});

describe("when the browser’s storage fails", () => {
  it("frees room by older saves and deleted books, then says that there is none", async () => {
    const { store, keeper, saved } = await withBook("Chart", "one");
    const other = await create(store, "Old", "old");
    await store.remove(other.book);
    const put = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementationOnce(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    await keeper.save("two", saved.id);
    expect((await openStore()).books.map(({ name }) => name)).toEqual(["Chart"]);
    put.mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    const failed = keeper.save("three", saved.id);
    await expect(failed).rejects.toMatchObject({ name: "StorageError", reason: "full" });
    await expect(failed).rejects.toThrow(/no room/);
    put.mockRestore();
    expect(await reopened()).toMatchObject({ kept: { text: "two" } });
  });

  it("opens the book when a damaged save cannot be set aside for want of room", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    await damage((await keeper.save("two", saved.id)).id);
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    expect(await reopened()).toMatchObject({ kept: { text: "one" }, setAside: [{ text: "half a workb" }] });
  });

  it("goes on without it when the database never answers", async () => {
    vi.spyOn(indexedDB, "open").mockReturnValue(new IDBOpenDBRequest());
    expect(await openStore(patience)).toMatchObject({
      store: { keeps: false },
      books: [],
      trouble: { reason: "silent" },
    });
  });

  it("does not take it for silent while the page itself is too busy to hear it", async () => {
    const opening = openStore(patience);
    const free = performance.now() + 4 * patience.openMs;
    while (performance.now() < free) JSON.stringify(patience);
    expect(await opening).toMatchObject({ store: { keeps: true }, trouble: undefined });
  });

  it("says so when a save is never answered", async () => {
    const records = await openBrowserRecords("measure-book", patience);
    const { book, saved } = await create(createBookStore(records), "Chart", "one");
    const get = vi.spyOn(IDBObjectStore.prototype, "get");
    get.mockReturnValue(new IDBRequest());
    const failed = createBookStore(records).keeper(book).save("two", saved.id);
    await expect(failed).rejects.toMatchObject({ reason: "silent" });
  });

  it("opens the save before when reading the last one fails, which stays for another day", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    const second = await keeper.save("two", saved.id);
    const whole = Object.getOwnPropertyDescriptor(IDBObjectStore.prototype, "get")!
      .value as IDBObjectStore["get"];
    const reading = vi.spyOn(IDBObjectStore.prototype, "get").mockImplementation(function (
      this: IDBObjectStore,
      key,
    ) {
      if (key === second.id) throw new DOMException("Internal error", "UnknownError");
      return whole.call(this, key);
    });
    expect(await reopened()).toMatchObject({ kept: { text: "one" }, setAside: [{ text: "" }] });
    reading.mockRestore();
    const { store, books } = await openStore();
    const found = books.find(({ name }) => name === "Found again");
    expect(await store.open(found!)).toMatchObject({ kept: { text: "two" } });
  });

  it("adds what a database lacks, of whatever version", async () => {
    for (const version of [1, 7]) {
      vi.stubGlobal("indexedDB", new IDBFactory());
      (await openDB("measure-book", version)).close();
      await withBook("Chart", "one");
      expect(await reopened()).toMatchObject({ kept: { text: "one" } });
    }
  });

  it("opens the database again when the browser has closed it", async () => {
    const { keeper, saved } = await withBook("Chart", "one");
    const changing = await openDB("measure-book", 99);
    changing.close();
    await keeper.save("two", saved.id);
    expect(await reopened()).toMatchObject({ kept: { text: "two" } });
  });

  it("survives any value in any place: a book opens, or none is there, and what was whole stays", async () => {
    const nonsense = fc.oneof(
      fc.anything({ withBigInt: true, withDate: true, withMap: true, withSet: true }),
      fc.constant(10n),
      fc.record({ format: fc.constant(1), text: fc.anything({ withBigInt: true }) }),
      fc.record({ format: fc.constant(1), id: fc.string(), versions: fc.array(fc.anything()) }),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.tuple(fc.constantFrom("books", "versions", "aside", "workbooks"), fc.string(), nonsense),
          {
            maxLength: 6,
          },
        ),
        fc.boolean(),
        async (values, hasBook) => {
          vi.stubGlobal("indexedDB", new IDBFactory());
          if (hasBook) await withBook("Chart", "one");
          else await openStore();
          await inDatabase(async (database) => {
            for (const [part, key, value] of values) {
              // Functions cannot be kept at all.
              await database.put(part, value, `x${key}`).catch(() => undefined);
            }
          });
          const { store, books } = await openStore();
          expect(store.keeps).toBe(true);
          const opened = await Promise.all(books.map((book) => store.open(book)));
          expect(opened.some(({ kept }) => kept?.text === "one")).toBe(hasBook);
          for (const { text } of await store.setAside()) expect(typeof text).toBe("string");
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("which saves are kept", () => {
  const now = 1_800_000_000_000;
  const at = (agoMs: number, size = 1000): Version => ({
    id: String(agoMs),
    session: "s",
    savedAt: now - agoMs,
    size,
  });
  const minutes = 60_000;

  it("are the last two, one of ten minutes, of an hour, of a day, and none older than a month", () => {
    const every = Array.from({ length: 60 * 24 * 40 }, (_, i) => at(i * minutes));
    const kept = worthKeeping(every, now);
    expect(kept.slice(0, 2)).toEqual(every.slice(0, 2));
    const older = (from: number, to: number) =>
      kept.filter(({ savedAt }) => now - savedAt >= from * minutes && now - savedAt < to * minutes).length;
    expect(older(2, 60)).toBeGreaterThanOrEqual(5);
    expect(older(2, 60)).toBeLessThanOrEqual(7);
    expect(older(60, 60 * 24)).toBeGreaterThanOrEqual(22);
    expect(older(60, 60 * 24)).toBeLessThanOrEqual(24);
    expect(older(60 * 24, 60 * 24 * 30)).toBeGreaterThanOrEqual(28);
    expect(older(60 * 24, 60 * 24 * 30)).toBeLessThanOrEqual(30);
    expect(older(60 * 24 * 30, Infinity)).toBe(0);
  });

  it("never lose the last two, whatever their size and age, and keep to the room otherwise", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ ago: fc.nat(100 * 24 * 60 * minutes), size: fc.nat(50_000) }), {
          maxLength: 80,
        }),
        fc.nat(200_000),
        (saves, room) => {
          const versions = saves.map(({ ago, size }, i) => ({ ...at(ago, size), id: String(i) }));
          versions.sort((a, b) => b.savedAt - a.savedAt);
          const kept = worthKeeping(versions, now, room);
          expect(kept.slice(0, 2)).toEqual(versions.slice(0, 2));
          const taken = kept.reduce((sum, { size }) => sum + size, 0);
          expect(kept.length <= 2 || taken <= room).toBe(true);
          expect(worthKeeping(kept, now, room)).toEqual(kept);
        },
      ),
    );
  });
});

describe("names of books", () => {
  it("are one line, not empty, and their own", () => {
    expect(tidyName("  Spring\n chart\u2028 ")).toBe("Spring chart");
    expect(tidyName(" \t ")).toBeUndefined();
    expect(tidyName("x".repeat(300))).toHaveLength(80);
    expect(nameAmong(["Chart", "chart 2"], "chart")).toBe("chart 3");
  });
});

describe("keeping while one edits", () => {
  const start = (into: Keeper, basedOn?: LastSave) => {
    const states: SaveState[] = [];
    const workbook = { text: "opened" };
    const save = vi.spyOn(into, "save");
    const autosave = createAutosave({
      into,
      read: () => workbook.text,
      onState: (state) => states.push(state),
      basedOn,
      quietMs: 800,
      longestMs: 4000,
    });
    const edit = (text: string) => {
      workbook.text = text;
      autosave.edited();
    };
    return { autosave, states, save, edit };
  };

  const inMemory = async (): Promise<Keeper> => {
    const store = createBookStore(memoryRecords());
    return store.keeper((await create(store, "Chart", "opened")).book);
  };

  it("saves once, when edits have paused", async () => {
    vi.useFakeTimers();
    const { save, edit, states } = start(await inMemory());
    edit("a");
    await vi.advanceTimersByTimeAsync(700);
    edit("ab");
    await vi.advanceTimersByTimeAsync(700);
    expect(save).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(100);
    expect(save.mock.calls).toEqual([["ab", undefined]]);
    expect(states.at(-1)).toEqual({ kind: "not kept" });
  });

  it("saves in between when edits never pause", async () => {
    vi.useFakeTimers();
    const { save, edit } = start(await inMemory());
    for (let i = 0; i < 12; i++) {
      edit(String(i));
      await vi.advanceTimersByTimeAsync(500);
    }
    expect(save).toHaveBeenCalled();
  });

  it("says when it has kept a workbook", async () => {
    const { autosave, edit, states } = start((await withBook("Chart", "opened")).keeper);
    edit("a");
    await autosave.flush();
    expect(states.at(-1)).toMatchObject({ kind: "kept", at: expect.any(Number) as number });
    expect(await reopened()).toMatchObject({ kept: { text: "a" } });
  });

  it("does not say that all is kept when something was changed during the save", async () => {
    const { autosave, edit, states } = start((await withBook("Chart", "opened")).keeper);
    edit("a");
    const saving = autosave.flush();
    await Promise.resolve();
    edit("ab");
    await saving;
    expect(states.at(-1)).toEqual({ kind: "keeping" });
    await autosave.flush();
    expect(states.at(-1)).toMatchObject({ kind: "kept" });
    expect(await reopened()).toMatchObject({ kept: { text: "ab" } });
  });

  it("leaves what was not kept yet where the next visit finds it", async () => {
    const { keeper, saved } = await withBook("Chart", "opened");
    const { autosave, edit } = start(keeper, saved);
    edit("a");
    await autosave.flush();
    vi.spyOn(keeper, "save").mockReturnValue(new Promise(() => undefined));
    edit("ab");
    autosave.leave();
    expect(await reopened()).toMatchObject({ kept: { text: "ab" } });
  });

  it("leaves what is still being kept there too, and nothing once it is", async () => {
    const { keeper, saved } = await withBook("Chart", "opened");
    const { autosave, edit } = start(keeper, saved);
    const leftAtOnce = vi.spyOn(keeper, "saveAtOnce");
    edit("a");
    await autosave.flush();
    autosave.leave();
    expect(leftAtOnce).not.toHaveBeenCalled();
    const save = vi.spyOn(keeper, "save").mockReturnValue(new Promise(() => undefined));
    edit("ab");
    void autosave.flush();
    await vi.waitFor(() => {
      expect(save).toHaveBeenCalled();
    });
    autosave.leave();
    expect(await reopened()).toMatchObject({ kept: { text: "ab" } });
  });

  it("stops when another tab has saved, until it is told to take over", async () => {
    const { keeper, saved, book } = await withBook("Chart", "opened");
    const { autosave, edit, states } = start(keeper, saved);
    edit("mine");
    await autosave.flush();
    await (await openedStore()).keeper(book).save("theirs", whatever);
    edit("mine again");
    await autosave.flush();
    expect(states.at(-1)).toEqual({ kind: "other tab" });
    expect(await reopened()).toMatchObject({ kept: { text: "theirs" } });
    await autosave.takeOver();
    expect(states.at(-1)).toMatchObject({ kind: "kept" });
    expect(await reopened()).toMatchObject({ kept: { text: "mine again" } });
  });

  it("says why it could not keep a workbook, and tries again at the next edit", async () => {
    const { autosave, edit, states, save } = start(await inMemory());
    save.mockRejectedValueOnce(new StorageError("full", "No room."));
    edit("a");
    await autosave.flush();
    expect(states.at(-1)).toEqual({ kind: "failed", message: "No room." });
    await autosave.flush();
    expect(save.mock.calls.map(([text]) => text)).toEqual(["a", "a"]);
    expect(states.at(-1)).toEqual({ kind: "not kept" });
  });
});
