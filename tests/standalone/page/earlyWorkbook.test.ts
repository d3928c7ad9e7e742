import { describe, expect, it } from "vitest";
import { calculatedDemo } from "../../../addin/standalone/page/calculatedDemo.ts";
import { earlyWorkbook } from "../../../addin/standalone/page/earlyWorkbook.ts";
import { fromKeptText, toKeptText } from "../../../addin/standalone/page/keptText.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Workbook, WorkbookChange } from "../../../addin/workbook/port.ts";
import { descriptors } from "../../../functions/all.ts";
import { openHeadless } from "../grid/headless.ts";

const small: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [{ value: "Figure" }, { value: "Bust" }, { value: "Half" }],
        [{ value: "Ardwen" }, { value: 180, format: "0.0" }, { value: 90, formula: "=B2/2" }],
        [{ value: "Belsory" }, { value: true }, { value: { error: "#N/A" } }],
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 3 }],
    },
    {
      name: "Rows",
      cells: [
        [{ value: "Bust", formula: "=FIT.STEPS(Figures[#All])", spill: { rows: 2, columns: 1 } }],
        [{ value: 7, spilled: true }],
      ],
    },
  ],
};

/** What the pane reads most: sheets, tables, and all cells with their formats. */
async function allRead(workbook: Workbook) {
  const sheets = await workbook.sheets();
  const tables = await workbook.tables();
  const cells = await Promise.all(tables.map(({ name }) => workbook.readTable(name)));
  const corners = await Promise.all(
    sheets.map((sheet) => workbook.readArea({ sheet, row: 0, column: 0, rows: 40, columns: 12 })),
  );
  return { sheets, tables, cells, corners };
}

describe("a workbook before the sheet is there", () => {
  it("reads the demo as the sheet does once it has calculated", async () => {
    const early = await allRead(earlyWorkbook(calculatedDemo).workbook);
    const grid = openHeadless(calculatedDemo, descriptors);
    await grid.opened;
    const calculated = await allRead(grid.workbook);
    grid.close();
    expect(early.sheets).toEqual(calculated.sheets);
    expect(early.tables).toEqual(calculated.tables);
    expect(early.cells).toEqual(calculated.cells);
  });

  it("reads what was kept as the sheet did that kept it, results of formulas among it", async () => {
    const grid = openHeadless(calculatedDemo, descriptors);
    await grid.opened;
    const before = await allRead(grid.workbook);
    const kept = fromKeptText(toKeptText(grid.workbook.snapshot()));
    grid.close();
    expect(before.corners.flatMap(({ values }) => values.flat()).filter(Boolean).length).toBeGreaterThan(
      1000,
    );
    expect(await allRead(earlyWorkbook(kept!).workbook)).toEqual(before);
  });

  it("names what is not there, as the sheet does", async () => {
    const { workbook } = earlyWorkbook(small);
    await expect(workbook.readTable("Patterns")).rejects.toThrow("Patterns");
    const nowhere = { sheet: "Nowhere", row: 0, column: 0, rows: 1, columns: 1 };
    await expect(workbook.readArea(nowhere)).rejects.toThrow("Nowhere");
  });

  it("does what changes cells when the sheet is there, and tells what changes from then on", async () => {
    const { workbook, opened } = earlyWorkbook(small);
    const heard: WorkbookChange[] = [];
    workbook.subscribe((change) => heard.push(change));
    const applying = workbook.apply("Type", [
      { kind: "cells", at: { sheet: "Figures", row: 1, column: 1 }, cells: [[{ value: 200 }]] },
    ]);
    const grid = openHeadless(small, descriptors);
    opened(grid.workbook);
    await applying;
    expect(workbook.lastAction()).toBe("Type");
    expect((await workbook.readTable("Figures")).values[1]?.[1]).toBe(200);
    await grid.opened;
    await expect.poll(() => heard.map(({ sheet }) => sheet)).toContain("Rows");
    grid.close();
  });
});

describe("what can wait for the sheet", () => {
  it("is told when it is calculated, not when it is there", async () => {
    const { workbook, opened, ready } = earlyWorkbook(small);
    let isReady = false;
    const told = workbook.whenReady?.().then(() => (isReady = true));
    const grid = openHeadless(small, descriptors);
    opened(grid.workbook);
    await grid.opened;
    expect(isReady).toBe(false);
    ready();
    await told;
    expect(isReady).toBe(true);
    grid.close();
  });
});

describe("a value that was stored", () => {
  it("is shown until all is calculated, and stands no longer where it is wrong", async () => {
    const stale: WorkbookContent = {
      sheets: small.sheets.map((sheet) => ({
        ...sheet,
        cells: sheet.cells.map((row) =>
          row.map((cell) => (cell?.formula === "=B2/2" ? { ...cell, value: 1 } : cell)),
        ),
      })),
    };
    const half = { sheet: "Figures", row: 1, column: 2, rows: 1, columns: 1 };
    const filled = { sheet: "Rows", row: 1, column: 0, rows: 1, columns: 1 };
    const grid = openHeadless(stale, descriptors);
    expect((await grid.workbook.readArea(half)).values).toEqual([[1]]);
    expect((await grid.workbook.readArea(filled)).values).toEqual([[7]]);
    await grid.opened;
    // 180 / 2, and what the function gives, which is not the 7 that was stored.
    expect((await grid.workbook.readArea(half)).values).toEqual([[90]]);
    expect((await grid.workbook.readArea(filled)).values).not.toEqual([[7]]);
    grid.close();
  });

  it("follows the first edit that touches it, should that come before", async () => {
    const stale: WorkbookContent = {
      sheets: [{ name: "A", cells: [[{ value: 180 }, { value: 1, formula: "=A1/2" }]] }],
    };
    const grid = openHeadless(stale, descriptors);
    await grid.workbook.apply("Type", [
      { kind: "cells", at: { sheet: "A", row: 0, column: 0 }, cells: [[{ value: 50 }]] },
    ]);
    const half = { sheet: "A", row: 0, column: 1, rows: 1, columns: 1 };
    await expect.poll(async () => (await grid.workbook.readArea(half)).values).toEqual([[25]]);
    grid.close();
  });
});

describe("results that are kept", () => {
  it("are refused where they would fill more than a workbook holds", () => {
    const grid = openHeadless(small, descriptors);
    const snapshot = grid.workbook.snapshot();
    grid.close();
    const area = { startRow: 0, endRow: 1_000_000, startColumn: 0, endColumn: 16_000 };
    const data = JSON.stringify({ cells: {}, areas: { "sheet-1": { 0: { 0: area } } } });
    const name = "SHEET_MEASURE_BOOK_RESULTS_PLUGIN";
    const resources = (snapshot.resources ?? []).map((each) => (each.name === name ? { name, data } : each));
    expect(resources.filter((each) => each.data === data)).toHaveLength(1);
    expect(fromKeptText(toKeptText({ ...snapshot, resources }))).toBeUndefined();
  });
});
