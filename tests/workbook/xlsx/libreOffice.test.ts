import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { readXlsx, type ReadWorkbook } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { shiftFormula } from "../../../addin/workbook/xlsx/shiftFormula.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { allSheetsAsCsv, convert, libreOfficeTimeout } from "./libreOffice.ts";

const folder = await mkdtemp(path.join(os.tmpdir(), "measure-book-xlsx-"));
afterAll(() => rm(folder, { recursive: true, force: true }));

const formula = (text: string): CellContent => ({ formula: text });

const chart: WorkbookContent = {
  sheets: [
    { name: "Notes", cells: [[{ value: "Read me", style: "title" }]] },
    {
      name: "Figures",
      cells: [
        [
          { value: "Figure", style: "heading" },
          { value: "Waist (mm)", style: "heading" },
        ],
        [{ value: "Ada, “tall”" }, { value: 80.125 }],
        [{ value: "=1+1" }, { value: 1 / 3, format: "0.000" }],
        [{ value: true }, { value: { error: "#N/A" } }],
        [formula("=SUM(Figures[Waist (mm)])"), formula("=ROUND(B2*2,1)")],
        // Each of these came after the first edition of the file format and needs its prefix.
        [formula('=IFNA(NA(),"none")'), formula('=TEXTJOIN("-",TRUE,CONCAT("a","b"),"c")')],
        [formula("=ROUND(STDEV.S(1,2,3,4),4)"), formula('=SWITCH(2,1,"one",2,"two")')],
        [formula("=XOR(TRUE,FALSE)"), formula('=MAXIFS(B2:B3,B2:B3,"<50")*3')],
        [formula("=PERCENTILE.INC(B2:B3,1)"), formula('=NUMBERVALUE("1,5",",")')],
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 2 }],
      notes: [{ row: 1, column: 0, text: "Old mould" }],
      frozenRows: 1,
      columnWidths: [200, 90],
    },
  ],
};

const results: WorkbookContent = {
  sheets: [
    {
      name: "S",
      cells: [
        [
          { value: "Figure", formula: "=FIT.GROUPS(Figures[#All])", spill: { rows: 2, columns: 2 } },
          { value: "Group", spilled: true },
        ],
        [
          { value: "Ada", spilled: true },
          { value: 1, spilled: true },
        ],
        [
          { value: 10, formula: "=FIT.EASE(90,80)" },
          { value: { error: "#N/A" }, formula: "=FIT.APART(A1)" },
        ],
      ],
    },
  ],
};

// Eight rows and four columns, numbered so that every reference gives another number: row · 10 + column.
const at = (row: number, column: number) => row * 10 + column;
const numbered = Array.from({ length: 8 }, (_, r) => Array.from({ length: 4 }, (_, c) => at(r + 1, c + 1)));
const firstFormula = 'A1+$B1*100+C$2*10000+SUM(A1:B2)+SUM(A:A)+SUM(2:3)+LEN("A1")';
const down = [0, 1, 4];
const moved: WorkbookContent = {
  sheets: [
    {
      name: "M",
      cells: [
        ...numbered.map((row) => row.map((value) => ({ value }))),
        // Aside from the columns and rows that the formulas sum.
        ...down.map((rows) => [
          ...Array.from({ length: 4 }, () => undefined),
          formula(`=${shiftFormula(firstFormula, rows, 0)}`),
        ]),
      ],
    },
  ],
};

/** Every sheet of the written workbooks as LibreOffice shows it, by file name. */
async function shown(): Promise<ReadonlyMap<string, readonly (readonly string[])[]>> {
  const files = [
    ["chart.xlsx", (await writeXlsx(chart)).bytes],
    ["results.xlsx", (await writeXlsx(results, { cells: "values" })).bytes],
    ["moved.xlsx", (await writeXlsx(moved)).bytes],
  ] as const;
  for (const [name, bytes] of files) await writeFile(path.join(folder, name), bytes);
  const sheets = await convert(
    files.map(([name]) => path.join(folder, name)),
    allSheetsAsCsv,
  );
  return new Map(
    [...sheets].map(([name, csv]) => [
      name,
      Papa.parse<string[]>(new TextDecoder().decode(csv).trimEnd(), { delimiter: "," }).data,
    ]),
  );
}

/** Workbooks that LibreOffice saved, read by us, by file name. */
async function read(): Promise<ReadonlyMap<string, ReadWorkbook>> {
  const csv = path.join(folder, "plain.csv");
  await writeFile(csv, 'Figure,Waist\n"Ada, tall",80.125\n');
  const files = await convert([path.join(import.meta.dirname, "chart.fods"), csv], "xlsx");
  return new Map(
    await Promise.all([...files].map(async ([name, bytes]) => [name, await readXlsx(bytes)] as const)),
  );
}

describe("what we write, in LibreOffice", () => {
  let sheets: Awaited<ReturnType<typeof shown>>;
  beforeAll(async () => {
    sheets = await shown();
  }, libreOfficeTimeout);

  test("shows its values, and what LibreOffice calculates from them", () => {
    expect(sheets.get("chart-Notes.csv")).toEqual([["Read me"]]);
    expect(sheets.get("chart-Figures.csv")).toEqual([
      ["Figure", "Waist (mm)"],
      ["Ada, “tall”", "80.125"],
      ["=1+1", "0.333333333333333"],
      ["TRUE", "#N/A"],
      ["80.4583333333333", "160.3"],
      ["none", "ab-c"],
      ["1.291", "two"],
      ["TRUE", "1"],
      ["80.125", "1.5"],
    ]);
  });

  test("shows the last values of our functions in a copy with values instead of formulas", () => {
    expect(sheets.get("results-S.csv")).toEqual([
      ["Figure", "Group"],
      ["Ada", "1"],
      ["10", "#N/A"],
    ]);
  });

  test("calculates formulas that we moved as those that they would be when filled down", () => {
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    const firstColumn = sum(numbered.map((row) => row[0] ?? 0));
    const wholeRow = (row: number) => sum(numbered[row - 1] ?? []);
    const expected = down.map((rows) => {
      const row = rows + 1;
      const square = at(row, 1) + at(row, 2) + at(row + 1, 1) + at(row + 1, 2);
      const single = at(row, 1) + at(row, 2) * 100 + at(2, 3) * 10_000;
      return single + square + firstColumn + wholeRow(2 + rows) + wholeRow(3 + rows) + 2;
    });
    expect(
      sheets
        .get("moved-M.csv")
        ?.slice(8)
        .map((row) => Number(row[4])),
    ).toEqual(expected);
  });
});

describe("what LibreOffice writes, read by us", () => {
  let workbooks: Awaited<ReturnType<typeof read>>;
  beforeAll(async () => {
    workbooks = await read();
  }, libreOfficeTimeout);

  test("has formulas, dates, errors, notes, a table, merged cells and a hidden sheet", () => {
    expect(workbooks.get("chart.xlsx")).toEqual({
      sheets: [
        {
          name: "Figures",
          cells: [
            [{ value: "Figure" }, { value: "Waist" }],
            [
              { value: "Ada" },
              { value: 80.125 },
              // 3 May 2023: day 45049 of the count from 1900.
              { value: 45_049, format: "d/m" },
              { value: 160.25, formula: "=B2*2" },
              { value: { error: "#DIV/0!" }, formula: "=1/0" },
            ],
            [
              { value: "Bo" },
              { value: 0.1 },
              undefined,
              { value: 0.2, formula: "=B3*2" },
              { value: 801.25, formula: "=B2:B3*10", spill: { rows: 2, columns: 1 } },
            ],
            [{ value: "both" }, undefined, undefined, undefined, { value: 1, spilled: true }],
          ],
          // 3 cm are 113 pixels of 1/96 inch; LibreOffice states them for its own font, whose digits are wider.
          columnWidths: [expect.toSatisfy((width: number) => width > 80 && width < 125)],
          // The file’s own: that of the place where LibreOffice runs.
          paper: expect.toSatisfy((paper: string) => ["A4", "Letter"].includes(paper)),
          tables: [{ name: "Chart", row: 0, column: 0, rows: 3, columns: 2 }],
          notes: [{ row: 1, column: 0, text: "Old mould" }],
        },
        expect.objectContaining({ name: "Old", cells: [[{ value: "kept" }]] }),
      ],
      leftOut: [
        "merged cells, which are single cells now, with the text in the first, on sheet “Figures”",
        "that sheet “Old” was hidden: it is shown now",
      ],
    });
  });

  test("has the cells of a CSV file", () => {
    expect(workbooks.get("plain.xlsx")?.sheets[0]?.cells).toEqual([
      [{ value: "Figure" }, { value: "Waist" }],
      [{ value: "Ada, tall" }, { value: 80.125 }],
    ]);
  });
});
