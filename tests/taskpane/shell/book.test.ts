/** One book for the pane: how often tables are read and typed, and that no old answer outlives a change. */
import { describe, expect, it, vi } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readPatternTable } from "../../../addin/chart/readPatterns.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { InputError } from "../../../addin/measures/inputError.ts";
import type { RangeData } from "../../../addin/workbook/port.ts";
import { readToCheck } from "../../../taskpane/check/useCheck.ts";
import { readFit } from "../../../taskpane/fit/readFit.ts";
import { readGrading } from "../../../taskpane/grade/readGrading.ts";
import { readGroups } from "../../../taskpane/groups/readGroups.ts";
import { readDestination } from "../../../taskpane/import/useDestination.ts";
import type { Book } from "../../../taskpane/shell/book.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { chartIn } from "../../../taskpane/shell/chartIn.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

vi.mock("../../../addin/chart/readChart.ts", { spy: true });
vi.mock("../../../addin/chart/readPatterns.ts", { spy: true });

/** The demo, with what the pane reads of it. */
function countedDemo() {
  const memory = createMemoryWorkbook(demoWorkbook());
  const reads: string[] = [];
  function counted<A extends unknown[], R>(name: string, read: (...args: A) => R): (...args: A) => R {
    return (...args) => {
      reads.push([name, ...args].join(" "));
      return read(...args);
    };
  }
  const workbook = {
    ...memory,
    sheets: counted("sheets", memory.sheets),
    tables: counted("tables", memory.tables),
    readTable: counted("table", memory.readTable),
  };
  return {
    memory,
    freshBook: openBook(workbook),
    /** What was read since this was asked last, in order of the alphabet. */
    reads: () => reads.splice(0).sort(),
  };
}

/** What every section reads, as each does when it is opened. */
async function openAll(book: Book) {
  const destination = await readDestination(book, undefined);
  const check = await readToCheck(book, undefined);
  const groups = await readGroups(book, chosen);
  const fit = await readFit(book, chosen);
  const grading = await readGrading(book, chosen);
  return { destination, check, groups, fit, grading };
}
const chosen = {};

const typedCharts = () => vi.mocked(readChart).mock.calls.length;
const typedPatterns = () => vi.mocked(readPatternTable).mock.calls.length;

const everything = [
  ...["sheets", "table EaseRules", "table Figures", "table GarmentClasses", "table GradeRules"],
  ...["table Patterns", "table Readings", "table Tolerances", "tables"],
];

async function cellOf(
  { memory }: Pick<ReturnType<typeof countedDemo>, "memory">,
  table: string,
  row: number,
  column: number,
) {
  const { area } = await memory.readTable(table);
  return { sheet: area.sheet, row: area.row + row, column: area.column + column };
}

describe("one book for the pane", () => {
  it("reads each table once and types it once for all sections", async () => {
    vi.clearAllMocks();
    const demo = countedDemo();
    const { destination, check, groups, fit, grading } = await openAll(demo.freshBook());
    expect(demo.reads()).toEqual(everything);
    expect([typedCharts(), typedPatterns()]).toEqual([1, 1]);
    for (const chart of [destination.present?.chart, check.found?.chart, groups.figures?.chart])
      expect(chart).toBe(fit.chart);
    expect(grading.figures).toBe(groups.figures);
  });

  it("reads nothing again for a section that is opened again, nor for two that ask at once", async () => {
    const demo = countedDemo();
    const book = demo.freshBook();
    await Promise.all([openAll(book), openAll(book)]);
    await openAll(book);
    expect(demo.reads()).toEqual(everything);
  });

  it("after an edit reads each table once more, and types only the one that changed", async () => {
    const demo = countedDemo();
    const before = await openAll(demo.freshBook());
    demo.reads();
    vi.clearAllMocks();
    await demo.memory.typeInto(await cellOf(demo, "Figures", 1, 3), "81");
    const after = await openAll(demo.freshBook());
    expect(demo.reads()).toEqual(everything);
    expect([typedCharts(), typedPatterns()]).toEqual([1, 1]);
    expect(after.fit.chart).not.toBe(before.fit.chart);
    expect(after.groups.figures?.data.values[1]?.[3]).toBe(81);
  });

  it("works nothing out again when a table changes that a section does not use", async () => {
    const demo = countedDemo();
    const before = await openAll(demo.freshBook());
    vi.clearAllMocks();
    await demo.memory.typeInto(await cellOf(demo, "Patterns", 1, 1), "A new title");
    const after = await openAll(demo.freshBook());
    expect([typedCharts(), typedPatterns()]).toEqual([0, 1]);
    expect(after.check.found).toBe(before.check.found);
    expect(after.groups.figures).toBe(before.groups.figures);
    expect(after.grading.ruleSet).toBe(before.grading.ruleSet);
    expect(after.destination.present).toBe(before.destination.present);
    expect(after.fit.fitting).not.toBe(before.fit.fitting);
  });

  it("finds a table that was made without a word when a section is opened, and reads cells again only then", async () => {
    const demo = countedDemo();
    const first = demo.freshBook();
    const before = await readGroups(first, {});
    demo.reads();
    const second = demo.freshBook(first);
    expect((await readGroups(second, {})).figures).toBe(before.figures);
    expect(demo.reads()).toEqual(["sheets", "tables"]);

    await demo.memory.apply("Make a table", [
      {
        kind: "sheet",
        sheet: {
          name: "Others",
          cells: [
            ["Figure", "Bust"],
            ["Wren", 90],
          ].map((row) => row.map((value) => ({ value }))),
          tables: [{ name: "Others", row: 0, column: 0, rows: 2, columns: 2 }],
        },
      },
    ]);
    const third = demo.freshBook(second);
    const read = await readGroups(third, { figures: "Others" });
    expect(read.figures?.chart.figures).toEqual(["Wren"]);
    expect((await readGroups(third, {})).figures?.chart).toBe(before.figures?.chart);
  });

  it("keeps what is known of a table that has only moved, and knows where it is now", async () => {
    const memory = createMemoryWorkbook(demoWorkbook());
    let down = 0;
    const freshBook = openBook({
      ...memory,
      readTable: async (name) => {
        const data = await memory.readTable(name);
        return structuredClone({ ...data, area: { ...data.area, row: data.area.row + down } });
      },
    });
    const read = async (book: Book) => {
      const data = await book.readTable("Figures");
      return { data, chart: chartIn(book, data) };
    };
    const before = await read(freshBook());
    down = 2;
    const after = await read(freshBook());
    expect(after.data.area.row).toBe(before.data.area.row + 2);
    expect(after.chart).toBe(before.chart);
  });
});

describe("a version of the book", () => {
  /** A workbook whose readings wait until they are let go. */
  function slowDemo() {
    const memory = createMemoryWorkbook(demoWorkbook());
    const waiting: (() => void)[] = [];
    const readTable = async (name: string): Promise<RangeData> => {
      const data = await memory.readTable(name);
      await new Promise<void>((go) => waiting.push(go));
      return data;
    };
    return { memory, waiting, freshBook: openBook({ ...memory, readTable }) };
  }
  const until = async (isSo: () => boolean): Promise<void> => {
    while (!isSo()) await Promise.resolve();
  };

  it("does not hand on a reading that was begun before the last edit, however late it comes", async () => {
    const { memory, waiting, freshBook } = slowDemo();
    const at = await cellOf({ memory }, "Figures", 1, 3);
    await memory.typeInto(at, "81");
    const first = freshBook().readTable("Figures");
    await until(() => waiting.length === 1);
    await memory.typeInto(at, "82");
    const book = freshBook();
    const second = book.readTable("Figures");
    await until(() => waiting.length === 2);
    waiting[1]!();
    expect((await second).values[1]?.[3]).toBe(82);
    waiting[0]!();
    expect((await first).values[1]?.[3]).toBe(81);
    // The late one neither takes the place of the newer, nor passes for it in the next version.
    expect((await book.readTable("Figures")).values[1]?.[3]).toBe(82);
    const third = freshBook().readTable("Figures");
    await until(() => waiting.length === 3);
    waiting[2]!();
    expect((await third).values[1]?.[3]).toBe(82);
  });

  it("does not keep a reading that fails", async () => {
    const memory = createMemoryWorkbook(demoWorkbook());
    let isBusy = true;
    const freshBook = openBook({
      ...memory,
      readTable: async (name) => {
        if (isBusy) throw new InputError("A cell is being edited. Press Enter, then try again.");
        return memory.readTable(name);
      },
    });
    const book = freshBook();
    const [said, alike] = await Promise.all([readGroups(book, {}), readGroups(book, {})]);
    expect(said.failure).toBe("Table Figures: A cell is being edited. Press Enter, then try again.");
    expect(alike.failure).toBe(said.failure);
    isBusy = false;
    expect((await readGroups(book, {})).failure).toBeUndefined();
  });

  it("says of a table that is gone that it is gone, and takes it again when it is back", async () => {
    const memory = createMemoryWorkbook(demoWorkbook());
    const freshBook = openBook(memory);
    const before = await readGroups(freshBook(), {});
    await memory.apply("Add a sheet", [{ kind: "sheet", sheet: { name: "More", cells: [] } }]);
    const more = await readGroups(freshBook(), {});
    expect(more.sheets).toContain("More");
    expect(more.figures).toBe(before.figures);
    await memory.undo();
    expect((await readGroups(freshBook(), {})).sheets).not.toContain("More");
    await expect(freshBook().readTable("Nowhere")).rejects.toThrow("Nowhere");
  });
});
