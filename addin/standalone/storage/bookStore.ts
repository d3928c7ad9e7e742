import type { Book, Version } from "./books.ts";
import { keptAfterDeleting, nameAmong, readBook, worthKeeping } from "./books.ts";
import type { Generation } from "./generation.ts";
import { newGeneration, randomName, readGeneration, textOf } from "./generation.ts";
import { lastWords } from "./lastWord.ts";
import type { Records, Step } from "./records.ts";
import { StorageError } from "./records.ts";

/** A save that could not be read or shown. It is kept, so that it can be downloaded and perhaps mended. */
export interface SetAside {
  readonly key: string;
  /** The name of its book. */
  readonly name: string;
  /** When it was set aside. */
  readonly at: number;
  readonly text: string;
}

export interface Opened {
  readonly book: Book;
  /** The newest save that is whole; `undefined` where there is none. */
  readonly kept: Generation | undefined;
  /** Damaged saves that were met on the way and set aside. */
  readonly setAside: readonly SetAside[];
}

/** Where one book is kept. */
export interface Keeper {
  readonly keeps: boolean;
  /**
   * Keep the book as it is now; its last saves stay.
   *
   * @param basedOn the save that the page opened or made last; `"whatever"` overwrites what another tab has kept
   * @throws {StorageError} `"other tab"` when another tab has saved since, `"full"` when the browser has no room,
   * `"silent"` when its storage does not answer
   */
  save(text: string, basedOn: string | undefined): Promise<Generation>;
  /**
   * Keep the book before this call returns, because the page is going away. Where there is no room for that, it
   * does nothing. The next `tidy` finds it, unless a later save was made in the meantime.
   */
  saveAtOnce(text: string, basedOn: string | undefined): void;
}

/** The books that the page keeps. */
export interface BookStore {
  /** False where nothing outlives the page, for example in a private window. */
  readonly keeps: boolean;
  /** Takes over what earlier versions of the page have kept and what was left when the page went away. */
  tidy(): Promise<void>;
  /** Opened last first. Those that were deleted are among them, as long as they can be brought back. */
  books(): Promise<readonly Book[]>;
  /** The newest save of a book that is whole. Damaged ones are set aside, as far as there is room for that. */
  open(book: Book): Promise<Opened>;
  /** Set a save aside, because it could not be shown. */
  refuse(book: Book, saved: Generation): Promise<SetAside>;
  /** One save of a book; `undefined` when it is damaged or gone. */
  version(id: string): Promise<Generation | undefined>;
  /** A new book that holds nothing yet, under a name of its own near the one that is wanted. It is there once it is kept. */
  draft(name: string): Promise<Book>;
  keeper(book: Book): Keeper;
  /** The book was opened now. */
  touch(book: Book): Promise<void>;
  rename(book: Book, name: string): Promise<void>;
  remove(book: Book): Promise<void>;
  bringBack(book: Book): Promise<void>;
  /** Delete for good. */
  forget(book: Book): Promise<void>;
  setAside(): Promise<readonly SetAside[]>;
  forgetAside(key: string): Promise<void>;
}

export const whatever = "whatever";

export function createBookStore(records: Records, name = "measure-book"): BookStore {
  const session = randomName();
  const words = lastWords(name);

  const allBooks = async (): Promise<readonly Book[]> => {
    const found: Book[] = [];
    for (const key of await records.keys("books")) {
      const book = await readable(() => records.get("books", key), readBook);
      if (book) found.push(book);
    }
    return found.sort((a, b) => b.openedAt - a.openedAt);
  };

  const takenNames = (): Promise<readonly string[]> =>
    allBooks().then(
      (books) => books.map((book) => book.name),
      () => [],
    );

  const change = (book: Book, how: (now: Book) => Book): Promise<void> =>
    records.write(async (step) => {
      const now = readBook(await step.get("books", book.id)) ?? book;
      step.put("books", book.id, how(now));
    });

  const save = (book: Book, next: Generation, basedOn: string | undefined): Promise<Generation> =>
    withRoom(records, allBooks, async (step) => {
      const now = readBook(await step.get("books", book.id)) ?? { ...book, versions: [] };
      const head = now.versions[0];
      if (basedOn !== whatever && head && head.id !== basedOn && head.session !== session)
        throw new StorageError("other tab", "Another tab has kept this workbook since it was opened here.");
      putSave(step, now, next);
      return next;
    });

  return {
    keeps: records.keeps,
    tidy: async () => {
      await adoptOldSaves(records);
      await findLostSaves(records, allBooks);
      await takeLastWords(records, words, await allBooks());
      const now = Date.now();
      for (const book of await allBooks()) {
        if (book.deletedAt !== undefined && now - book.deletedAt > keptAfterDeleting)
          await forget(records, book);
      }
    },
    books: allBooks,
    open: async (listed) => {
      const book = (await readable(() => records.get("books", listed.id), readBook)) ?? listed;
      const setAside: SetAside[] = [];
      for (const { id } of book.versions) {
        const found = await readable(
          () => records.get("versions", id),
          (value) => value,
        );
        const kept = readGeneration(found);
        if (kept) return { book, kept, setAside };
        const aside = asideOf(book, found === undefined ? "" : textOf(found));
        await putAside(records, book, id, aside, found !== undefined);
        setAside.push(aside);
      }
      return { book, kept: undefined, setAside };
    },
    refuse: async (book, { id, text }) => {
      const aside = asideOf(book, text);
      await putAside(records, book, id, aside, true);
      return aside;
    },
    version: (id) => readable(() => records.get("versions", id), readGeneration),
    draft: async (wanted) => ({
      format: 1,
      id: randomName(),
      name: nameAmong(await takenNames(), wanted),
      openedAt: Date.now(),
      versions: [],
    }),
    keeper: (book) => ({
      keeps: records.keeps,
      save: (text, basedOn) => save(book, newGeneration(text, session), basedOn),
      saveAtOnce: (text, basedOn) => {
        if (records.keeps) words.leave({ book, basedOn, generation: newGeneration(text, session) });
      },
    }),
    touch: (book) => change(book, (now) => ({ ...now, openedAt: Date.now() })),
    rename: (book, wanted) => change(book, (now) => ({ ...now, name: wanted })),
    remove: (book) => change(book, (now) => ({ ...now, deletedAt: Date.now() })),
    bringBack: (book) => change(book, withoutDeletion),
    forget: (book) => forget(records, book),
    setAside: async () => {
      const found: SetAside[] = [];
      for (const key of await records.keys("aside")) {
        const value = await readable(
          () => records.get("aside", key),
          (aside) => aside,
        );
        found.push(readAside(key, value));
      }
      return found.sort((a, b) => b.at - a.at);
    },
    forgetAside: (key) =>
      records.write((step) => {
        step.delete("aside", key);
        return Promise.resolve();
      }),
  };
}

function versionOf({ id, session, savedAt, text }: Generation): Version {
  return { id, session, savedAt, size: text.length };
}

function withoutDeletion(book: Book): Book {
  return {
    format: book.format,
    id: book.id,
    name: book.name,
    openedAt: book.openedAt,
    versions: book.versions,
  };
}

/** Writes a save as the newest of a book, and drops the saves that are no longer worth keeping. */
function putSave(step: Step, book: Book, next: Generation): void {
  const versions = [versionOf(next), ...book.versions.filter(({ id }) => id !== next.id)];
  const worth = worthKeeping(versions, next.savedAt);
  for (const old of versions) if (!worth.includes(old)) step.delete("versions", old.id);
  step.put("versions", next.id, next);
  step.put("books", book.id, { ...withoutDeletion(book), versions: [...worth] });
}

/** One value of which the browser cannot read the record is like one that is damaged; a silent storage is not. */
async function readable<T>(read: () => Promise<unknown>, as: (value: unknown) => T): Promise<T | undefined> {
  try {
    return as(await read());
  } catch (error) {
    if (error instanceof StorageError && error.reason === "silent") throw error;
    return undefined;
  }
}

/** Saves whose book is damaged or missing get a book of their own, so that they are not lost. */
async function findLostSaves(records: Records, books: () => Promise<readonly Book[]>): Promise<void> {
  // Saves first: one that another tab makes in the meantime is not taken for a lost one.
  const keys = await records.keys("versions");
  const known = new Set((await books()).flatMap((book) => book.versions.map(({ id }) => id)));
  const versions: Version[] = [];
  for (const key of keys) {
    if (known.has(key)) continue;
    const lost = await readable(() => records.get("versions", key), readGeneration);
    if (lost) versions.push(versionOf(lost));
  }
  versions.sort((a, b) => b.savedAt - a.savedAt);
  const newest = versions[0];
  if (!newest) return;
  const book: Book = {
    format: 1,
    id: randomName(),
    name: "Found again",
    openedAt: newest.savedAt,
    versions,
  };
  await records.write((step) => {
    step.put("books", book.id, book);
    return Promise.resolve();
  });
}

/** Where there is no room, older saves of all books make way, deleted books first, and it is tried once more. */
async function withRoom<T>(
  records: Records,
  books: () => Promise<readonly Book[]>,
  work: (step: Step) => Promise<T>,
): Promise<T> {
  try {
    return await records.write(work);
  } catch (error) {
    if (!(error instanceof StorageError) || error.reason !== "full") throw error;
    const all = await books();
    for (const book of all) {
      if (book.deletedAt !== undefined) await forget(records, book);
      else await thinOut(records, book);
    }
    return records.write(work);
  }
}

function thinOut(records: Records, book: Book): Promise<void> {
  return records.write(async (step) => {
    const now = readBook(await step.get("books", book.id)) ?? book;
    const worth = worthKeeping(now.versions, now.versions[0]?.savedAt ?? 0, 0);
    for (const old of now.versions) if (!worth.includes(old)) step.delete("versions", old.id);
    step.put("books", now.id, { ...now, versions: [...worth] });
  });
}

function forget(records: Records, book: Book): Promise<void> {
  return records.write(async (step) => {
    const now = readBook(await step.get("books", book.id)) ?? book;
    for (const { id } of now.versions) step.delete("versions", id);
    step.delete("books", now.id);
  });
}

function asideOf({ name }: Book, text: string): SetAside {
  return { key: randomName(), name, at: Date.now(), text };
}

function readAside(key: string, value: unknown): SetAside {
  if (typeof value === "object" && value !== null && "name" in value && "at" in value && "text" in value) {
    const { name, at, text } = value;
    if (typeof name === "string" && typeof at === "number" && typeof text === "string")
      return { key, name, at, text };
  }
  return { key, name: "Damaged save", at: 0, text: textOf(value) };
}

/** Moves a damaged save out of its book. Where that fails, it stays where it is, and is met again the next time. */
async function putAside(
  records: Records,
  book: Book,
  id: string,
  aside: SetAside,
  isThere: boolean,
): Promise<void> {
  try {
    await records.write(async (step) => {
      const now = readBook(await step.get("books", book.id)) ?? book;
      if (isThere) step.put("aside", aside.key, { name: aside.name, at: aside.at, text: aside.text });
      // A save that cannot be read at all may be readable another day: it is left, without its book pointing to it.
      if (isThere) step.delete("versions", id);
      const versions = now.versions.filter((version) => version.id !== id);
      if (versions.length > 0) step.put("books", now.id, { ...now, versions });
      else step.delete("books", now.id);
    });
  } catch (error) {
    if (error instanceof StorageError && error.reason === "silent") throw error;
  }
}

/** What the page kept before it kept books: one workbook, the save before it, and the workbook open before it. */
async function adoptOldSaves(records: Records): Promise<void> {
  const keys = await records.keys("workbooks");
  if (keys.length === 0) return;
  const found = new Map<string, unknown>();
  for (const key of keys) {
    const value = await readable(
      () => records.get("workbooks", key),
      (old) => old,
    );
    if (value !== undefined) found.set(key, value);
  }
  const adopted = [
    { name: "My workbook", keys: ["current", "previous"] },
    { name: "Workbook before", keys: ["before"] },
  ];
  await records.write(async (step) => {
    for (const { name, keys: from } of adopted) {
      const saves: Generation[] = [];
      for (const key of from) {
        const kept = readGeneration(await step.get("workbooks", key));
        if (!kept) continue;
        saves.push(kept);
        step.put("versions", kept.id, kept);
        step.delete("workbooks", key);
        found.delete(key);
      }
      const newest = saves[0];
      if (!newest) continue;
      const versions = saves.map(versionOf);
      const id = randomName();
      step.put("books", id, { format: 1, id, name, openedAt: newest.savedAt, versions } satisfies Book);
    }
    for (const [key, value] of found) {
      step.put("aside", key, { name: "Damaged save", at: Date.now(), text: textOf(value) });
      step.delete("workbooks", key);
    }
  });
}

/** Saves that were left while the page went away become the newest of their books, where they are. */
async function takeLastWords(
  records: Records,
  words: ReturnType<typeof lastWords>,
  books: readonly Book[],
): Promise<void> {
  for (const left of words.all()) {
    const { generation, basedOn } = left;
    const book =
      books.find(({ id }) => id === left.book?.id) ??
      books.find(({ versions }) => versions.some(({ id }) => id === basedOn));
    const head = book?.versions[0];
    const follows = head === undefined || basedOn === head.id;
    const continues = head?.session === generation.session && generation.savedAt > head.savedAt;
    const into = book ?? left.book;
    if (into && (follows || continues)) {
      await records.write(async (step) => {
        const now = readBook(await step.get("books", into.id)) ?? into;
        if (!now.versions.some(({ id }) => id === generation.id)) putSave(step, now, generation);
      });
    }
    left.forget();
  }
}
