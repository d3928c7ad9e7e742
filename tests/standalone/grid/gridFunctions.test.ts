import { InsertRowCommand, SetRangeValuesCommand } from "@univerjs/sheets";
import { afterEach, describe, expect, it } from "vitest";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Area } from "../../../addin/workbook/port.ts";
import { descriptors } from "../../../functions/all.ts";
import { range } from "../../../functions/arguments.ts";
import { defineFunction } from "../../../functions/descriptor.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

/** Gives back what it was given, in words, to see what a host’s values look like to functions. */
const echo = defineFunction({
  name: "ECHO",
  summary: "Says what each cell holds.",
  parameters: { cells: range("Any cells.", (cells) => cells) },
  result: "table",
  examples: [],
  failures: [],
  compute: ({ cells }) =>
    cells.map((row) => row.map((cell) => (cell === undefined ? "blank" : JSON.stringify(cell)))),
});

const broken = defineFunction({
  name: "BROKEN",
  summary: "Fails in a way that is not the user’s fault.",
  parameters: {},
  result: "number",
  examples: [],
  failures: [],
  compute: () => {
    throw new RangeError("out of bounds");
  },
});

const v = (value: CellContent["value"]): CellContent => ({ value });
const f = (formula: string): CellContent => ({ formula });

const figures: WorkbookContent["sheets"][number] = {
  name: "Figures",
  cells: [
    [v("Chart")],
    [v("Figure"), v("Bust"), v("Waist")],
    [v("Ada"), v(200), v(140)],
    [v("Bela"), v(201), v(140.5)],
    [v("Caro"), v(300), undefined],
  ],
  tables: [{ name: "Figures", row: 1, column: 0, rows: 4, columns: 3 }],
};

const area = (sheet: string, row: number, column: number, rows = 1, columns = 1): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

describe("worksheet functions in the grid", () => {
  let grid: HeadlessGrid | undefined;
  const open = async (cells: (CellContent | undefined)[][]): Promise<HeadlessGrid> => {
    grid = openHeadless({ sheets: [figures, { name: "Out", cells }] }, [...descriptors, echo, broken]);
    await grid.calculated();
    return grid;
  };
  const read = async (from: Area) => (await grid!.workbook.readArea(from)).values;
  const type = async (sheet: string, row: number, column: number, cell: object): Promise<void> => {
    const { unit, command, calculated } = grid!;
    const done = calculated();
    await command(SetRangeValuesCommand.id, {
      unitId: unit.unitId,
      subUnitId: sheetOf(unit, sheet).getSheetId(),
      range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
      value: cell,
    });
    await done;
  };

  afterEach(() => {
    grid?.close();
  });

  it("tell blank cells from 0, and errors, truth values and text from one another", async () => {
    await open([[v(0), undefined, v("0"), v(true), v(" "), f("=1/0")], [], [f("=FIT.ECHO(A1:F1)")]]);
    expect(await read(area("Out", 2, 0, 1, 6))).toEqual([
      ["0", "blank", '"0"', "true", '" "', '{"error":"#DIV/0!"}'],
    ]);
  });

  it("spill a table for a structured reference, and follow the table as it grows", async () => {
    const { workbook, calculated } = await open([[f("=FIT.ECHO(Figures[#All])")]]);
    expect(await read(area("Out", 0, 0, 5, 3))).toEqual([
      ['"Figure"', '"Bust"', '"Waist"'],
      ['"Ada"', "200", "140"],
      ['"Bela"', "201", "140.5"],
      ['"Caro"', "300", "blank"],
      [undefined, undefined, undefined],
    ]);
    const done = calculated();
    await workbook.apply("Add", [{ kind: "rows", table: "Figures", rows: [["Dora", 180, 120]] }]);
    await done;
    expect(await read(area("Out", 4, 0, 1, 3))).toEqual([['"Dora"', "180", "120"]]);
  });

  it("know a column by the heading that a new column was given", async () => {
    const { workbook, calculated } = await open([[f("=FIT.ECHO(Figures[Waist])")]]);
    const done = calculated();
    await workbook.apply("Add", [
      { kind: "column", table: "Figures", heading: "Hip", values: [210, 211, 310] },
      {
        kind: "cells",
        at: { sheet: "Out", row: 0, column: 0 },
        cells: [[f("=FIT.ECHO(Figures[Hip])")]],
      },
    ]);
    await done;
    expect(await read(area("Out", 0, 0, 3, 1))).toEqual([["210"], ["211"], ["310"]]);
  });

  it("give the same in a cell as computed directly", async () => {
    await open([[f("=FIT.GROUPS(Figures[#All])")]]);
    const chart = figures.cells.slice(1).map((row) => Array.from({ length: 3 }, (_, i) => row[i]?.value));
    const direct = descriptors.find(({ name }) => name === "GROUPS")?.compute([chart]);
    const shown = await read(area("Out", 0, 0, 4, 5));
    expect(shown.map((row) => row.map((cell) => cell ?? ""))).toEqual(direct);
  });

  it("take an argument that is left out between two others as not given", async () => {
    await open([
      [f('=FIT.GROUPS(Figures[#All], , "torso")')],
      [],
      [],
      [],
      [],
      [f("=FIT.GROUPS(Figures[#All])")],
    ]);
    const skipped = await read(area("Out", 0, 0, 4, 5));
    expect(skipped[1]?.[0]).toBe("Ada");
    expect(skipped).toEqual(await read(area("Out", 5, 0, 4, 5)));
  });

  it("take “this row” of a table", async () => {
    const { workbook, calculated } = await open([]);
    const done = calculated();
    await workbook.apply("Add", [
      {
        kind: "cells",
        at: { sheet: "Figures", row: 2, column: 4 },
        cells: [[f("=Figures[@Bust]-Figures[@Waist]")]],
      },
    ]);
    await done;
    expect(await read(area("Figures", 2, 4))).toEqual([[60]]);
  });

  it("take “this row” as a user types it", async () => {
    await open([]);
    await type("Figures", 2, 2, { f: "=[@Bust]*2", v: null });
    expect(await read(area("Figures", 2, 2))).toEqual([[400]]);
  });

  it("say what is wrong also after rows were put in above", async () => {
    const { workbook, unit, command, calculated } = await open([[], [f('=FIT.OVER("wide",1)')]]);
    const done = calculated();
    await command(InsertRowCommand.id, {
      unitId: unit.unitId,
      subUnitId: sheetOf(unit, "Out").getSheetId(),
      direction: 0,
      range: { startRow: 0, endRow: 1, startColumn: 0, endColumn: 10 },
    });
    await done;
    expect(workbook.errorAt({ sheet: "Out", row: 3, column: 0 })).toContain("wide");
    expect(workbook.errorAt({ sheet: "Out", row: 1, column: 0 })).toBeUndefined();
  });

  it("say what is wrong, and no more once it is right", async () => {
    const { workbook } = await open([[v("wide"), f("=FIT.OVER(A1,1)")]]);
    const at = { sheet: "Out", row: 0, column: 1 };
    expect(await read(area("Out", 0, 1))).toEqual([[{ error: "#VALUE!" }]]);
    expect(workbook.errorAt(at)).toContain("wide");
    await type("Out", 0, 0, { v: 100, t: 2 });
    expect((await read(area("Out", 0, 1)))[0]?.[0]).toBeCloseTo(106.283, 3);
    expect(workbook.errorAt(at)).toBeUndefined();
  });

  it("say which figure is not in the chart, as #N/A", async () => {
    const { workbook } = await open([[f('=FIT.NEAREST(Figures[#All],"Zora")')]]);
    expect(await read(area("Out", 0, 0))).toEqual([[{ error: "#N/A" }]]);
    expect(workbook.errorAt({ sheet: "Out", row: 0, column: 0 })).toContain("Zora");
  });

  it("name the argument that is missing, or say that there are too many", async () => {
    const { workbook } = await open([[f("=FIT.OVER(100)"), f("=FIT.OVER(100,1,1,1,1)")]]);
    expect(workbook.errorAt({ sheet: "Out", row: 0, column: 0 })).toContain("thickness");
    expect(workbook.errorAt({ sheet: "Out", row: 0, column: 1 })).toContain("at most 3");
  });

  it("go on calculating after a function that fails through a fault of ours", async () => {
    const { workbook } = await open([[f("=FIT.BROKEN()"), f("=1+1")]]);
    expect(await read(area("Out", 0, 0, 1, 2))).toEqual([[{ error: "#VALUE!" }, 2]]);
    expect(workbook.errorAt({ sheet: "Out", row: 0, column: 0 })).toContain("out of bounds");
    await type("Out", 1, 0, { f: "=B1+5" });
    expect(await read(area("Out", 1, 0))).toEqual([[7]]);
  });

  it("forget a message when something else is typed into the cell", async () => {
    const { workbook } = await open([[f('=FIT.OVER("wide",1)')]]);
    await type("Out", 0, 0, { f: '=VALUE("x")', v: null });
    expect(await read(area("Out", 0, 0))).toEqual([[{ error: "#VALUE!" }]]);
    expect(workbook.errorAt({ sheet: "Out", row: 0, column: 0 })).toBeUndefined();
  });

  it("tell subscribers of results that change, and not of those that stay", async () => {
    const { workbook } = await open([[f("=Figures!B3*2"), f("=MAX(Figures!B3,1)*0")]]);
    const heard = new Set<string>();
    const told = () =>
      new Promise<void>((resolve) => {
        const leave = workbook.subscribe(({ sheet }) => {
          heard.add(sheet);
          setTimeout(() => {
            leave();
            resolve();
          });
        });
      });
    const first = told();
    await type("Figures", 2, 1, { v: 210, t: 2 });
    await first;
    expect(heard).toEqual(new Set(["Figures", "Out"]));
  });
});
