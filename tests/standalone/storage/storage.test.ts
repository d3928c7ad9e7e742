import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createAutosave } from "../../../addin/standalone/storage/autosave.ts";
import type { SaveState } from "../../../addin/standalone/storage/autosave.ts";
import { openBrowserStore } from "../../../addin/standalone/storage/browserStore.ts";
import { crc32 } from "../../../addin/standalone/storage/crc32.ts";
import { createMemoryStore } from "../../../addin/standalone/storage/memoryStore.ts";
import { openStore } from "../../../addin/standalone/storage/openStore.ts";
import type { WorkbookStore } from "../../../addin/standalone/storage/store.ts";
import { StorageError, whatever } from "../../../addin/standalone/storage/store.ts";

/** As much of the browser’s own small store as the page uses. */
function fakeLocalStorage() {
  const items = new Map<string, string>();
  return {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, value: string) => void items.set(key, value),
    removeItem: (key: string) => void items.delete(key),
  };
}

async function inDatabase<T>(work: (database: Awaited<ReturnType<typeof openDB>>) => Promise<T>): Promise<T> {
  const database = await openDB("measure-book", 1);
  try {
    return await work(database);
  } finally {
    database.close();
  }
}

const damage = (key: string) =>
  inDatabase(async (database) => {
    const kept: unknown = await database.get("workbooks", key);
    await database.put("workbooks", { ...(kept as object), text: "half a workb" }, key);
  });

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
  vi.stubGlobal("localStorage", fakeLocalStorage());
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("the checksum", () => {
  // Check value of CRC-32 (polynomial 04C11DB7, reflected) as published in the RevEng catalogue of parametrised CRCs.
  it("is that of the standard", () => {
    expect(crc32("123456789")).toBe("cbf43926");
    expect(crc32("")).toBe("00000000");
  });
});

describe("a workbook in the browser", () => {
  const reopened = async () => (await openBrowserStore()).open();

  it("is not there on the first visit", async () => {
    expect(await reopened()).toEqual({ kept: undefined, from: undefined, setAside: [] });
  });

  it("is there on the next visit, newest first", async () => {
    const store = await openBrowserStore();
    const first = await store.save("one", undefined);
    await store.save("two", first.id);
    expect(await reopened()).toMatchObject({ kept: { text: "two" }, from: "current", setAside: [] });
  });

  it("comes back from the save before when the last one is damaged, which is set aside and not thrown away", async () => {
    const store = await openBrowserStore();
    const first = await store.save("one", undefined);
    await store.save("two", first.id);
    await damage("current");
    const opened = await reopened();
    expect(opened).toMatchObject({ kept: { text: "one" }, from: "previous" });
    expect(opened.setAside).toMatchObject([{ text: "half a workb" }]);
    const keys = await inDatabase((database) => database.getAllKeys("workbooks"));
    expect(keys).toContain(opened.setAside[0]?.key);
    expect((await reopened()).setAside).toEqual([]);
  });

  it("sets both saves aside when both are damaged", async () => {
    const store = await openBrowserStore();
    await store.save("two", (await store.save("one", undefined)).id);
    await damage("current");
    await damage("previous");
    const opened = await reopened();
    expect(opened.kept).toBeUndefined();
    expect(opened.setAside).toHaveLength(2);
  });

  it("never puts a damaged save in the place of a whole one", async () => {
    const store = await openBrowserStore();
    const first = await store.save("one", undefined);
    const second = await store.save("two", first.id);
    await damage("current");
    await store.save("three", second.id);
    await damage("current");
    expect(await reopened()).toMatchObject({ kept: { text: "one" } });
  });

  it("gives the save before when the last one is whole but cannot be shown", async () => {
    const store = await openBrowserStore();
    const first = await store.save("one", undefined);
    const second = await store.save("two", first.id);
    expect(await store.refuse(second.id)).toMatchObject({
      kept: { text: "one" },
      setAside: [{ text: "two" }],
    });
  });

  it("is not overwritten by another tab without asking", async () => {
    const mine = await openBrowserStore();
    const theirs = await openBrowserStore();
    const start = await mine.save("start", undefined);
    await theirs.save("theirs", start.id);
    await expect(mine.save("mine", start.id)).rejects.toMatchObject({ reason: "other tab" });
    expect(await reopened()).toMatchObject({ kept: { text: "theirs" } });
    await mine.save("mine", whatever);
    expect(await reopened()).toMatchObject({ kept: { text: "mine" } });
    await damage("current");
    expect(await reopened()).toMatchObject({ kept: { text: "theirs" } });
  });

  it("keeps the workbook before, for the way back", async () => {
    const store = await openBrowserStore();
    expect(await store.before()).toBeUndefined();
    await store.keepBefore("before");
    await store.save("now", undefined);
    expect(await (await openBrowserStore()).before()).toMatchObject({ text: "before" });
  });

  it("is found again when the page went away in the middle of an edit", async () => {
    const store = await openBrowserStore();
    const { id } = await store.save("before the edit", undefined);
    store.saveAtOnce("after the edit", id);
    expect(await reopened()).toMatchObject({ kept: { text: "after the edit" } });
    expect(await reopened()).toMatchObject({ kept: { text: "after the edit" } });
  });

  it("does not go back to what was left at closing when another tab has saved since", async () => {
    const store = await openBrowserStore();
    const { id } = await store.save("start", undefined);
    store.saveAtOnce("closing", id);
    await (await openBrowserStore()).save("later", id);
    expect(await reopened()).toMatchObject({ kept: { text: "later" } });
  });

  it("says that the browser has no room", async () => {
    const store = await openBrowserStore();
    const put = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    const saved = store.save("one", undefined);
    await expect(saved).rejects.toMatchObject({ name: "StorageError", reason: "full" });
    await expect(saved).rejects.toThrow(/no room/);
    put.mockRestore();
  });

  it("lasts as long as the page where the browser keeps nothing", async () => {
    vi.stubGlobal("indexedDB", undefined);
    const store = await openStore();
    expect(store.keeps).toBe(false);
    await store.keepBefore("before");
    expect(await store.before()).toMatchObject({ text: "before" });
    expect((await (await openStore()).open()).kept).toBeUndefined();
  });
});

describe("keeping while one edits", () => {
  const start = (store: WorkbookStore, basedOn?: string) => {
    const states: SaveState[] = [];
    const workbook = { text: "opened" };
    const save = vi.spyOn(store, "save");
    const autosave = createAutosave({
      store,
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

  it("saves once, when edits have paused", async () => {
    vi.useFakeTimers();
    const { save, edit, states } = start(createMemoryStore());
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
    const { save, edit } = start(createMemoryStore());
    for (let i = 0; i < 12; i++) {
      edit(String(i));
      await vi.advanceTimersByTimeAsync(500);
    }
    expect(save).toHaveBeenCalled();
  });

  it("says when it has kept a workbook", async () => {
    const { autosave, edit, states } = start(await openBrowserStore());
    edit("a");
    await autosave.flush();
    expect(states.at(-1)).toMatchObject({ kind: "kept", at: expect.any(Number) as number });
    expect(await (await openBrowserStore()).open()).toMatchObject({ kept: { text: "a" } });
  });

  it("leaves what was not kept yet where the next visit finds it", async () => {
    const store = await openBrowserStore();
    const { autosave, edit } = start(store);
    edit("a");
    await autosave.flush();
    vi.spyOn(store, "save").mockReturnValue(new Promise(() => undefined));
    edit("ab");
    autosave.leave();
    expect(await (await openBrowserStore()).open()).toMatchObject({ kept: { text: "ab" } });
  });

  it("stops when another tab has saved, until it is told to take over", async () => {
    const store = await openBrowserStore();
    const { autosave, edit, states } = start(store);
    edit("mine");
    await autosave.flush();
    await (await openBrowserStore()).save("theirs", whatever);
    edit("mine again");
    await autosave.flush();
    expect(states.at(-1)).toEqual({ kind: "other tab" });
    expect(await (await openBrowserStore()).open()).toMatchObject({ kept: { text: "theirs" } });
    await autosave.takeOver();
    expect(states.at(-1)).toMatchObject({ kind: "kept" });
    expect(await (await openBrowserStore()).open()).toMatchObject({ kept: { text: "mine again" } });
  });

  it("says why it could not keep a workbook, and tries again at the next edit", async () => {
    const store = createMemoryStore();
    const { autosave, edit, states, save } = start(store);
    save.mockRejectedValueOnce(new StorageError("full", "No room."));
    edit("a");
    await autosave.flush();
    expect(states.at(-1)).toEqual({ kind: "failed", message: "No room." });
    await autosave.flush();
    expect((await store.open()).kept?.text).toBe("a");
  });
});
