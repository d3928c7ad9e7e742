import { describe, expect, it } from "vitest";
import type { Cell } from "../../../addin/chart/cell.ts";
import type { TableInfo, WorkbookChange } from "../../../addin/workbook/port.ts";
import type { Rename } from "../../../taskpane/rename/renames.ts";
import { namesColumns, renamesAfter } from "../../../taskpane/rename/renames.ts";

const table = (name: string, headings: readonly string[], row = 1): TableInfo => ({
  name,
  headings,
  area: { sheet: name, row, column: 0, rows: 4, columns: headings.length },
});
const tables = [
  table("Figures", ["Figure", "Bust (mm)", "Maker"]),
  table("SecondReadings", ["Figure", "Bust (mm)"]),
  table("Patterns", ["Title", "Pattern", "Garment class", "Drafted for", "Worn over"]),
  table("Tolerances", ["Measure", "Tolerance"]),
];
const columns = namesColumns(tables);

const typed = (sheet: string, row: number, column: number, before: Cell, after: Cell): WorkbookChange => ({
  sheet,
  typed: [{ row, column, before, after }],
});
const after = (
  changes: readonly WorkbookChange[],
  figures: readonly string[],
  waiting: readonly Rename[] = [],
) => renamesAfter(waiting, changes, columns, [figures, ["D-1", "U-1", "C-1"]]);

const names = ["Arda", "Bela", "Caro"];
const toArda = typed("Figures", 2, 0, "Ada", "Arda");

describe("another name", () => {
  it("is looked for in the first column of charts and under Pattern, not in second readings", () => {
    expect(columns.map(({ what, area }) => [what, area])).toEqual([
      ["figure", { sheet: "Figures", row: 2, column: 0, rows: 3, columns: 1 }],
      ["pattern", { sheet: "Patterns", row: 2, column: 1, rows: 3, columns: 1 }],
    ]);
  });

  it("typed over a figure’s or a pattern’s is a rename", () => {
    expect(after([toArda], names)).toEqual([{ what: "figure", table: "Figures", from: ["Ada"], to: "Arda" }]);
    expect(after([typed("patterns", 2, 1, "D1", "D-1")], names)).toEqual([
      { what: "pattern", table: "Patterns", from: ["D1"], to: "D-1" },
    ]);
  });

  it("may be a size", () => {
    expect(after([typed("Figures", 2, 0, 36, "36 long")], ["36 long", "38", "40"])).toEqual([
      { what: "figure", table: "Figures", from: ["36"], to: "36 long" },
    ]);
  });

  it.each<[string, readonly WorkbookChange[], readonly string[]]>([
    ["a reading", [typed("Figures", 2, 1, "100", "110")], names],
    ["the heading", [typed("Figures", 1, 0, "Figure", "Name")], names],
    ["a cell below the table", [typed("Figures", 5, 0, "Note", "Other note")], names],
    ["another sheet", [typed("Fit", 2, 0, "Ada", "Arda")], names],
    ["a name where there was none", [typed("Figures", 2, 0, undefined, "Arda")], names],
    ["an emptied name", [typed("Figures", 2, 0, "Ada", undefined)], ["", "Bela", "Caro"]],
    [
      "other case or spacing, which formulas find all the same",
      [typed("Figures", 2, 0, "arda ", "Arda")],
      names,
    ],
    ["a name that another figure has", [typed("Figures", 2, 0, "Ada", "Bela")], ["Bela", "Bela", "Caro"]],
    ["one of two rows of one name", [toArda], ["Arda", "Ada", "Caro"]],
    ["cells that changed together, as by sorting or pasting", [{ sheet: "Figures" }], names],
  ])("is not %s", (_, changes, now) => {
    expect(after(changes, now)).toEqual([]);
  });

  it("typed back is none, at once or later", () => {
    const back = typed("Figures", 2, 0, "Arda", "Ada");
    expect(after([toArda, back], ["Ada", "Bela", "Caro"])).toEqual([]);
    expect(after([back], ["Ada", "Bela", "Caro"], after([toArda], names))).toEqual([]);
  });

  it("after another, before anything followed, goes on from the first", () => {
    const further = typed("Figures", 2, 0, "Arda", "Ardis");
    const both = after([further], ["Ardis", "Bela", "Caro"], after([toArda], names));
    expect(both).toEqual([{ what: "figure", table: "Figures", from: ["Ada", "Arda"], to: "Ardis" }]);
    const between = after([typed("Figures", 2, 0, "Ardis", "Arda")], names, both);
    expect(between).toEqual([{ what: "figure", table: "Figures", from: ["Ada", "Ardis"], to: "Arda" }]);
  });

  it("of another row waits beside it", () => {
    const other = typed("Figures", 4, 0, "Karo", "Caro");
    expect(after([other], names, after([toArda], names)).map(({ from, to }) => [from, to])).toEqual([
      [["Ada"], "Arda"],
      [["Karo"], "Caro"],
    ]);
  });

  it("is gone when its row is deleted, or the old name comes back in another row", () => {
    const waiting = after([toArda], names);
    expect(after([], ["Bela", "Caro"], waiting)).toEqual([]);
    expect(after([], ["Arda", "Bela", "Caro", "Ada"], waiting)).toEqual([]);
    expect(after([], ["Caro", "Arda", "Bela"], waiting)).toEqual(waiting);
  });
});
