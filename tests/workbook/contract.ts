import { afterEach, describe, expect, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { CellContent, WorkbookContent } from "../../addin/workbook/content.ts";
import type { Area, CellAddress, Edit, Workbook, WorkbookChange } from "../../addin/workbook/port.ts";
import { summary } from "./summary.ts";

/** What the suite needs beside the port: a user’s hand, and a look at everything that the workbook holds. */
export interface ContractHooks {
  /** A user types into a cell, as in the host itself. Resolves after subscribers were told. */
  typeInto(at: CellAddress, text: string): Promise<void>;
  /** A user sorts the rows of a table by one of its columns (from 0), ascending. */
  sort(table: string, column: number): Promise<void>;
  content(): WorkbookContent | Promise<WorkbookContent>;
  close?(): Promise<void>;
}

/** Text that spreadsheets take for something else when it is typed: formulas, dates, numbers, truth values. */
const trickyTexts = ["=1+1", "+1", "-1", "@x", "5/8", "1-2", "007", "1e5", "50%", "12:30", "TRUE"];

const v = (value: Cell): CellContent => ({ value });

/** An invented chart, a second table beside it, text below, and a sheet without tables. */
const start: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [{ value: "Chart of the workroom", style: "title" }],
        [v("Figure"), v("Bust"), v("Waist"), undefined, v("Measure"), v("Tolerance")],
        [v("Ada"), { value: 136.5, format: "0.0" }, v(98), undefined, v("Bust"), v(3)],
        [v("Bela"), { value: 0.1 + 0.2, format: "0.0" }, v("?"), undefined, v("Waist"), v(2)],
        [v("Caro"), v(0), undefined],
        [],
        [undefined, undefined, { value: 2, formula: "=1+1" }],
        [],
        [v("Readings by tape")],
      ],
      frozenRows: 2,
      frozenColumns: 1,
      tables: [
        { name: "Figures", row: 1, column: 0, rows: 4, columns: 3 },
        { name: "Tolerances", row: 1, column: 4, rows: 3, columns: 2 },
      ],
      notes: [{ row: 2, column: 1, text: "Measured twice" }],
    },
    {
      name: "Free page",
      cells: [
        [v("Bust"), v("Waist")],
        [v(1), v(true)],
        [v(3), v(4)],
      ],
    },
  ],
};

const at = (row: number, column: number, sheet = "Figures"): CellAddress => ({ sheet, row, column });
const area = (row: number, column: number, rows: number, columns: number, sheet = "Figures"): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});
const write = (where: CellAddress, ...cells: CellContent[][]): Edit => ({ kind: "cells", at: where, cells });

/** One edit of every kind, and some that build on one another. */
const goodEdits: Record<string, readonly Edit[]> = {
  "cells written over others": [write(at(2, 1), [v(140), v("n/a")], [{ formula: "=2*3" }, v(undefined)])],
  "cells with formats": [
    write(at(2, 1), [
      { value: 1.5, format: "0.00" },
      { value: "x", format: "@" },
    ]),
  ],
  "cells beyond the used ones": [write(at(20, 10), [v(1)])],
  "a sheet with everything": [
    {
      kind: "sheet",
      sheet: {
        name: "Results",
        cells: [[v("Figure"), v("Group")], [v("Ada"), v(1)], [{ value: "5/8", style: "marked" }]],
        frozenRows: 1,
        columnWidths: [120, undefined],
        tables: [{ name: "Groups", row: 0, column: 0, rows: 2, columns: 2 }],
        notes: [{ row: 1, column: 1, text: "First group" }],
      },
    },
  ],
  "two sheets, each with a table of the same name": ["Groups", "Bases"].map((name) => ({
    kind: "sheet",
    sheet: {
      name,
      cells: [
        [v("Figure"), v(name)],
        [v("Ada"), v(1)],
      ],
      frozenRows: 1,
      tables: [{ name, row: 0, column: 0, rows: 2, columns: 2 }],
    },
  })),
  "a table over what was there": [{ kind: "table", name: "Loose", area: area(0, 0, 3, 2, "Free page") }],
  "a table over what the same action wrote": [
    write(at(12, 0), [v("Heading"), v("Other")], [v(1), v(2)]),
    { kind: "table", name: "Fresh", area: area(12, 0, 2, 2) },
    { kind: "rows", table: "Fresh", rows: [["=x", 3]] },
  ],
  "rows at the end of a table": [
    {
      kind: "rows",
      table: "Figures",
      rows: [
        ["Dora", 5.25, undefined],
        ["5/8", "", true],
      ],
    },
  ],
  "rows where text stands below": [
    { kind: "rows", table: "Figures", rows: Array.from({ length: 3 }, (_, i) => [`New ${String(i)}`, i, i]) },
  ],
  "a column beside a table": [
    { kind: "column", table: "Tolerances", heading: "Note", values: ["as usual", "1-2"] },
  ],
  "a mark on and another off": [
    { kind: "mark", cells: [at(2, 1), at(3, 2), at(0, 0)], marked: true },
    { kind: "mark", cells: [at(3, 2)], marked: false },
  ],
  "a note added, one changed, one removed": [
    { kind: "note", at: at(3, 1), text: "Look again" },
    { kind: "note", at: at(2, 1), text: "Measured three times" },
    { kind: "note", at: at(3, 1), text: undefined },
  ],
  "a note removed": [{ kind: "note", at: at(2, 1), text: undefined }],
  "other frozen rows": [{ kind: "freeze", sheet: "Figures", rows: 0, columns: 2 }],
  "nothing frozen any more": [{ kind: "freeze", sheet: "Figures", rows: 0, columns: 0 }],
  "several kinds together": [
    { kind: "rows", table: "Figures", rows: [["Dora", 5.25, 4]] },
    { kind: "column", table: "Tolerances", heading: "Note", values: ["as usual", ""] },
    write(at(2, 1), [v("5 3/8")]),
    { kind: "mark", cells: [at(2, 1)], marked: true },
    { kind: "note", at: at(2, 1), text: "Was 136.5" },
    { kind: "sheet", sheet: { name: "Log", cells: [[v("Done")]] } },
    write(at(1, 0, "Log"), [v("twice")]),
  ],
};

/** Edits that cannot be applied, and what the message has to quote. */
const badEdits: Record<string, readonly [Edit, string]> = {
  "cells on a sheet that is not there": [write(at(0, 0, "Nowhere"), [v(1)]), "Nowhere"],
  "cells beyond the edge of the sheet": [write(at(0, 16_384), [v(1)]), "Figures"],
  "a number that is none": [write(at(2, 1), [v(Number.NaN)]), "B3"],
  "a sheet name that is taken, in other letters": [
    { kind: "sheet", sheet: { name: "FIGURES", cells: [] } },
    "FIGURES",
  ],
  "a sheet name that no sheet may have": [{ kind: "sheet", sheet: { name: "a/b", cells: [] } }, "a/b"],
  "a sheet with a table name that is taken": [
    {
      kind: "sheet",
      sheet: {
        name: "New",
        cells: [[v("A")], [v(1)]],
        tables: [{ name: "figures", row: 0, column: 0, rows: 2, columns: 1 }],
      },
    },
    "figures",
  ],
  "a table name that is taken": [
    { kind: "table", name: "figures", area: area(0, 0, 3, 2, "Free page") },
    "figures",
  ],
  "a table name like that of a cell": [
    { kind: "table", name: "B12", area: area(0, 0, 3, 2, "Free page") },
    "B12",
  ],
  "a table name with a space": [
    { kind: "table", name: "My figures", area: area(0, 0, 3, 2, "Free page") },
    "My figures",
  ],
  "a table across another": [{ kind: "table", name: "Wide", area: area(1, 2, 3, 3) }, "Figures"],
  "a table with a column without heading": [
    { kind: "table", name: "Wide", area: area(0, 0, 3, 3, "Free page") },
    "Wide",
  ],
  "rows for a table that is not there": [{ kind: "rows", table: "Dolls", rows: [[1]] }, "Dolls"],
  "rows with a cell too few": [{ kind: "rows", table: "Figures", rows: [["Dora", 1]] }, "Figures"],
  "a column for a table that is not there": [
    { kind: "column", table: "Dolls", heading: "Hip", values: [] },
    "Dolls",
  ],
  "a column with a cell too few": [
    { kind: "column", table: "Tolerances", heading: "Note", values: ["x"] },
    "Note",
  ],
  "a column with a heading that is there already": [
    { kind: "column", table: "Tolerances", heading: "measure", values: ["x", "y"] },
    "measure",
  ],
  "a mark on a sheet that is not there": [
    { kind: "mark", cells: [at(0, 0), at(0, 0, "Nowhere")], marked: true },
    "Nowhere",
  ],
  "a note on a sheet that is not there": [{ kind: "note", at: at(0, 0, "Nowhere"), text: "x" }, "Nowhere"],
  "frozen rows on a sheet that is not there": [
    { kind: "freeze", sheet: "Nowhere", rows: 1, columns: 0 },
    "Nowhere",
  ],
};

/** The port’s contract. Every adapter has to pass it. */
export function workbookContract(
  name: string,
  make: (content: WorkbookContent) => Promise<Workbook & ContractHooks>,
): void {
  describe(`${name} keeps the contract of the workbook port`, () => {
    const opened: ContractHooks[] = [];
    const open = async (content: WorkbookContent = start) => {
      const workbook = await make(content);
      opened.push(workbook);
      return workbook;
    };
    const all = async (workbook: ContractHooks) => summary(await workbook.content());

    afterEach(async () => {
      for (const workbook of opened.splice(0)) await workbook.close?.();
    });

    describe("reading", () => {
      it("lists sheets in order, and tables with their headings", async () => {
        const workbook = await open();
        expect(await workbook.sheets()).toEqual(["Figures", "Free page"]);
        const tables = [...(await workbook.tables())].sort((a, b) => a.name.localeCompare(b.name));
        expect(tables).toEqual([
          { name: "Figures", area: area(1, 0, 4, 3), headings: ["Figure", "Bust", "Waist"] },
          { name: "Tolerances", area: area(1, 4, 3, 2), headings: ["Measure", "Tolerance"] },
        ]);
      });

      it("reads a table, headings first, in full precision, with blank cells told from 0", async () => {
        const { area: where, values, formats } = await (await open()).readTable("figures");
        expect(where).toEqual(area(1, 0, 4, 3));
        expect(values).toEqual([
          ["Figure", "Bust", "Waist"],
          ["Ada", 136.5, 98],
          ["Bela", 0.30000000000000004, "?"],
          ["Caro", 0, undefined],
        ]);
        expect(formats.map((row) => row[1])).toEqual(["General", "0.0", "0.0", "General"]);
      });

      it("reads an area with what formulas give, truth values, and cells that nobody has touched", async () => {
        const workbook = await open();
        expect((await workbook.readArea(area(6, 2, 1, 2))).values).toEqual([[2, undefined]]);
        expect((await workbook.readArea(area(1, 0, 1, 2, "Free page"))).values).toEqual([[1, true]]);
        expect((await workbook.readArea(area(40, 40, 2, 1))).values).toEqual([[undefined], [undefined]]);
      });

      it("finds cells by what they hold, formulas by their texts", async () => {
        const workbook = await open();
        await workbook.typeInto(at(12, 0), "=2*3");
        await workbook.apply("Text", [write(at(13, 0), [v("=2*3"), v(6)])]);
        const found = await workbook.findCells(({ holds }) => /[*]/.test(String(holds)) || holds === 4);
        expect(found).toEqual([
          { at: at(12, 0), holds: "=2*3", isFormula: true },
          { at: at(13, 0), holds: "=2*3", isFormula: false },
          { at: at(2, 1, "Free page"), holds: 4, isFormula: false },
        ]);
        const all = await workbook.findCells(() => true);
        expect(all.filter((cell) => cell.at.sheet === "Free page").map(({ holds }) => holds)).toEqual([
          ...["Bust", "Waist", 1, 3, 4],
        ]);
      });

      it("makes a number of what is written into a cell formatted as text, and leaves text there as it was", async () => {
        const workbook = await open();
        const asText = (value: string): CellContent => ({ value, format: "@" });
        await workbook.apply("Text", [write(at(12, 0), [asText("x"), asText("5/8")])]);
        await workbook.apply("Numbers", [write(at(12, 0), [v(7), v("3/8")])]);
        const { values, formats } = await workbook.readArea(area(12, 0, 1, 2));
        expect([values, formats]).toEqual([[[7, "3/8"]], [["General", "@"]]]);
        await workbook.undo();
        const before = await workbook.readArea(area(12, 0, 1, 2));
        expect([before.values, before.formats]).toEqual([[["x", "5/8"]], [["@", "@"]]]);
      });

      it("reads error values as errors and not as text", async () => {
        const workbook = await open();
        await workbook.apply("Write", [write(at(2, 1), [v({ error: "#N/A" })])]);
        expect((await workbook.readArea(area(2, 1, 1, 1))).values).toEqual([[{ error: "#N/A" }]]);
      });

      it("reads what is selected, cut to the used part of the sheet", async () => {
        const workbook = await open();
        await workbook.select(area(1, 0, 2, 2));
        expect((await workbook.readSelection()).values).toEqual([
          ["Figure", "Bust"],
          ["Ada", 136.5],
        ]);
        await workbook.select(area(0, 0, 1000, 20, "Free page"));
        const cut = await workbook.readSelection();
        expect(cut.area).toEqual(area(0, 0, 3, 2, "Free page"));
        expect(cut.values).toEqual([
          ["Bust", "Waist"],
          [1, true],
          [3, 4],
        ]);
      });

      it("tells which cell is selected, filled or not; of an area, the first", async () => {
        const workbook = await open();
        await workbook.select(area(500, 50, 1, 1));
        expect(await workbook.selectedCell()).toMatchObject({ row: 500, column: 50 });
        await workbook.select(area(1, 0, 2, 2, "Free page"));
        expect(await workbook.selectedCell()).toEqual({ sheet: "Free page", row: 1, column: 0 });
      });

      it("tells the used part of a sheet, and that a sheet is empty", async () => {
        const workbook = await open();
        expect(await workbook.usedArea("free page")).toEqual(area(0, 0, 3, 2, "Free page"));
        await workbook.apply("Add", [{ kind: "sheet", sheet: { name: "Bare", cells: [] } }]);
        expect(await workbook.usedArea("Bare")).toBeUndefined();
        await expect(workbook.usedArea("Nowhere")).rejects.toThrow(InputError);
      });

      it("says so when only empty cells are selected", async () => {
        const workbook = await open();
        await workbook.select(area(500, 50, 2, 2));
        await expect(workbook.readSelection()).rejects.toThrow(InputError);
      });

      it.each<[string, (workbook: Workbook) => Promise<unknown>, string]>([
        ["a table", (workbook) => workbook.readTable("Dolls"), "Dolls"],
        ["a sheet", (workbook) => workbook.readArea(area(0, 0, 1, 1, "Nowhere")), "Nowhere"],
        ["a sheet to select on", (workbook) => workbook.select(area(0, 0, 1, 1, "Nowhere")), "Nowhere"],
      ])("names %s that is not there", async (_, read, named) => {
        const error = await rejection(read(await open()));
        expect(error).toMatchObject({ name: "InputError", kind: "absent" });
        expect(error.message).toContain(`“${named}”`);
      });
    });

    describe("applying", () => {
      it("writes values, formulas and blanks, and leaves alone what is not named", async () => {
        const workbook = await open();
        await workbook.apply("Write", [
          { kind: "cells", at: at(2, 0), cells: [[undefined, v(140.25), v(undefined)], [v("Bella")]] },
          write(at(10, 0), [{ formula: "=3*4" }]),
        ]);
        expect((await workbook.readArea(area(2, 0, 2, 3))).values).toEqual([
          ["Ada", 140.25, undefined],
          ["Bella", 0.30000000000000004, "?"],
        ]);
        expect((await workbook.readArea(area(2, 1, 1, 1))).formats).toEqual([["0.0"]]);
        expect((await workbook.content()).sheets[0]?.cells[10]?.[0]?.formula).toBe("=3*4");
      });

      it("keeps 0, blank and empty text apart from one another as far as cells can", async () => {
        const workbook = await open();
        await workbook.apply("Write", [write(at(10, 0), [v(0), v(undefined), v(false), v(" ")])]);
        expect((await workbook.readArea(area(10, 0, 1, 4))).values).toEqual([[0, undefined, false, " "]]);
      });

      it("keeps every digit of a number", async () => {
        const numbers = [1 / 3, 136.52499999999998, 1e-7, -0.1, 123456789.12345678];
        const workbook = await open();
        await workbook.apply("Write", [write(at(10, 0), numbers.map(v))]);
        expect((await workbook.readArea(area(10, 0, 1, numbers.length))).values).toEqual([numbers]);
      });

      it("keeps text as text, whatever it looks like, in every kind of edit", async () => {
        const workbook = await open();
        const header = trickyTexts.map((_, i) => v(`Column ${String.fromCharCode(65 + i)}`));
        await workbook.apply("Write", [
          write(at(10, 0), trickyTexts.map(v)),
          { kind: "sheet", sheet: { name: "Texts", cells: [trickyTexts.map(v)] } },
          write(
            at(20, 0),
            header,
            trickyTexts.map((_, i) => v(i)),
          ),
          { kind: "table", name: "Tricky", area: area(20, 0, 2, trickyTexts.length) },
          { kind: "rows", table: "Tricky", rows: [trickyTexts] },
          { kind: "column", table: "Tolerances", heading: "=1+2", values: ["=1+1", "5/8"] },
        ]);
        const n = trickyTexts.length;
        expect((await workbook.readArea(area(10, 0, 1, n))).values).toEqual([trickyTexts]);
        expect((await workbook.readArea(area(0, 0, 1, n, "Texts"))).values).toEqual([trickyTexts]);
        expect((await workbook.readTable("Tricky")).values[2]).toEqual(trickyTexts);
        expect((await workbook.readTable("Tolerances")).values.map((row) => row[2])).toEqual([
          "=1+2",
          "=1+1",
          "5/8",
        ]);
        const { sheets } = await workbook.content();
        expect(sheets[0]?.cells[10]?.some((cell) => cell?.formula !== undefined)).toBe(false);
      });

      it("writes a number or a formula where text stood", async () => {
        const workbook = await open();
        await workbook.apply("Text", [write(at(2, 1), [v("5/8"), v("=1+1")])]);
        await workbook.apply("Number", [write(at(2, 1), [v(15.875), { formula: "=2+2" }])]);
        expect((await workbook.readArea(area(2, 1, 1, 1))).values).toEqual([[15.875]]);
        expect((await workbook.content()).sheets[0]?.cells[2]?.[2]?.formula).toBe("=2+2");
      });

      it("adds numbers as numbers below text in a table", async () => {
        const workbook = await open();
        await workbook.apply("Text", [{ kind: "rows", table: "Figures", rows: [["Dora", "5/8", "1-2"]] }]);
        await workbook.apply("Number", [{ kind: "rows", table: "Figures", rows: [["Emil", 15.875, 7]] }]);
        expect((await workbook.readTable("Figures")).values.slice(-2)).toEqual([
          ["Dora", "5/8", "1-2"],
          ["Emil", 15.875, 7],
        ]);
      });

      it("adds a sheet after the last one, with tables, notes, marks and frozen rows", async () => {
        const workbook = await open();
        await workbook.apply("Add", goodEdits["a sheet with everything"]!);
        expect(await workbook.sheets()).toEqual(["Figures", "Free page", "Results"]);
        expect((await all(workbook)).at(-1)).toMatchObject({
          sheet: "Results",
          cells: { A1: "Figure", B1: "Group", A2: "Ada", B2: 1, A3: "5/8" },
          marks: { A3: true },
          tables: ["Groups A1:B2"],
          notes: { B2: "First group" },
          frozen: [1, 0],
        });
      });

      it("turns an area into a table without changing a cell", async () => {
        const workbook = await open();
        const before = await workbook.readArea(area(0, 0, 3, 2, "Free page"));
        await workbook.apply("Table", goodEdits["a table over what was there"]!);
        expect((await workbook.readTable("Loose")).values).toEqual(before.values);
      });

      it("adds rows and a column to tables", async () => {
        const workbook = await open();
        await workbook.apply("Rows", [
          { kind: "rows", table: "Figures", rows: [["Dora", 5.25, undefined]] },
          { kind: "rows", table: "Figures", rows: [["Emil", 0, "?"]] },
          { kind: "column", table: "Tolerances", heading: "Note", values: ["as usual", undefined] },
        ]);
        expect((await workbook.readTable("Figures")).values.slice(3)).toEqual([
          ["Caro", 0, undefined],
          ["Dora", 5.25, undefined],
          ["Emil", 0, "?"],
        ]);
        const tolerances = (await workbook.tables()).find((table) => table.name === "Tolerances");
        expect(tolerances).toEqual({
          name: "Tolerances",
          area: area(1, 4, 3, 3),
          headings: ["Measure", "Tolerance", "Note"],
        });
        expect((await workbook.readTable("Tolerances")).values.map((row) => row[2])).toEqual([
          "Note",
          "as usual",
          undefined,
        ]);
      });

      it("never overwrites what stands below a table", async () => {
        const workbook = await open();
        await workbook.apply("Rows", goodEdits["rows where text stands below"]!).catch((error: unknown) => {
          expect(error).toBeInstanceOf(InputError);
        });
        const cells = Object.values((await all(workbook))[0]!.cells);
        expect(cells).toContain("=1+1");
        expect(cells).toContain("Readings by tape");
      });

      it("marks cells, and takes a mark away without touching how the cell looked before", async () => {
        const workbook = await open();
        const styleOf = async () => (await workbook.content()).sheets[0]?.cells[0]?.[0]?.style;
        const before = await styleOf();
        await workbook.apply("Mark", [{ kind: "mark", cells: [at(0, 0), at(2, 1)], marked: true }]);
        expect((await all(workbook))[0]!.marks).toEqual({ A1: true, B3: true });
        await workbook.apply("Unmark", [{ kind: "mark", cells: [at(0, 0), at(4, 1)], marked: false }]);
        expect((await all(workbook))[0]!.marks).toEqual({ B3: true });
        expect(await styleOf()).toBe(before);
        expect((await workbook.readArea(area(2, 1, 1, 1))).values).toEqual([[136.5]]);
      });

      it("marks a reading, so that after sorting the mark is on that reading", async () => {
        const workbook = await open();
        await workbook.apply("Mark", [{ kind: "mark", cells: [at(4, 1), at(3, 2)], marked: true }]);
        await workbook.sort("Figures", 1);
        const sorted = (await workbook.readTable("Figures")).values.map((row) => row[0]);
        expect(sorted).toEqual(["Figure", "Caro", "Bela", "Ada"]);
        expect((await all(workbook))[0]!.marks).toEqual({ B3: true, C4: true });
        await workbook.apply("Unmark", [{ kind: "mark", cells: [at(2, 1), at(3, 2)], marked: false }]);
        expect((await all(workbook))[0]!.marks).toEqual({});
        await workbook.sort("Figures", 0);
        expect((await all(workbook))[0]!.marks).toEqual({});
      });

      it("goes on with a column’s formulas in new rows that bring no value for it", async () => {
        const workbook = await open({
          sheets: [
            {
              name: "Figures",
              cells: [
                [v("Figure"), v("Bust"), v("Twice")],
                [v("Ada"), v(100), { formula: "=B2*2", value: 200 }],
              ],
              tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 3 }],
            },
          ],
        });
        await workbook.apply("Rows", [
          {
            kind: "rows",
            table: "Figures",
            rows: [
              ["Bela", 110, undefined],
              ["Caro", 120, 7],
            ],
          },
        ]);
        const cells = (await workbook.content()).sheets[0]?.cells ?? [];
        expect(cells[2]?.[2]?.formula).toBe("=B3*2");
        expect(cells[3]?.[2]).toMatchObject({ value: 7 });
      });

      it("sets, replaces and removes notes", async () => {
        const workbook = await open();
        await workbook.apply("Notes", goodEdits["a note added, one changed, one removed"]!);
        expect((await all(workbook))[0]!.notes).toEqual({ B3: "Measured three times" });
        await workbook.apply("Note", goodEdits["a note removed"]!);
        expect((await all(workbook))[0]!.notes).toEqual({});
      });

      it("freezes rows and columns, and lets them go", async () => {
        const workbook = await open();
        await workbook.apply("Freeze", goodEdits["other frozen rows"]!);
        expect((await all(workbook))[0]!.frozen).toEqual([0, 2]);
        await workbook.apply("Thaw", goodEdits["nothing frozen any more"]!);
        expect((await all(workbook))[0]!.frozen).toEqual([0, 0]);
      });

      it("writes 20,000 cells", async () => {
        const workbook = await open();
        const rows = Array.from({ length: 1000 }, (_, i) =>
          Array.from({ length: 20 }, (_, j) => v(j === 0 ? `Figure ${String(i)}` : i + j / 16)),
        );
        await workbook.apply("Import 1,000 figures", [write(at(0, 0, "Free page"), ...rows)]);
        const { values } = await workbook.readArea(area(0, 0, 1000, 20, "Free page"));
        expect(values).toEqual(rows.map((row) => row.map((cell) => cell.value)));
        expect(await workbook.undo()).toBe("Import 1,000 figures");
        expect(await all(workbook)).toEqual(summary(start));
      }, 60_000);

      it("does two actions one after the other when both are asked for at once", async () => {
        const workbook = await open();
        await Promise.all([
          workbook.apply("First", [write(at(10, 0), [v(1)])]),
          workbook.apply("Second", [write(at(10, 0), [v(2)])]),
        ]);
        expect((await workbook.readArea(area(10, 0, 1, 1))).values).toEqual([[2]]);
        expect(await workbook.undo()).toBe("Second");
        expect((await workbook.readArea(area(10, 0, 1, 1))).values).toEqual([[1]]);
      });
    });

    describe("all or nothing", () => {
      it.each(Object.entries(badEdits))(
        "refuses %s in words, and changes nothing",
        async (_, [bad, quoted]) => {
          const workbook = await open();
          const before = await all(workbook);
          const error = await rejection(
            workbook.apply("Half", [...goodEdits["several kinds together"]!, bad]),
          );
          expect(error).toBeInstanceOf(InputError);
          expect(error.message).toContain(quoted);
          expect(await all(workbook)).toEqual(before);
          expect(workbook.lastAction()).toBeUndefined();
          expect(await workbook.undo()).toBeUndefined();
        },
      );

      it("refuses two columns of a table with one heading, also when the same action wrote them", async () => {
        const workbook = await open();
        const error = await rejection(
          workbook.apply("Table", [
            write(at(0, 1, "Free page"), [v("bust")]),
            { kind: "table", name: "Loose", area: area(0, 0, 3, 2, "Free page") },
          ]),
        );
        expect(error).toBeInstanceOf(InputError);
        expect(error.message.toLowerCase()).toContain("“bust”");
        expect(await all(workbook)).toEqual(summary(start));
      });

      it("keeps the action before when the next one is refused", async () => {
        const workbook = await open();
        await workbook.apply("Good", [write(at(10, 0), [v(1)])]);
        await rejection(
          workbook.apply("Bad", [write(at(11, 0), [v(1)]), badEdits["a table across another"]![0]]),
        );
        expect(workbook.lastAction()).toBe("Good");
        await workbook.undo();
        expect(await all(workbook)).toEqual(summary(start));
      });
    });

    describe("undo", () => {
      it.each(Object.entries(goodEdits))("takes back %s as one action", async (_, edits) => {
        const workbook = await open();
        const before = await all(workbook);
        await workbook.apply("One action", edits);
        expect(await all(workbook)).not.toEqual(before);
        expect(workbook.lastAction()).toBe("One action");
        expect(await workbook.undo()).toBe("One action");
        expect(await all(workbook)).toEqual(before);
        expect(workbook.lastAction()).toBeUndefined();
      });

      it("goes back action by action", async () => {
        const workbook = await open();
        const states = [await all(workbook)];
        const labels = ["rows at the end of a table", "a mark on and another off", "a sheet with everything"];
        for (const label of labels) {
          await workbook.apply(label, goodEdits[label]!);
          states.push(await all(workbook));
        }
        for (const label of [...labels].reverse()) {
          states.pop();
          expect(await workbook.undo()).toBe(label);
          expect(await all(workbook)).toEqual(states.at(-1));
        }
        expect(await workbook.undo()).toBeUndefined();
      });

      it("brings back text that looks like a formula as text", async () => {
        const workbook = await open();
        await workbook.apply("Text", [write(at(10, 0), [v("=1+1"), v("5/8")])]);
        await workbook.apply("Over", [write(at(10, 0), [v(1), { formula: "=2+2" }])]);
        await workbook.undo();
        expect((await workbook.readArea(area(10, 0, 1, 2))).values).toEqual([["=1+1", "5/8"]]);
        expect((await workbook.content()).sheets[0]?.cells[10]?.[0]?.formula).toBeUndefined();
      });

      it("keeps what the user typed elsewhere since", async () => {
        const workbook = await open();
        await workbook.apply("Write", [write(at(2, 1), [v(1)])]);
        await workbook.typeInto(at(2, 2), "77");
        await workbook.undo();
        expect((await workbook.readArea(area(2, 1, 1, 2))).values).toEqual([[136.5, 77]]);
      });

      it("does not throw away what the user typed since over cells that the action wrote", async () => {
        const workbook = await open();
        await workbook.apply("Write", [write(at(2, 1), [v(1), v(2)])]);
        await workbook.typeInto(at(2, 1), "99");
        await workbook.undo().catch((error: unknown) => {
          expect(error).toBeInstanceOf(InputError);
        });
        expect((await workbook.readArea(area(2, 1, 1, 1))).values).toEqual([[99]]);
      });
    });

    describe("subscribers", () => {
      it("hear what the user types, and not what the port itself writes or undoes", async () => {
        const workbook = await open();
        const heard: WorkbookChange[] = [];
        workbook.subscribe((change) => heard.push(change));
        await workbook.apply("Write", [write(at(0, 0, "Free page"), [v("mine")])]);
        await workbook.undo();
        await workbook.typeInto(at(2, 1), "5.5");
        expect(new Set(heard.map((change) => change.sheet))).toEqual(new Set(["Figures"]));
        expect((await workbook.readArea(area(2, 1, 1, 1))).values).toEqual([[5.5]]);
      });

      it("hear what one cell held before and holds now", async () => {
        const workbook = await open();
        const heard: WorkbookChange[] = [];
        workbook.subscribe((change) => heard.push(change));
        await workbook.typeInto(at(3, 0), "Bella");
        await workbook.typeInto(at(3, 0), "");
        await workbook.typeInto(at(3, 1), "7");
        expect(heard.flatMap(({ sheet, typed = [] }) => typed.map((cell) => ({ sheet, ...cell })))).toEqual([
          { ...at(3, 0), before: "Bela", after: "Bella" },
          { ...at(3, 0), before: "Bella", after: undefined },
          { ...at(3, 1), before: 0.30000000000000004, after: 7 },
        ]);
      });

      it("are not told of one cell where the rows of a table were sorted, or of what the port writes", async () => {
        const workbook = await open();
        const heard: WorkbookChange[] = [];
        workbook.subscribe((change) => heard.push(change));
        await workbook.apply("Write", [write(at(2, 0), [v("Zora")])]);
        await workbook.sort("Figures", 0);
        await workbook.undo().catch(() => undefined);
        await workbook.typeInto(at(0, 0, "Free page"), "x");
        expect(heard.flatMap(({ typed = [] }) => typed)).toEqual([
          { row: 0, column: 0, before: "Bust", after: "x" },
        ]);
      });

      it("hear no more once they have unsubscribed", async () => {
        const workbook = await open();
        const gone: WorkbookChange[] = [];
        const kept: WorkbookChange[] = [];
        const leave = workbook.subscribe((change) => gone.push(change));
        workbook.subscribe((change) => kept.push(change));
        leave();
        await workbook.typeInto(at(2, 1), "5.5");
        expect(gone).toEqual([]);
        expect(kept.length).toBeGreaterThan(0);
      });
    });

    describe("preferences", () => {
      it("are kept, replaced, and do not count as an action", async () => {
        const workbook = await open();
        expect(await workbook.preference("unit")).toBeUndefined();
        await workbook.setPreference("unit", "in");
        await workbook.setPreference("right", { cells: ["Ada Bust", "=1+1"], on: true, least: 0 });
        await workbook.setPreference("unit", "cm");
        expect(await workbook.preference("unit")).toBe("cm");
        expect(await workbook.preference("right")).toEqual({
          cells: ["Ada Bust", "=1+1"],
          on: true,
          least: 0,
        });
        expect(workbook.lastAction()).toBeUndefined();
        expect(await all(workbook)).toEqual(summary(start));
      });
    });
  });
}

async function rejection(promise: Promise<unknown>): Promise<Error> {
  const error: unknown = await promise.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof Error)) throw new Error("Nothing was refused.");
  return error;
}
