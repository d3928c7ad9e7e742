import type { IDBPDatabase, IDBPTransaction } from "idb";
import { openDB } from "idb";
import type { Part, Records } from "./records.ts";
import { parts, StorageError } from "./records.ts";

export interface Patience {
  /** How long the database may take to open. */
  readonly openMs: number;
  /** How long one step may take. */
  readonly stepMs: number;
}

const usualPatience: Patience = { openMs: 8000, stepMs: 15_000 };

/**
 * Records in the browser’s database. Every step is one transaction, so that a crash leaves all as it was before it.
 *
 * @throws {StorageError} when the browser has no database for pages, when it does not open, or does not answer
 */
export async function openBrowserRecords(
  name = "measure-book",
  { openMs, stepMs }: Patience = usualPatience,
): Promise<Records> {
  let opened: Promise<IDBPDatabase> | undefined;
  const database = (): Promise<IDBPDatabase> => {
    opened ??= openWithParts(name, () => {
      opened = undefined;
    }).catch((error: unknown) => {
      opened = undefined;
      throw error;
    });
    return opened;
  };

  /** Once more where the browser has closed the database in the meantime, as it does when its data are cleared. */
  const withDatabase = async <T>(work: (now: IDBPDatabase) => Promise<T>): Promise<T> => {
    try {
      return await work(await database());
    } catch (error) {
      if (nameOf(error) !== "InvalidStateError" && nameOf(error) !== "NotFoundError") throw error;
      opened = undefined;
      return work(await database());
    }
  };
  const step = <T>(work: (now: IDBPDatabase) => Promise<T>): Promise<T> =>
    inWords(() => inTime(withDatabase(work), stepMs));

  await inWords(() => inTime(database(), openMs));

  return {
    keeps: true,
    keys: (part) => step(async (now) => (await now.getAllKeys(part)).map(String)),
    get: (part, key) => step((now) => now.get(part, key) as Promise<unknown>),
    write: (work) =>
      step((now) =>
        asAWhole(now, (transaction) =>
          work({
            get: (part, key) => transaction.objectStore(part).get(key) as Promise<unknown>,
            put: (part, key, value) => {
              quietly(transaction.objectStore(part).put(value, key));
            },
            delete: (part, key) => {
              quietly(transaction.objectStore(part).delete(key));
            },
          }),
        ),
      ),
  };
}

/**
 * The database with every part that is needed, whatever it held before.
 *
 * @param onClosed called when the browser closes it, or another page needs to change it
 */
async function openWithParts(name: string, onClosed: () => void): Promise<IDBPDatabase> {
  const open = (version?: number): Promise<IDBPDatabase> =>
    openDB(name, version, {
      upgrade: (changing) => {
        for (const part of lacking(changing)) changing.createObjectStore(part);
      },
      blocking: (_now, _next, event) => {
        (event.target as IDBDatabase).close();
        onClosed();
      },
      terminated: onClosed,
    });
  let database = await open();
  // Another tab may add the parts at the same time; then the version has gone up once more.
  for (let tries = 0; tries < 3 && lacking(database).length > 0; tries++) {
    const next = database.version + 1;
    database.close();
    database = await open(next).catch((error: unknown) => {
      if (nameOf(error) !== "VersionError") throw error;
      return open();
    });
  }
  return database;
}

function lacking(database: IDBPDatabase): Part[] {
  return parts.filter((part) => !database.objectStoreNames.contains(part));
}

type Writing = IDBPTransaction<unknown, Part[], "readwrite">;

async function asAWhole<T>(database: IDBPDatabase, work: (transaction: Writing) => Promise<T>): Promise<T> {
  // “Strict” waits until the disk has it: what is said to be kept outlives a power cut too.
  const transaction = database.transaction([...parts], "readwrite", { durability: "strict" });
  const done = transaction.done.then(
    () => undefined,
    (error: unknown) => error ?? new Error("The step was broken off."),
  );
  try {
    const result = await work(transaction);
    const failure = await done;
    if (failure !== undefined) throw failure;
    return result;
  } catch (error) {
    abort(transaction);
    // A request of a step that was broken off says only that; the step itself says why.
    const why = await done;
    throw nameOf(error) === "AbortError" && why !== undefined ? why : error;
  }
}

function abort(transaction: Writing): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already.
  }
}

/** What fails here fails the whole step too, and is told there. */
function quietly(request: Promise<unknown>): void {
  request.catch(() => undefined);
}

/** Parts that the patience of a step is counted in. */
const slices = 8;

/**
 * Waits no longer than that for an answer. What counts is time in which one could be heard: a page that calculates for seconds hears
 * nothing meanwhile, and its timers come late.
 */
function inTime<T>(work: Promise<T>, ms: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const slice = ms / slices;
    let timer: ReturnType<typeof setTimeout>;
    const wait = (left: number): void => {
      const begun = performance.now();
      timer = setTimeout(() => {
        const isDeaf = performance.now() - begun > 2 * slice;
        if (isDeaf || left > 1) {
          wait(isDeaf ? left : left - 1);
          return;
        }
        reject(
          new StorageError(
            "silent",
            "The browser’s storage does not answer. Save the workbook as .xlsx, then close the browser and open it again.",
          ),
        );
      }, slice);
    };
    wait(slices);
    work.then(resolve, reject).finally(() => {
      clearTimeout(timer);
    });
  });
}

/** Failures of the browser’s database in words of ours. */
async function inWords<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StorageError) throw error;
    if (nameOf(error) === "QuotaExceededError") {
      throw new StorageError(
        "full",
        "The browser has no room left for this page. Save the workbook as .xlsx, then delete books that you no longer need, or free some space on this computer.",
      );
    }
    const detail = error instanceof Error ? error.message : String(error);
    throw new StorageError(
      "failed",
      `The browser’s storage failed (${detail || nameOf(error)}). Save the workbook as .xlsx.`,
    );
  }
}

function nameOf(error: unknown): string {
  return error instanceof Error || error instanceof DOMException ? error.name : "";
}
