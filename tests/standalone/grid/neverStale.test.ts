import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Cell } from "../../../addin/chart/cell.ts";
import { cellText } from "../../../addin/chart/cell.ts";
import { areaName, cellName } from "../../../addin/workbook/address.ts";
import { tablesOf } from "../../../addin/standalone/grid/gridSheets.ts";
import type { TableHint } from "../../../addin/standalone/grid/gridWorkbook.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { descriptors } from "../../../functions/all.ts";
import type { GridHands } from "./hands.ts";
import { handsOn } from "./hands.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

const readings = (i: number): number[] => [180 + (i % 5), 130 + (i % 4), 190 + (i % 6)];
const names = ["Ardwen", "Belsory", "Cindre", "Dovelle", "Elmory", "Fenwick", "Gisla", "Harrow", "Ivette"];

/** A chart, tolerances, and a sheet of formulas that read them in every way. */
const book: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [{ value: "My figures" }],
        ["Figure", "Bust", "Waist", "Hip", "Half"].map((value) => ({ value })),
        ...names.map((name, i) => [
          { value: name },
          ...readings(i).map((value) => ({ value })),
          { formula: "=[@Bust]/2" },
        ]),
      ],
      tables: [{ name: "Figures", row: 1, column: 0, rows: names.length + 1, columns: 5 }],
    },
    {
      name: "Limits",
      cells: [
        ["Measure", "Tolerance"],
        ["Bust", 3],
        ["Waist", 2],
        ["Hip", 3],
      ].map((row) => row.map((value) => ({ value }))),
      tables: [{ name: "Tolerances", row: 0, column: 0, rows: 4, columns: 2 }],
    },
    {
      name: "Fit",
      cells: [
        [{ formula: "=FIT.GROUPS(Figures[#All], Tolerances[#All])" }],
        ...Array.from({ length: 29 }, () => []),
        [
          { formula: "=ROWS(Figures[Figure])" },
          { formula: "=SUM(Figures[Bust])" },
          { formula: "=SUBTOTAL(109,Figures[Waist])" },
          { formula: "=SUM(Figures!B3:B11)" },
          { formula: "=Figures!C4*2" },
          { formula: "=D31+E31" },
          { formula: '=FIT.APART(Figures[#All],"Ardwen","Dovelle",Tolerances[#All])' },
          { formula: "=FIT.DELTA(Figures!B3,Figures!B5)" },
          { formula: "=A2" },
          { formula: "=COUNTA(A1:E25)" },
          { formula: "=SUM(Figures[Half])" },
        ],
      ],
    },
  ],
};

describe(
  "what formulas give after a change is what they give in the workbook opened anew",
  { timeout: 240_000 },
  () => {
    let grid: HeadlessGrid;
    let hands: GridHands;

    beforeEach(async () => {
      grid = openHeadless(book, descriptors);
      hands = handsOn(grid);
      await hands.settle();
    });
    afterEach(() => {
      grid.close();
    });

    it("takes a figure that is typed below the table into every answer, and lets it go again", async () => {
      expect(valueAt(grid, "Fit", 30, 0)).toBe(9);
      await hands.type("Figures", 11, 0, "Jorun");
      await hands.settle();
      await hands.type("Figures", 11, 1, 181);
      await hands.settle();
      expect(valueAt(grid, "Fit", 30, 0)).toBe(10);
      expect(valueAt(grid, "Fit", 10, 0)).toBe("Jorun");
      await hands.type("Figures", 4, 1, 182);
      await hands.settle();
      expect(valueAt(grid, "Fit", 30, 0)).toBe(10);
      expect(valueAt(grid, "Fit", 10, 0)).toBe("Jorun");
      await expectFresh(grid);
    });

    it("takes a column into the table whose heading is typed beside it, in one step with the heading", async () => {
      await hands.type("Figures", 4, 5, 52);
      await hands.settle();
      expect(tablesOf(grid.unit)[0]?.area.columns).toBe(5);
      await hands.type("Figures", 1, 5, "Neck");
      await hands.type("Fit", 32, 0, "=SUM(Figures[Neck])");
      await hands.settle();
      expect(tablesOf(grid.unit)[0]?.headings).toEqual(["Figure", "Bust", "Waist", "Hip", "Half", "Neck"]);
      expect(valueAt(grid, "Fit", 32, 0)).toBe(52);
      await expectFresh(grid);
      await hands.undo();
      await hands.undo();
      await hands.settle();
      expect(tablesOf(grid.unit)[0]?.headings).toEqual(["Figure", "Bust", "Waist", "Hip", "Half"]);
      await expectFresh(grid);
      await hands.redo();
      await hands.settle();
      expect(tablesOf(grid.unit)[0]?.headings).toContain("Neck");
      await expectFresh(grid);
    });

    it("leaves a column apart that something else fills, and numbers as headings", async () => {
      const hints = listen(grid);
      await hands.type("Figures", 5, 5, "=FIT.GROUPS(Figures[#All], Tolerances[#All])");
      await hands.settle();
      await hands.type("Figures", 1, 5, "Neck");
      await hands.settle();
      await hands.type("Limits", 0, 2, 7);
      await hands.settle();
      expect(tablesOf(grid.unit).map(({ area }) => area.columns)).toEqual([5, 2]);
      const [ofFigures, ofLimits] = hints.filter((hint) => hint.kind === "beside");
      await expect(ofFigures?.takeIn()).rejects.toThrow("Column F cannot join the table “Figures”");
      expect(await ofLimits?.takeIn()).toBe("7");
      expect(tablesOf(grid.unit)[1]?.headings).toEqual(["Measure", "Tolerance", "7"]);
      await hands.settle();
      await expectFresh(grid);
    });

    it("tells once of readings typed beside the table, and takes their column in, in one step", async () => {
      const hints = listen(grid);
      await hands.type("Figures", 3, 5, 52);
      await hands.settle();
      await hands.type("Figures", 4, 5, 53);
      await hands.type("Figures", 4, 7, 53);
      await hands.settle();
      expect(hints).toEqual([
        expect.objectContaining({ table: "Figures", at: { sheet: "Figures", row: 3, column: 5 } }),
      ]);
      const [beside] = hints;
      expect(beside?.kind === "beside" && (await beside.takeIn())).toBe("Column 1");
      await hands.type("Fit", 32, 0, "=SUM(Figures[Column 1])");
      await hands.settle();
      expect(valueAt(grid, "Fit", 32, 0)).toBe(105);
      await expectFresh(grid);
      await hands.undo();
      expect(grid.workbook.lastAction()).toBe("Take column F into Figures");
      await grid.workbook.undo();
      await hands.settle();
      expect(tablesOf(grid.unit)[0]?.headings).toEqual(["Figure", "Bust", "Waist", "Hip", "Half"]);
      expect(valueAt(grid, "Figures", 1, 5)).toBeUndefined();
      expect(valueAt(grid, "Figures", 3, 5)).toBe(52);
      await expectFresh(grid);
    });

    it("calls a column in formulas as its heading is called now, in one step with it", async () => {
      const before = valueAt(grid, "Fit", 30, 1);
      await hands.type("Figures", 1, 1, "Chest");
      await hands.settle();
      expect(formulaAt(grid, "Fit", 30, 1)).toBe("=SUM(Figures[Chest])");
      expect(formulaAt(grid, "Figures", 2, 4)).toBe("=Figures[[#This Row],[Chest]]/2");
      expect(valueAt(grid, "Fit", 30, 1)).toBe(before);
      await expectFresh(grid);
      await hands.undo();
      await hands.settle();
      expect(formulaAt(grid, "Fit", 30, 1)).toBe("=SUM(Figures[Bust])");
      expect(valueAt(grid, "Figures", 1, 1)).toBe("Bust");
      expect(valueAt(grid, "Fit", 30, 1)).toBe(before);
      await hands.redo();
      await hands.settle();
      expect(formulaAt(grid, "Fit", 30, 1)).toBe("=SUM(Figures[Chest])");
      await expectFresh(grid);
    });

    it.each([
      ["Waist", "two columns have that name"],
      ["", "it has none"],
      ["Bust [1]", "the grid cannot read it"],
    ])(
      "says which formulas lose a column that is called “%s” now, since %s, and takes that back",
      async (now) => {
        const hints = listen(grid);
        const before = valueAt(grid, "Fit", 30, 1);
        await hands.type("Figures", 1, 1, now);
        await hands.settle();
        expect(hints).toEqual([expect.objectContaining({ kind: "heading lost", heading: "Bust", now })]);
        const [lost] = hints;
        if (lost?.kind !== "heading lost") throw new Error("Nothing was said.");
        expect(lost.formulas).toContainEqual({ sheet: "Fit", row: 30, column: 1 });
        await lost.takeBack();
        await hands.settle();
        expect(tablesOf(grid.unit)[0]?.headings).toEqual(["Figure", "Bust", "Waist", "Hip", "Half"]);
        expect(formulaAt(grid, "Fit", 30, 1)).toBe("=SUM(Figures[Bust])");
        expect(valueAt(grid, "Fit", 30, 1)).toBe(before);
        await expectFresh(grid);
      },
    );

    // Every seed is one workbook that is worked on for a while; after some actions it is opened anew beside.
    it.each(Array.from({ length: 40 }, (_, i) => i + 1))(
      "after 50 random actions, series %i",
      async (seed) => {
        const random = seeded(seed);
        const done: string[] = [];
        for (let step = 1; step <= 50; step++) {
          done.push(await act(grid, hands, random));
          if (seed % 2 === 0) {
            if (random(2) === 0) await hands.settle();
            await hands.undo();
            if (random(2) === 0) await hands.settle();
            await hands.redo();
            done.push("undo and redo that");
          }
          // Some changes come while the one before is still calculated.
          if (random(3) > 0) await hands.settle();
          if (step % 10 > 0) continue;
          await hands.settle();
          await expectFresh(grid, done);
        }
      },
    );
  },
);

type Random = (below: number) => number;

/** Numerical Recipes’ linear congruential generator; whole numbers from 0 up to a limit. */
function seeded(seed: number): Random {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** One thing that a hand might do next. Gives it in words, for the message of a failure. */
async function act(grid: HeadlessGrid, hands: GridHands, random: Random): Promise<string> {
  const sheet = chartSheet(grid);
  const table = tablesOf(grid.unit).find(({ area }) => area.sheet === sheet);
  if (!table) {
    await hands.undo();
    return "undo what took the table away";
  }
  const { row, column, rows, columns } = table.area;
  const anyRow = row + 1 + random(rows - 1);
  const anyColumn = column + random(columns);
  const reading = 120 + random(90);
  const newName = `New${String(random(1000))}`;
  const line = (at: number) => ({
    startRow: at,
    endRow: at,
    startColumn: column,
    endColumn: column + columns - 1,
  });
  const actions: readonly (readonly [string, () => Promise<boolean>])[] = [
    [
      `type ${String(reading)} at ${String(anyRow)},${String(anyColumn)}`,
      () => hands.type(sheet, anyRow, anyColumn, reading),
    ],
    [`type over a name at ${String(anyRow)}`, () => hands.type(sheet, anyRow, column, newName)],
    ["type a figure below", () => hands.type(sheet, row + rows, column, newName)],
    [
      "paste two figures below",
      () =>
        hands.paste(sheet, row + rows, column, [
          [newName, reading, 140],
          [`${newName}b`, 185, 141],
        ]),
    ],
    ["type a heading beside", () => hands.type(sheet, row, column + columns, `Neck${String(random(100))}`)],
    [
      `type another heading at ${String(anyColumn)}`,
      () => hands.type(sheet, row, anyColumn, random(2) > 0 ? "Waist" : `Girth${String(random(9))}`),
    ],
    [
      "paste over",
      () =>
        hands.paste(sheet, anyRow, column + 1, [
          [reading, 135],
          [reading + 1, 136],
        ]),
    ],
    [
      "clear",
      () =>
        hands.clear(sheet, {
          startRow: anyRow,
          endRow: anyRow,
          startColumn: anyColumn,
          endColumn: anyColumn,
        }),
    ],
    [`insert rows at ${String(anyRow)}`, () => hands.insertRows(sheet, anyRow, 1 + random(2))],
    ["insert a row above the table", () => hands.insertRows(sheet, 0, 1)],
    [
      `remove row ${String(anyRow)}`,
      () => (rows > 4 ? hands.removeRows(sheet, anyRow, 1) : hands.type(sheet, anyRow, column, newName)),
    ],
    [`insert a column at ${String(anyColumn)}`, () => hands.insertColumns(sheet, anyColumn, 1)],
    [
      `remove column ${String(anyColumn)}`,
      () => (columns > 3 && anyColumn > column ? hands.removeColumns(sheet, anyColumn, 1) : hands.undo()),
    ],
    [
      "sort",
      () =>
        hands.reorder(
          sheet,
          { startRow: row + 1, endRow: row + rows - 1, startColumn: column, endColumn: column + columns - 1 },
          turned(row + 1, rows - 1, 1 + random(rows)),
        ),
    ],
    [
      "move a cell",
      () =>
        hands.move(sheet, { ...line(anyRow), startColumn: anyColumn, endColumn: anyColumn }, 0, columns + 2),
    ],
    [
      "fill a formula",
      () =>
        hands.paste(sheet, row + 1, column + columns + 3, [
          [`=B${String(anyRow + 1)}*2`],
          ["=SUM(Figures[Bust])"],
        ]),
    ],
    [
      "drag a formula down",
      () =>
        hands.fill(
          sheet,
          { ...line(row + 1), startColumn: column + columns - 1 },
          { ...line(row + 1), startColumn: column + columns - 1, endRow: row + Math.min(4, rows - 1) },
        ),
    ],
    [
      "drag a reading over two rows",
      () => {
        const from = { ...line(anyRow), startColumn: anyColumn, endColumn: anyColumn };
        return hands.fill(sheet, from, { ...from, endRow: Math.min(anyRow + 2, row + rows - 1) });
      },
    ],
    ["show some figures only", () => hands.filter(table.name, 0, [newName, "Belsory", "Cindre", "Dovelle"])],
    ["show all figures", () => hands.filter(table.name, 0, undefined)],
    [
      "rename the table",
      () => hands.renameTable(table.name, table.name === "Figures" ? "Bodies" : "Figures"),
    ],
    [`rename the sheet`, () => hands.rename(sheet, `Chart ${String(random(9))}`)],
    ["undo", hands.undo],
    ["undo", hands.undo],
    ["redo", hands.redo],
  ];
  const [words, action] = actions[random(actions.length)]!;
  await action().catch(() => false);
  return words;
}

function chartSheet(grid: HeadlessGrid): string {
  return tablesOf(grid.unit).find(({ name }) => name !== "Tolerances")?.area.sheet ?? "Figures";
}

/** The order that moves every row up by a few, the first ones to the end. */
function turned(first: number, count: number, by: number): Record<number, number> {
  return Object.fromEntries(Array.from({ length: count }, (_, i) => [first + i, first + ((i + by) % count)]));
}

function valueAt(grid: HeadlessGrid, sheet: string, row: number, column: number): Cell {
  return grid.workbook.content().sheets.find(({ name }) => name === sheet)?.cells[row]?.[column]?.value;
}

function formulaAt(grid: HeadlessGrid, sheet: string, row: number, column: number): string | undefined {
  return grid.workbook.content().sheets.find(({ name }) => name === sheet)?.cells[row]?.[column]?.formula;
}

function listen(grid: HeadlessGrid): TableHint[] {
  const hints: TableHint[] = [];
  grid.workbook.onTableHint((hint) => hints.push(hint));
  return hints;
}

/** Compares tables, formulas and what they give with the same workbook in a grid of its own. */
async function expectFresh(grid: HeadlessGrid, done: readonly string[] = []): Promise<void> {
  const fresh = openHeadless(grid.workbook.snapshot(), descriptors);
  await handsOn(fresh).settle();
  const anew = lines(fresh);
  fresh.close();
  expect(lines(grid), done.join("\n")).toEqual(anew);
}

function lines({ unit, workbook }: HeadlessGrid): string[] {
  const tables = tablesOf(unit).map(
    ({ name, area, headings }) => `${name}: ${area.sheet}!${areaName(area)} ${headings.join(", ")}`,
  );
  const answers = workbook.content().sheets.flatMap(({ name, cells }) =>
    cells.flatMap((row, r) =>
      row.flatMap((cell, c) => {
        if (!cell || (cell.formula === undefined && !cell.spilled)) return [];
        return [`${name}!${cellName(r, c)} ${cell.formula ?? "…"} gives ${cellText(cell.value)}`];
      }),
    ),
  );
  return [...tables, ...answers];
}
