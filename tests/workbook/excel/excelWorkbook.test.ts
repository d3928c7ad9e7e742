import { afterEach, describe, expect, it, vi } from "vitest";
import { InputError } from "../../../addin/measures/inputError.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Edit, FoundCell, WorkbookChange } from "../../../addin/workbook/port.ts";
import { peek } from "../excelDouble/book.ts";
import { ExcelRefusal } from "../excelDouble/book.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

const start: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [v("Figure"), v("Bust"), v("Waist")],
        [v("Ada"), { value: 136.5, format: "0.0", style: "heading" }, v(98)],
        [v("Bela"), v("5/8 or so"), { value: 2, formula: "=1+1" }],
        [],
        [v("By tape")],
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 3 }],
      notes: [{ row: 1, column: 1, text: "Twice" }],
    },
  ],
};

const everything: readonly Edit[] = [
  { kind: "mark", cells: [{ sheet: "Figures", row: 4, column: 0 }], marked: true },
  {
    kind: "cells",
    at: { sheet: "Figures", row: 1, column: 1 },
    cells: [[{ value: "=140", style: "title" }, v(99)]],
  },
  { kind: "note", at: { sheet: "Figures", row: 1, column: 1 }, text: "Once more" },
  { kind: "rows", table: "figures", rows: [["Caro", "1/2", 80]] },
  { kind: "column", table: "Figures", heading: "Hip", values: [150, 151, undefined] },
  { kind: "cells", at: { sheet: "figures", row: 5, column: 1 }, cells: [[v("moved")]] },
  {
    kind: "sheet",
    sheet: {
      name: "Results",
      cells: [[v("Figure")], [{ formula: "=2*3" }], [{ value: 1, style: "marked" }]],
      frozenRows: 1,
      tables: [{ name: "Groups", row: 0, column: 0, rows: 2, columns: 1 }],
      notes: [{ row: 0, column: 0, text: "New" }],
    },
  },
  { kind: "rows", table: "Groups", rows: [["Ada"]] },
  { kind: "freeze", sheet: "Figures", rows: 1, columns: 1 },
];

afterEach(() => {
  vi.unstubAllGlobals();
});

/** Fonts, formats and rules of every cell, which the summary leaves out. */
function looks({ book }: ReturnType<typeof openExcel>["double"]) {
  const seen = book.sheets.map((sheet) =>
    [0, 1, 2, 3, 4].map((row) =>
      [0, 1, 2].map((column) => {
        const { font, format, wrapText, conditional } = peek(sheet, row, column);
        return { font, format, wrapText, conditional };
      }),
    ),
  );
  return structuredClone(seen);
}

describe("an action that Excel breaks off", () => {
  it("is taken back, wherever it broke off", async () => {
    // Without one undo step for one action: with it, the action is tried once more.
    const whole = openExcel(start, 19);
    await whole.workbook.apply("All", everything);
    const operations = whole.double.host.syncs.reduce((sum, sync) => sum + sync.operations, 0);
    expect(operations).toBeGreaterThan(100);

    for (let broken = 0; broken < operations; broken++) {
      const { double, workbook } = openExcel(start, 19);
      const lookedLike = looks(double);
      let count = 0;
      double.host.beforeOperation = () => {
        if (count++ === broken) throw new ExcelRefusal("GeneralException", "There was an internal error.");
      };
      await expect(workbook.apply("All", everything)).rejects.toThrow(InputError);
      expect(summary(double.content()), `broken at operation ${String(broken)}`).toEqual(summary(start));
      expect(looks(double)).toEqual(lookedLike);
      expect(workbook.lastAction()).toBeUndefined();
    }
  }, 60_000);

  it("says so when it cannot be taken back", async () => {
    const { double, workbook } = openExcel(start);
    const sheet = double.book.sheets[0]!;
    double.host.beforeOperation = (label) => {
      if (label.startsWith("insert") || label.startsWith("add column")) sheet.protected = true;
    };
    await expect(workbook.apply("All", everything)).rejects.toThrow(/protected.*Excel’s own Undo/);
  });
});

describe("what Excel refuses is said in words", () => {
  const write: Edit = { kind: "cells", at: { sheet: "Figures", row: 1, column: 1 }, cells: [[v(1)]] };

  it("a protected sheet", async () => {
    const { double, workbook } = openExcel(start);
    double.book.sheets[0]!.protected = true;
    await expect(workbook.apply("Write", [write])).rejects.toThrow(/The sheet “Figures” is protected/);
  });

  it("a cell that is being edited", async () => {
    const { double, workbook } = openExcel(start);
    double.host.editing = true;
    await expect(workbook.apply("Write", [write])).rejects.toThrow(/Press Enter/);
    await expect(workbook.readTable("Figures")).rejects.toThrow(/Press Enter/);
    double.host.editing = false;
    await workbook.apply("Write", [write]);
    expect((await workbook.readTable("Figures")).values[1]?.[1]).toBe(1);
  });

  it("anything else, in Excel’s own words", async () => {
    const { double, workbook } = openExcel(start);
    double.host.beforeOperation = (label) => {
      if (label.startsWith("set formulas")) throw new ExcelRefusal("Unheard", "Something odd.");
    };
    await expect(workbook.apply("Write", [write])).rejects.toThrow(/Excel could not do it.*“Something odd.”/);
  });
});

describe("a new sheet", () => {
  it("is laid out for paper: across, headings repeated, pages numbered", async () => {
    const { workbook, double } = openExcel(start);
    const wide = Array.from({ length: 40 }, (_, at) => v(at));
    await workbook.apply("Two sheets", [
      {
        kind: "sheet",
        sheet: { name: "Narrow", paper: "Letter", cells: [[v("Title")], [v("Figure")]], frozenRows: 2 },
      },
      {
        kind: "sheet",
        sheet: { name: "Wide", cells: [wide], frozenRows: 1, frozenColumns: 2 },
      },
    ]);
    const [narrow, far] = double.book.sheets.slice(-2);
    // The codes of Microsoft’s “Header and footer codes”: &A sheet, &P page, &N pages.
    expect(narrow?.printed).toEqual({
      ...{ orientation: "Landscape", paperSize: "Letter", zoom: { horizontalFitToPages: 1 } },
      ...{ titleRows: "$1:$2", titleColumns: undefined, leftFooter: "&A", rightFooter: "&P / &N" },
    });
    expect(far?.printed).toMatchObject({
      ...{
        paperSize: undefined,
        zoom: { horizontalFitToPages: 2 },
        titleRows: "$1:$1",
        titleColumns: "$A:$B",
      },
    });
    await workbook.undo();
    expect(double.book.sheets).toHaveLength(1);
  });
});

describe("requests", () => {
  it("stay below 5 MB for large sheets, which are then read in parts", async () => {
    const { double, workbook } = openExcel(start);
    const row = Array.from({ length: 10 }, (_, j) => v("A long note of the workroom. ".repeat(10 + j)));
    const cells = Array.from({ length: 2000 }, () => row);
    await workbook.apply("Add", [{ kind: "sheet", sheet: { name: "Large", cells } }]);
    const sizes = double.host.syncs.map(({ bytes }) => bytes);
    expect(sizes.reduce((a, b) => a + b)).toBeGreaterThan(5 * 1024 * 1024);
    const read = await workbook.readArea({ sheet: "Large", row: 0, column: 0, rows: 2000, columns: 10 });
    expect(read.values).toHaveLength(2000);
    expect(read.values[1999]).toEqual(row.map((cell) => cell.value));
    expect(read.formats).toHaveLength(2000);
    expect(await workbook.undo()).toBe("Add");
    expect(await workbook.sheets()).toEqual(["Figures"]);
  }, 60_000);

  it("are few, and not more for many edits than for one", async () => {
    const count = async (cells: number) => {
      const { double, workbook } = openExcel(start);
      const edits = Array.from({ length: cells }, (_, i) => ({
        kind: "cells" as const,
        at: { sheet: "Figures", row: 10 + i, column: 0 },
        cells: [[v(i)]],
      }));
      await workbook.apply("Write", edits);
      return double.host.syncs.length;
    };
    const one = await count(1);
    expect(one).toBeLessThanOrEqual(12);
    expect(await count(200)).toBe(one);
  }, 60_000);

  it("of one action are one step in Excel’s own undo list, where Excel offers that", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("All", everything);
    expect(double.runs).toEqual([{ mergeUndoGroup: true }]);
  });
});

describe("what belongs to the user", () => {
  it("conditional formats stay when a mark of ours comes and goes", async () => {
    const { double, workbook } = openExcel(start);
    const cell = double.book.sheets[0]!.cells.get("1,1")!;
    cell.conditional = [
      { id: "7", type: "Custom", formula: "=RC>100", fill: "#FF0000" },
      { id: "8", type: "CellValue", formula: "100" },
    ];
    const before = structuredClone(cell.conditional);
    const at = [{ sheet: "Figures", row: 1, column: 1 }];
    await workbook.apply("Mark", [{ kind: "mark", cells: at, marked: true }]);
    await workbook.apply("Mark", [{ kind: "mark", cells: at, marked: true }]);
    expect(cell.conditional).toHaveLength(3);
    await workbook.apply("Unmark", [{ kind: "mark", cells: at, marked: false }]);
    expect(cell.conditional).toEqual(before);
  });

  it("text kept as text by an apostrophe comes back as text", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.typeInto({ sheet: "Figures", row: 1, column: 1 }, "'=2+2");
    await workbook.apply("Write", [
      { kind: "cells", at: { sheet: "Figures", row: 1, column: 1 }, cells: [[v(5)]] },
    ]);
    await workbook.undo();
    expect(peek(double.book.sheets[0]!, 1, 1)).toMatchObject({
      value: "=2+2",
      type: "String",
      format: "0.0",
    });
  });

  it("a row of totals is not read as a figure, and new rows go above it", async () => {
    const { double, workbook } = openExcel({
      sheets: [
        {
          name: "Figures",
          cells: [
            [v("Figure"), v("Bust")],
            [v("Ada"), v(1)],
            [v("Total"), v(1)],
          ],
          tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 2 }],
        },
      ],
    });
    double.book.tables[0]!.showTotals = true;
    expect((await workbook.readTable("Figures")).values).toEqual([
      ["Figure", "Bust"],
      ["Ada", 1],
    ]);
    await workbook.apply("Add", [{ kind: "rows", table: "Figures", rows: [["Bela", 2]] }]);
    expect((await workbook.readTable("Figures")).values.at(-1)).toEqual(["Bela", 2]);
    expect(peek(double.book.sheets[0]!, 3, 0).value).toBe("Total");
    await workbook.undo();
    expect(peek(double.book.sheets[0]!, 2, 0).value).toBe("Total");
  });

  it("what was typed on a sheet of ours is not thrown away by undo", async () => {
    const { workbook } = openExcel(start);
    await workbook.apply("Add", [{ kind: "sheet", sheet: { name: "Results", cells: [[v("A")]] } }]);
    await workbook.typeInto({ sheet: "Results", row: 8, column: 3 }, "my own note");
    await expect(workbook.undo()).rejects.toThrow(/changed since/);
    expect(await workbook.sheets()).toContain("Results");
  });

  it("rows that were sorted since are not taken for those that were added", async () => {
    const { workbook } = openExcel(start);
    await workbook.apply("Add", [{ kind: "rows", table: "Figures", rows: [["Aaron", 1, 2]] }]);
    const cells = [
      ["Aaron", 1],
      ["Bela", 2],
      ["Ada", 3],
    ];
    for (const [i, [name]] of cells.entries()) {
      await workbook.typeInto({ sheet: "Figures", row: 1 + i, column: 0 }, String(name));
    }
    await expect(workbook.undo()).rejects.toThrow(/changed since/);
    expect((await workbook.readTable("Figures")).values).toHaveLength(4);
  });

  it("results that array formulas fill anew do not stand in the way of undo", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Groups", [
      {
        kind: "sheet",
        sheet: {
          name: "Results",
          cells: [
            [v("Groups")],
            [
              { formula: "=FIT.GROUPS(Figures[#All])", value: "Figure" },
              { value: "Ada", spilled: true },
            ],
          ],
        },
      },
    ]);
    double.type({ sheet: "Results", row: 1, column: 1 }, "Bela");
    double.type({ sheet: "Results", row: 2, column: 0 }, "2");
    expect(await workbook.undo()).toBe("Groups");
    expect(await workbook.sheets()).toEqual(["Figures"]);
  });
});

describe("finding cells", () => {
  const holdsAda = ({ holds }: FoundCell) => String(holds).includes("Ada");

  it("leaves out what the formula of another cell fills, and says what stands on a protected sheet", async () => {
    const { double, workbook } = openExcel(start);
    double.book.habits.results = (formula) => (formula.startsWith("=FIT.") ? [["Ada"], ["Ada"]] : undefined);
    await workbook.apply("Groups", [
      { kind: "sheet", sheet: { name: "Results", cells: [[v("Ada")], [{ formula: "=FIT.ADAS()" }]] } },
    ]);
    expect(await workbook.findCells(({ holds }) => /ada/i.test(String(holds)))).toEqual([
      expect.objectContaining({ at: { sheet: "Figures", row: 1, column: 0 }, holds: "Ada" }),
      { at: { sheet: "Results", row: 0, column: 0 }, holds: "Ada", isFormula: false },
      { at: { sheet: "Results", row: 1, column: 0 }, holds: "=FIT.ADAS()", isFormula: true },
    ]);
    double.book.sheets[0]!.protected = true;
    const [first, ...others] = await workbook.findCells(holdsAda);
    expect(first?.closed).toBe("the sheet “Figures” is protected");
    expect(others.map(({ closed }) => closed)).toEqual([undefined]);
  });

  it("reads a large sheet in answers that Excel on the web does not refuse", async () => {
    const rows = Array.from({ length: 30_000 }, (_, i) => [
      v(`Reading ${String(i)} of Ada`),
      v(i),
      v(i + 0.5),
    ]);
    const { workbook } = openExcel({ sheets: [{ name: "Figures", cells: [...rows, [v("Ada")]] }] });
    expect(await workbook.findCells(({ holds }) => holds === "Ada")).toEqual([
      { at: { sheet: "Figures", row: 30_000, column: 0 }, holds: "Ada", isFormula: false },
    ]);
  });
});

describe("handlers", () => {
  it("tell of one typed cell, unless somebody else typed it elsewhere", async () => {
    const { double, workbook } = openExcel(start);
    const heard: WorkbookChange[] = [];
    workbook.subscribe((change) => heard.push(change));
    await vi.waitFor(() => {
      expect(double.events.changed.size).toBe(1);
    });
    const details = {
      valueBefore: "Ada",
      valueTypeBefore: "String",
      valueAfter: "Adele",
      valueTypeAfter: "String",
    } as const;
    const worksheetId = double.book.sheets[0]!.id;
    for (const source of ["Remote", "Local"] as const)
      for (const hear of double.events.changed)
        hear({ worksheetId, source, triggerSource: "Unknown", address: "A2", details });
    await vi.waitFor(() => {
      expect(heard).toEqual([
        { sheet: "Figures", typed: [{ row: 1, column: 0, before: "Ada", after: "Adele" }] },
      ]);
    });
  });

  it("are registered with Excel only while somebody listens", async () => {
    const { double, workbook } = openExcel(start);
    expect(double.events.changed.size).toBe(0);
    const leave = [workbook.subscribe(() => undefined), workbook.subscribe(() => undefined)];
    await vi.waitFor(() => {
      expect(double.events.changed.size).toBe(1);
    });
    for (const each of leave) each();
    await vi.waitFor(() => {
      expect(double.events.changed.size + double.events.sorted.size + double.events.calculated.size).toBe(0);
    });
  });

  it("tell once of many changes that come together", async () => {
    const { double, workbook } = openExcel(start);
    const heard: string[] = [];
    workbook.subscribe(({ sheet }) => heard.push(sheet));
    await vi.waitFor(() => {
      expect(double.events.changed.size).toBe(1);
    });
    for (let i = 0; i < 20; i++) double.type({ sheet: "Figures", row: 20 + i, column: 0 }, "1");
    await vi.waitFor(() => {
      expect(heard).toEqual(["Figures"]);
    });
  });
});
