import { expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { editsFor, pasted, valuesOf } from "./importing.ts";

const empty: WorkbookContent = { sheets: [{ name: "Sheet1", cells: [] }] };

function withChart(cells: Cells): WorkbookContent {
  const width = cells[0]?.length ?? 0;
  return {
    sheets: [
      {
        name: "Chart",
        cells: [[{ value: "Spring" }], ...cells.map((row) => row.map((value) => ({ value })))],
        tables: [{ name: "Figures", row: 1, column: 0, rows: cells.length, columns: width }],
      },
    ],
  };
}

test("without a chart, a sheet with a title row and the table Figures is made; one undo takes it back", async () => {
  const workbook = createMemoryWorkbook(empty);
  const text = 'Maker\tFigure\tWaist (in)\nOrla\tMira\t5 3/8"\nOrla\tTola\t12 or 13\n=cmd\tUna\t=1+1\n';
  await workbook.apply("Import 3 figures", await editsFor(workbook, pasted(text)));
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Maker", "Waist girth (in)"],
    ["Mira", "Orla", 5.375],
    ["Tola", "Orla", "12 or 13"],
    ["Una", "=cmd", "=1+1"],
  ]);
  const sheet = workbook.content().sheets[1];
  expect(sheet?.tables).toMatchObject([{ name: "Figures", row: 2, column: 0, rows: 4, columns: 3 }]);
  expect(sheet?.cells[0]?.[0]).toMatchObject({ value: "Figures", style: "title" });
  // Text that looks like a formula is text, and what could not be read is marked.
  expect(sheet?.cells.flat().filter((cell) => cell?.formula !== undefined)).toEqual([]);
  expect(sheet?.cells[5]?.[2]).toMatchObject({ value: "=1+1", style: "marked" });
  expect(sheet?.cells[3]?.[2]?.style).toBeUndefined();

  expect(await workbook.undo()).toBe("Import 3 figures");
  expect(workbook.content()).toEqual(empty);
});

test("what could not be read is left out on request", async () => {
  const workbook = createMemoryWorkbook(empty);
  const source = pasted("Figure,Waist\nMira,60\nTola,12 or 13\n");
  await workbook.apply("Import", await editsFor(workbook, source, undefined, false));
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Waist girth (mm)"],
    ["Mira", 60],
    ["Tola", undefined],
  ]);
});

test("a sheet of that name is no obstacle", async () => {
  const workbook = createMemoryWorkbook({ sheets: [{ name: "FIGURES", cells: [[{ value: "mine" }]] }] });
  await workbook.apply("Import", await editsFor(workbook, pasted("Figure,Waist\nMira,60\n")));
  expect(await workbook.sheets()).toEqual(["FIGURES", "Figures 2"]);
  expect(workbook.content().sheets[0]?.cells).toEqual([[{ value: "mine" }]]);
});

test("a chart of headings alone is filled from its empty row on, in its own units", async () => {
  const begun = withChart([
    ["Figure", "Waist (in)", "Notes"],
    [undefined, undefined, undefined],
  ]);
  const workbook = createMemoryWorkbook(begun);
  const source = pasted("Figure,Notes,Waist (mm),Hip (mm)\nMira,resin,127,140\nTola,,12 or 13,141\n");
  await workbook.apply("Import 2 figures", await editsFor(workbook, source));
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Waist (in)", "Notes", "Hip girth (mm)"],
    ["Mira", 5, "resin", 140],
    ["Tola", "12 or 13", undefined, 141],
  ]);
  const cells = workbook.content().sheets[0]?.cells;
  expect([cells?.[2]?.[1]?.style, cells?.[3]?.[1]?.style]).toEqual([undefined, "marked"]);
  await workbook.undo();
  expect(workbook.content()).toEqual(begun);
});

const chart: Cells = [
  ["Figure", "Waist (mm)", "Notes", "Bust (mm)"],
  ["Mira", 60, "resin", undefined],
  ["Tola", 61, undefined, 80],
];
const file = "figure;bust;waist;hip\nMIRA;79;;81\nTola;80;oops;82,5\nUna;77;59;80\n";

test("new figures and new measures are added; figures that are there are left alone unless the user says update", async () => {
  const workbook = createMemoryWorkbook(withChart(chart));
  await workbook.apply("Import 1 figure", await editsFor(workbook, pasted(file)));
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Waist (mm)", "Notes", "Bust (mm)", "Hip girth (mm)"],
    ["Mira", 60, "resin", undefined, undefined],
    ["Tola", 61, undefined, 80, undefined],
    ["Una", 59, undefined, 77, 80],
  ]);
});

test("an update writes only what the file fills; what cannot be read never goes over a reading", async () => {
  const before = withChart(chart);
  const workbook = createMemoryWorkbook(before);
  const edits = await editsFor(workbook, pasted(file), { inChart: "update", inFile: "keep both" });
  await workbook.apply("Import 3 figures", edits);
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Waist (mm)", "Notes", "Bust (mm)", "Hip girth (mm)"],
    ["Mira", 60, "resin", 79, 81],
    ["Tola", 61, undefined, 80, 82.5],
    ["Una", 59, undefined, 77, 80],
  ]);
  await workbook.undo();
  expect(workbook.content()).toEqual(before);
});

test("a figure twice in the file is joined into one row on request", async () => {
  const workbook = createMemoryWorkbook(empty);
  const source = pasted("Figure,Bust,Waist\nMira,78,\nmira,,60\n");
  await workbook.apply("Import", await editsFor(workbook, source, { inChart: "skip", inFile: "update" }));
  expect(await valuesOf(workbook, "Figures")).toEqual([
    ["Figure", "Bust girth (mm)", "Waist girth (mm)"],
    ["Mira", 78, 60],
  ]);
});

test("readings from another unit are shown as finely as a tape, and kept exactly", async () => {
  const begun = withChart([
    ["Figure", "Neck (in)", "Waist (in)"],
    [undefined, undefined, undefined],
  ]);
  const source = pasted("Figure,Neck (cm),Waist (in)\nMira,?,5 1/64\nTola,7.2,5 3/8\nUna,7.3,6\n");
  for (const content of [begun, empty]) {
    const workbook = createMemoryWorkbook(content);
    const edits = await editsFor(workbook, source);
    await workbook.apply("Import 3 figures", edits);
    const values = (await workbook.readTable("Figures")).values;
    const filled = workbook.content().sheets.flatMap(({ cells }) => cells.flat());
    const formatOf = (value: number) => filled.find((cell) => cell?.value === value)?.format;
    expect(values.slice(1).map((row) => row[2])).toEqual([5.015625, 5.375, 6]);
    expect(formatOf(5.015625)).toBeUndefined();
    if (content === empty) expect(values[2]?.[1]).toBe(7.2);
    else {
      // The inch is exactly 2.54 cm (international yard and pound agreement, 1959).
      expect(values[2]?.[1]).toBeCloseTo(7.2 / 2.54, 10);
      const cells = edits.flatMap((edit) => (edit.kind === "cells" ? edit.cells : []));
      expect(cells[0]?.[1]).toEqual({ format: "0.000" });
    }
  }
});
