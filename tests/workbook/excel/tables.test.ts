import { afterEach, describe, expect, it, vi } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Edit } from "../../../addin/workbook/port.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

/** A chart whose last column works out something from the one before it. */
const chart = (...below: CellContent[][]): WorkbookContent => ({
  sheets: [
    {
      name: "Figures",
      cells: [
        [v("Figure"), v("Bust"), v("Twice")],
        [v("Ada"), v(100), { formula: "=B2*2", value: 200 }],
        [v("Bela"), v(110), { formula: "=B3*2", value: 220 }],
        ...below,
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 3 }],
    },
  ],
});
const newRows: Edit = {
  kind: "rows",
  table: "Figures",
  rows: [
    ["Caro", 120, undefined],
    ["Dora", 130, undefined],
  ],
};

afterEach(() => {
  vi.unstubAllGlobals();
});

const formulasIn = (content: WorkbookContent) =>
  content.sheets[0]?.cells.map((row) => row[2]?.formula).filter((formula) => formula !== undefined);

// Microsoft, “Coauthoring in Excel add-ins”: `TableRowCollection.add` conflicts with what others edit; values set directly
// below a table expand it.
describe("new rows of a table", () => {
  it("are written below it, not added through the table", async () => {
    const { double, workbook } = openExcel(chart());
    const asked: string[] = [];
    double.host.beforeOperation = (label) => asked.push(label);
    await workbook.apply("Add", [newRows]);
    expect((await workbook.readTable("Figures")).values).toHaveLength(5);
    expect(asked.filter((label) => /add rows|resize/.test(label))).toEqual([]);
  });

  it.each([
    ["as Excel is set at first", {}],
    ["with AutoCorrect’s new rows turned off", { expandsTables: false }],
    ["with AutoCorrect’s calculated columns turned off", { fillsColumns: false }],
  ])("go on with the formulas of a column (%s), and undo leaves none", async (_, habits) => {
    const { double, workbook } = openExcel(chart());
    Object.assign(double.book.habits, habits);
    await workbook.apply("Add", [newRows]);
    expect(formulasIn(double.content())).toEqual(["=B2*2", "=B3*2", "=B4*2", "=B5*2"]);
    expect((await workbook.readTable("Figures")).values.at(-1)).toEqual(["Dora", 130, 260]);
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(chart()));
  });

  it("bring their own value for a column of formulas where they have one", async () => {
    const { double, workbook } = openExcel(chart());
    await workbook.apply("Add", [{ kind: "rows", table: "Figures", rows: [["Caro", 120, 7]] }]);
    expect(double.content().sheets[0]?.cells[3]?.[2]).toMatchObject({ value: 7 });
  });

  it("become part of the table when they are blank", async () => {
    const { double, workbook } = openExcel(chart());
    const blank = [undefined, undefined, undefined];
    await workbook.apply("Add", [{ kind: "rows", table: "Figures", rows: [blank, ["Caro", 1, 2], blank] }]);
    expect((await workbook.readTable("Figures")).values).toHaveLength(6);
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(chart()));
  });

  it("move what stands below out of the way, and undo moves it back", async () => {
    const below = [[], [v("By tape")]];
    const { double, workbook } = openExcel(chart(...below));
    await workbook.apply("Add", [newRows]);
    expect(double.content().sheets[0]?.cells[6]?.[0]?.value).toBe("By tape");
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(chart(...below)));
  });

  it("leave alone what was typed far below since, also when undo takes them back", async () => {
    const { double, workbook } = openExcel(chart());
    await workbook.apply("Add", [newRows]);
    await workbook.typeInto({ sheet: "Figures", row: 20, column: 0 }, "mine");
    await workbook.undo();
    expect(double.content().sheets[0]?.cells[20]?.[0]?.value).toBe("mine");
  });

  it("are written below a filtered table; with no room below, a filter is asked to be cleared first", async () => {
    const free = openExcel(chart());
    free.double.book.tables[0]!.filtered = true;
    await free.workbook.apply("Add", [newRows]);
    await free.workbook.undo();
    expect(summary(free.double.content())).toEqual(summary(chart()));

    const below = [[], [v("By tape")]];
    const full = openExcel(chart(...below));
    full.double.book.tables[0]!.filtered = true;
    await expect(full.workbook.apply("Add", [newRows])).rejects.toThrow(
      /“Figures” is filtered.*Clear its filter/,
    );
    expect(summary(full.double.content())).toEqual(summary(chart(...below)));
  });
});

describe("somebody else’s edit between our reading and our writing", () => {
  const note: Edit = {
    kind: "cells",
    at: { sheet: "Figures", row: 1, column: 1 },
    cells: [[v(101)]],
  };
  const elsewhere = { sheet: "Figures", row: 9, column: 5 };

  it.each<[string, Edit, { row: number; column: number }]>([
    ["a cell that we write", note, { row: 1, column: 1 }],
    ["the row below the table that we fill", newRows, { row: 3, column: 0 }],
  ])("in %s is not lost, and we are told to look", async (_, edit, { row, column }) => {
    let conflicts = 0;
    const whole = openExcel(chart());
    await whole.workbook.apply("Write", [edit]);
    for (let sync = 0; sync < whole.double.host.syncs.length; sync++) {
      const { double, workbook } = openExcel(chart());
      double.host.atSync = (when, index) => {
        if (when === "before" && index === sync) double.type({ sheet: "Figures", row, column }, "77");
      };
      const said = await workbook.apply("Write", [edit]).then(
        () => "",
        (error: unknown) => String(error),
      );
      double.host.atSync = undefined;
      const held = () => double.content().sheets[0]?.cells[row]?.[column]?.value;
      if (said !== "") {
        conflicts++;
        expect(said).toMatch(/Somebody else changed the same cells/);
      } else if (held() !== 77) {
        // Written over what we had read: undo brings it back.
        await workbook.undo();
      }
      expect(held(), `at sync ${String(sync)}`).toBe(77);
    }
    expect(conflicts).toBeGreaterThan(0);
  });

  it("elsewhere stays, through action and undo", async () => {
    const whole = openExcel(chart());
    await whole.workbook.apply("Write", [note, newRows]);
    await whole.workbook.undo();
    for (let sync = 0; sync < whole.double.host.syncs.length; sync++) {
      const { double, workbook } = openExcel(chart());
      double.host.atSync = (when, index) => {
        if (when === "before" && index === sync) double.type(elsewhere, "theirs");
      };
      await workbook.apply("Write", [note, newRows]);
      await workbook.undo();
      const left = summary(double.content());
      expect(left[0]?.cells).toEqual({ ...summary(chart())[0]?.cells, F10: "theirs" });
      expect(left[0]?.tables).toEqual(["Figures A1:C3"]);
    }
  });
});

describe("tables keep their size", () => {
  it("when cells right below or beside them are written as cells", async () => {
    const { double, workbook } = openExcel(chart());
    await workbook.apply("Write", [
      { kind: "cells", at: { sheet: "Figures", row: 3, column: 0 }, cells: [[v("Mean")]] },
      { kind: "cells", at: { sheet: "Figures", row: 0, column: 3 }, cells: [[v("Note")]] },
    ]);
    expect(summary(double.content())[0]?.tables).toEqual(["Figures A1:C3"]);
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(chart()));
  });
});

describe("formulas", () => {
  it("are written once the tables that they name are there, in the same action", async () => {
    const { double, workbook } = openExcel(chart());
    await workbook.apply("Results", [
      { kind: "sheet", sheet: { name: "First", cells: [[{ formula: "=ROWS(Later[#All])" }]] } },
      {
        kind: "sheet",
        sheet: {
          name: "Second",
          cells: [
            [v("Group"), v("Twice")],
            [v(1), { formula: "=[@Group]*2" }],
          ],
          tables: [{ name: "Later", row: 0, column: 0, rows: 2, columns: 2 }],
        },
      },
    ]);
    const { sheets } = double.content();
    expect(sheets[1]?.cells[0]?.[0]?.formula).toBe("=ROWS(Later[#All])");
    expect(sheets[2]?.cells[1]?.[1]?.formula).toBe("=[@Group]*2");
  });

  it("of the whole demo are taken, added to an empty workbook as one action and taken back", async () => {
    const empty: WorkbookContent = { sheets: [{ name: "Sheet1", cells: [] }] };
    const { double, workbook } = openExcel(empty);
    const demo = demoWorkbook();
    await workbook.apply(
      "Add the demo",
      demo.sheets.map((sheet) => ({ kind: "sheet", sheet })),
    );
    const formulas = ({ sheets }: WorkbookContent) =>
      summary({ sheets }).map(({ sheet, tables, cells }) => ({
        sheet,
        tables,
        formulas: Object.entries(cells).filter(([, says]) => String(says).startsWith("=")),
      }));
    expect(formulas(double.content()).slice(1)).toEqual(formulas(demo));
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(empty));
  }, 60_000);

  it("that Excel does not take are refused in words, and nothing is left behind", async () => {
    const { double, workbook } = openExcel(chart());
    for (const formula of ["=SUM((1)", "=FIT.SCORE(Dolls[#All])", "=FIT.SCORE(Figures[Hip])"]) {
      await expect(
        workbook.apply("Results", [
          { kind: "cells", at: { sheet: "Figures", row: 1, column: 1 }, cells: [[v(1)]] },
          { kind: "sheet", sheet: { name: "First", cells: [[{ formula }]] } },
        ]),
      ).rejects.toThrow(/Excel does not take a formula/);
      expect(summary(double.content())).toEqual(summary(chart()));
    }
  });

  it("whose results have no room show #SPILL! and disturb nothing", async () => {
    const { double, workbook } = openExcel(chart());
    double.book.habits.results = (formula) =>
      formula.includes("FIT.GROUPS") ? [["Figure"], ["Ada"], ["Bela"]] : undefined;
    const groups: Edit = {
      kind: "sheet",
      sheet: { name: "Groups", cells: [[{ formula: "=FIT.GROUPS(Figures[#All])" }], [], [v("mine")]] },
    };
    await workbook.apply("Groups", [groups]);
    const read = await workbook.readArea({ sheet: "Groups", row: 0, column: 0, rows: 3, columns: 1 });
    expect(read.values).toEqual([[{ error: "#SPILL!" }], [undefined], ["mine"]]);
    expect(await workbook.undo()).toBe("Groups");
    expect(summary(double.content())).toEqual(summary(chart()));
  });
});

describe("lists to choose from", () => {
  it("come with a new sheet, from words and from the column of a table that the same action adds later", async () => {
    const { double, workbook } = openExcel(chart());
    await workbook.apply("New chart", [
      {
        kind: "sheet",
        sheet: {
          name: "Start",
          cells: [[v("Unit"), v("mm")]],
          pickLists: [
            { row: 0, column: 1, rows: 1, columns: 1, from: ["mm", "cm", "in"] },
            { row: 1, column: 1, rows: 1, columns: 2, from: { table: "Later", heading: "name" } },
            { row: 2, column: 1, rows: 1, columns: 1, from: { table: "Nowhere", heading: "Name" } },
          ],
        },
      },
      {
        kind: "sheet",
        sheet: {
          name: "Second",
          cells: [[v("Name")], [v("Ada")], [v("Bela")]],
          tables: [{ name: "Later", row: 0, column: 0, rows: 3, columns: 1 }],
        },
      },
    ]);
    const lists = double.book.sheets[1]?.lists.map(({ source, refusesOthers }) => [source, refusesOthers]);
    expect(lists).toEqual([
      ["mm,cm,in", false],
      ["Second!A2:A3", false],
    ]);
    await workbook.undo();
    expect(summary(double.content())).toEqual(summary(chart()));
  });
});
