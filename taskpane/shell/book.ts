import { equalCells } from "../../addin/chart/cell.ts";
import { haveSameItems, workOnce } from "../../addin/chart/workOnce.ts";
import type { RangeData, TableInfo, Workbook } from "../../addin/workbook/port.ts";

/**
 * The workbook at one of its versions, as the whole pane reads it. Each table is read once, for whichever section asks first;
 * what is as it was in an earlier version is the same object again. A reading that fails is tried again by the next who asks.
 */
export interface Book extends Pick<Workbook, "sheets" | "tables" | "readTable" | "usedArea" | "readArea"> {
  /**
   * What `work` gives for these inputs, worked out once as long as they are the same objects, by this version or another.
   *
   * @param work the same function each time; what it throws is not kept
   */
  once<I extends unknown[], T>(work: (...inputs: NoInfer<I>) => T, ...inputs: I): T;
}

/**
 * Opens a workbook: each call gives the book as the workbook is from then on.
 *
 * @param known the book of before, where nobody has told of a change: only the lists of sheets and tables are read again, since
 * a program may make a table without a word, and cells only where the tables are others
 */
export function openBook(workbook: Workbook): (known?: Book) => Book {
  const sheets = shared<readonly string[]>(() => workbook.sheets(), sameList);
  const tables = shared<readonly TableInfo[]>(() => workbook.tables(), sameList);
  const cells = shared((name) => workbook.readTable(name), sameRange);
  const kept = new Map<unknown, (inputs: readonly unknown[]) => unknown>();
  const once: Book["once"] = (work, ...inputs) => {
    const worked = kept.get(work) ?? workOnce((given) => work(...(given as typeof inputs)), haveSameItems);
    kept.set(work, worked);
    // Under `work` stands what calls it, so that it gives what `work` gives.
    return worked(inputs) as ReturnType<typeof work>;
  };
  /** Of each book, who reads its cells, and the last one up to it whose tables were listed. */
  const past = new WeakMap<
    Book,
    { readonly reader: () => Promise<Book["readTable"]>; readonly listed: () => Book | undefined }
  >();
  return (known) => {
    const [readSheets, list, readCells] = [sheets(), tables(), cells()];
    const readTables = (): Promise<readonly TableInfo[]> => {
      isListed = true;
      return list("");
    };
    let isListed = false;
    let before = known && past.get(known)?.listed();
    let chosen: Promise<Book["readTable"]> | undefined;
    const choose = async (): Promise<Book["readTable"]> => {
      const isAsKnown = before && (await readTables()) === (await before.tables());
      const reader = isAsKnown && before ? await past.get(before)?.reader() : undefined;
      // Books of before are let go, however often sections are opened.
      before = undefined;
      return reader ?? readCells;
    };
    const reader = (): Promise<Book["readTable"]> => {
      chosen ??= choose().catch((error: unknown) => {
        chosen = undefined;
        throw error;
      });
      return chosen;
    };
    const readTable: Book["readTable"] = async (name) => (await reader())(name);
    const book: Book = {
      ...{ sheets: () => readSheets(""), tables: readTables, readTable, once },
      // What stands outside tables is looked at once, by Home.
      ...{ usedArea: (sheet) => workbook.usedArea(sheet), readArea: (area) => workbook.readArea(area) },
    };
    past.set(book, { reader, listed: () => (isListed ? book : before) });
    return book;
  };
}

/**
 * Readings by name, each begun once a version and shared.
 *
 * @param keep what to give for what is read now: what was read before, as far as it is still so
 */
function shared<T>(
  read: (name: string) => Promise<T>,
  keep: (before: T, now: T) => T,
): () => (name: string) => Promise<T> {
  const before = new Map<string, T>();
  return () => {
    const begun = new Map<string, Promise<T>>();
    return (name) => {
      const known = begun.get(name);
      if (known) return known;
      const reading = read(name).then((now) => {
        const earlier = before.get(name);
        const kept = earlier === undefined ? now : keep(earlier, now);
        before.set(name, kept);
        return kept;
      });
      begun.set(name, reading);
      reading.catch(() => begun.delete(name));
      return reading;
    };
  };
}

/** A list and its items, as far as they say the same. */
function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  const earlier = new Map(before.map((item) => [JSON.stringify(item), item]));
  const list = now.map((item) => earlier.get(JSON.stringify(item)) ?? item);
  return haveSameItems(before, list) ? before : list;
}

/** Cells keep their object when the table has only moved. */
function sameRange(before: RangeData, now: RangeData): RangeData {
  const values = equalCells(before.values, now.values) ? before.values : now.values;
  const formats = equalCells(before.formats, now.formats) ? before.formats : now.formats;
  const isHere = JSON.stringify(before.area) === JSON.stringify(now.area);
  return isHere && values === before.values && formats === before.formats
    ? before
    : { area: now.area, values, formats };
}
