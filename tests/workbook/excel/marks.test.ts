import { afterEach, describe, expect, it, vi } from "vitest";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Cell } from "../../../addin/chart/cell.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

const chart = (rows: readonly (readonly Cell[])[]): WorkbookContent => ({
  sheets: [
    {
      name: "Figures",
      cells: [[v("Figure"), v("Bust")], ...rows.map((row) => row.map(v))],
      tables: [{ name: "Figures", row: 0, column: 0, rows: rows.length + 1, columns: 2 }],
    },
  ],
});
const at = (row: number, column = 1) => ({ sheet: "Figures", row, column });
const mark = (row: number) => [{ kind: "mark" as const, cells: [at(row)], marked: true }];

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a mark in Excel, where conditional formats stay when rows are sorted", () => {
  it.each<[string, Cell]>([
    ["a number", 136.5],
    ["a number of many digits", 0.1 + 0.2],
    ["a large number", 123456789.12345678],
    ["a negative number", -0.5],
    ["a text", "n/a"],
    ["a text with quotes", 'about 5 3/8" or "so"'],
    ["a long text", `${"x".repeat(60)}😀${"y".repeat(300)}`],
    ["a blank cell", undefined],
    ["a truth value", false],
    ["an error", { error: "#N/A" }],
  ])("goes with %s, the pane open or not", async (_, reading) => {
    const { double, workbook } = openExcel(
      chart([
        ["Zoe", reading],
        ["Ada", 1],
        ["Bela", "other"],
      ]),
    );
    await workbook.apply("Mark", mark(1));
    expect(summary(double.content())[0]?.marks).toEqual({ B2: true });
    double.sort("Figures", 0);
    expect(double.content().sheets[0]?.cells[3]?.[0]?.value).toBe("Zoe");
    expect(summary(double.content())[0]?.marks).toEqual({ B4: true });
  });

  it("is gone once the reading is another, and not on another figure with the same reading", async () => {
    const { double, workbook } = openExcel(
      chart([
        ["Bela", 100],
        ["Ada", 100],
      ]),
    );
    await workbook.apply("Mark", mark(1));
    double.sort("Figures", 0);
    expect(summary(double.content())[0]?.marks).toEqual({ B3: true });
    await workbook.typeInto(at(2), "101");
    expect(summary(double.content())[0]?.marks).toEqual({});
  });

  it("keeps to its cell where two rows hold the same name and reading", async () => {
    const { double, workbook } = openExcel(
      chart([
        ["Ada", 100],
        ["Ada", 100],
        ["Bela", 5],
      ]),
    );
    await workbook.apply("Mark", mark(2));
    expect(summary(double.content())[0]?.marks).toEqual({ B3: true });
  });

  it("goes away with the reading that it was made for when that is corrected in the same action", async () => {
    const { double, workbook } = openExcel(
      chart([
        ["Ada", 1000],
        ["Bela", 5],
      ]),
    );
    await workbook.apply("Mark", mark(1));
    await workbook.apply("Correct", [
      { kind: "cells", at: at(1), cells: [[v(100)]] },
      { kind: "mark", cells: [at(1)], marked: false },
    ]);
    const left = () => [...double.book.sheets[0]!.cells.values()].flatMap(({ conditional }) => conditional);
    expect(left()).toEqual([]);
    await workbook.undo();
    expect(summary(double.content())[0]?.marks).toEqual({ B2: true });
    expect(new Set(left()).size).toBe(1);
  });

  it("is on what the same action writes, in new rows and new sheets too", async () => {
    const { double, workbook } = openExcel(chart([["Ada", 1]]));
    await workbook.apply("Import", [
      { kind: "rows", table: "Figures", rows: [["Bela", "5/8 or so"]] },
      { kind: "mark", cells: [at(2)], marked: true },
      {
        kind: "sheet",
        sheet: {
          name: "New",
          cells: [
            [v("Figure"), v("Bust")],
            [v("Ada"), { value: "?", style: "marked" }],
            [v("Bela"), v(2)],
          ],
          tables: [{ name: "New", row: 0, column: 0, rows: 3, columns: 2 }],
        },
      },
    ]);
    expect(summary(double.content()).map(({ marks }) => marks)).toEqual([{ B3: true }, { B2: true }]);
    double.sort("Figures", 1);
    expect(Object.keys(summary(double.content())[0]?.marks ?? {})).toHaveLength(1);
  });

  it("takes no more requests to Excel’s objects for many marks of a column than their number", async () => {
    const figures = Array.from({ length: 120 }, (_, i) => [`Figure ${String(i)}`, i / 4]);
    const { double, workbook } = openExcel(chart(figures));
    const cells = figures.map((_, i) => at(1 + i));
    await workbook.apply("Mark", [{ kind: "mark", cells, marked: true }]);
    const before = double.host.syncs.length;
    await workbook.apply("Mark again", [{ kind: "mark", cells, marked: true }]);
    const operations = double.host.syncs.slice(before).reduce((sum, sync) => sum + sync.operations, 0);
    expect(operations).toBeLessThan(120 * 40);
    expect(Object.keys(summary(double.content())[0]?.marks ?? {})).toHaveLength(120);
    await workbook.apply("Unmark", [{ kind: "mark", cells, marked: false }]);
    expect(summary(double.content())[0]?.marks).toEqual({});
  }, 30_000);

  it("holds a rule of at most 255 characters", async () => {
    const quotes = '"'.repeat(100);
    const { double, workbook } = openExcel(chart([[quotes, quotes]]));
    await workbook.apply("Mark", mark(1));
    expect(summary(double.content())[0]?.marks).toEqual({ B2: true });
  });
});
