import type { BookStore } from "./bookStore.ts";
import { createBookStore } from "./bookStore.ts";
import type { Patience } from "./browserRecords.ts";
import { openBrowserRecords } from "./browserRecords.ts";
import type { Book } from "./books.ts";
import type { Records } from "./records.ts";
import { memoryRecords, StorageError } from "./records.ts";

export interface OpenedStore {
  readonly store: BookStore;
  readonly books: readonly Book[];
  /** Why nothing is kept, where it is not as in a private window. */
  readonly trouble: StorageError | undefined;
}

/** The browser’s own store with its books, or one that lasts as long as the page where there is none that works. */
export async function openStore(patience?: Patience): Promise<OpenedStore> {
  try {
    const records = await openBrowserRecords("measure-book", patience);
    const store = createBookStore(records);
    try {
      await store.tidy();
    } catch (error) {
      if (!(error instanceof StorageError) || error.reason === "silent") throw error;
      return { ...(await withoutRoom(records, store)), trouble: error };
    }
    return { store, books: await store.books(), trouble: undefined };
  } catch (error) {
    const trouble = error instanceof StorageError ? error : undefined;
    return { store: createBookStore(memoryRecords()), books: [], trouble };
  }
}

/** Where nothing can be written, books can still be read; what an earlier page kept is taken over for this visit only. */
async function withoutRoom(
  records: Records,
  store: BookStore,
): Promise<{ readonly store: BookStore; readonly books: readonly Book[] }> {
  const books = await store.books();
  if (books.length > 0) return { store, books };
  const memory = memoryRecords();
  for (const key of await records.keys("workbooks")) {
    const value = await records.get("workbooks", key).catch(() => undefined);
    await memory.write((step) => {
      step.put("workbooks", key, value);
      return Promise.resolve();
    });
  }
  const held = createBookStore(memory);
  await held.tidy();
  return { store: held, books: await held.books() };
}
