import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";
import type { Generation } from "./generation.ts";
import { newGeneration, randomName, readGeneration } from "./generation.ts";
import { lastWord } from "./lastWord.ts";
import type { Opened, SetAside, WorkbookStore } from "./store.ts";
import { StorageError, whatever } from "./store.ts";

interface Schema extends DBSchema {
  /** Keys: `current`, `previous`, `before`, and `set aside …` for damaged saves. Values are checked when read. */
  workbooks: { key: string; value: unknown };
}

/**
 * Keeps the workbook in the browser. Every step is one transaction, so that a crash leaves the save before it whole.
 *
 * @throws when the browser has no database for pages, for example in some private windows
 */
export async function openBrowserStore(name = "measure-book"): Promise<WorkbookStore> {
  const database = await openDB<Schema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("workbooks");
    },
  });
  // A newer page may need to change the database; do not stand in its way.
  database.addEventListener("versionchange", () => {
    database.close();
  });

  const session = randomName();
  const word = lastWord(name);

  return {
    keeps: true,
    open: () =>
      inWords(async () => {
        const opened = await open(database);
        const later = word.take(opened.kept);
        if (!later) return opened;
        const kept = await save(database, newGeneration(later.text, session), whatever);
        return { ...opened, kept, from: "current" };
      }),
    refuse: (id) =>
      inWords(async () => {
        const setAside = await refuse(database, id);
        const opened = await open(database);
        return { ...opened, setAside: [...setAside, ...opened.setAside] };
      }),
    save: (text, basedOn) => inWords(() => save(database, newGeneration(text, session), basedOn)),
    saveAtOnce: (text, basedOn) => {
      word.leave(newGeneration(text, session), basedOn);
    },
    keepBefore: (text) =>
      inWords(async () => {
        await database.put("workbooks", newGeneration(text, session), "before");
      }),
    before: () => inWords(async () => readGeneration(await database.get("workbooks", "before"))),
  };
}

async function open(database: IDBPDatabase<Schema>): Promise<Opened> {
  const transaction = database.transaction("workbooks", "readwrite");
  const setAside: SetAside[] = [];
  for (const key of ["current", "previous"] as const) {
    const found = await transaction.store.get(key);
    if (found === undefined) continue;
    const kept = readGeneration(found);
    if (kept) {
      await transaction.done;
      return { kept, from: key, setAside };
    }
    const aside = { key: setAsideKey(key), text: textOf(found) };
    await transaction.store.put(found, aside.key);
    await transaction.store.delete(key);
    setAside.push(aside);
  }
  await transaction.done;
  return { kept: undefined, from: undefined, setAside };
}

async function refuse(database: IDBPDatabase<Schema>, id: string): Promise<SetAside[]> {
  const transaction = database.transaction("workbooks", "readwrite");
  const setAside: SetAside[] = [];
  for (const key of ["current", "previous"] as const) {
    const found: unknown = await transaction.store.get(key);
    if (readGeneration(found)?.id !== id) continue;
    const aside = { key: setAsideKey(key), text: textOf(found) };
    await transaction.store.put(found, aside.key);
    await transaction.store.delete(key);
    setAside.push(aside);
  }
  await transaction.done;
  return setAside;
}

async function save(
  database: IDBPDatabase<Schema>,
  next: Generation,
  basedOn: string | undefined,
): Promise<Generation> {
  const transaction = database.transaction("workbooks", "readwrite");
  const current = readGeneration(await transaction.store.get("current"));
  if (basedOn !== whatever && current && current.id !== basedOn) {
    await transaction.done;
    throw new StorageError("other tab", "Another tab has kept a workbook since this one was opened.");
  }
  if (current) void transaction.store.put(current, "previous");
  void transaction.store.put(next, "current");
  await transaction.done;
  return next;
}

function setAsideKey(key: string): string {
  return `set aside ${new Date().toISOString()} ${key}`;
}

/** The text of a damaged save as far as there is one. */
function textOf(found: unknown): string {
  if (typeof found === "object" && found !== null && "text" in found && typeof found.text === "string")
    return found.text;
  return typeof found === "string" ? found : JSON.stringify(found);
}

/** Failures of the browser’s database in words of ours. */
async function inWords<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StorageError) throw error;
    const name = error instanceof Error ? error.name : "";
    if (name === "QuotaExceededError") {
      throw new StorageError(
        "full",
        "The browser has no room left for this page. Save the workbook as .xlsx, then free some space.",
      );
    }
    const detail = error instanceof Error ? error.message : String(error);
    throw new StorageError("failed", `The browser did not keep the workbook (${detail}). Save it as .xlsx.`);
  }
}
