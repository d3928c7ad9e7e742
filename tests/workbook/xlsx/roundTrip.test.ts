import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { starterWorkbook } from "../../../addin/demo/starterWorkbook.ts";
import type { CellContent, SheetContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";

const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0);
const text = fc.oneof(
  fc.string({ unit: "binary", maxLength: 20 }),
  fc.constantFrom(
    "=1+1",
    "+1",
    "@x",
    "#N/A",
    "#A",
    "_x0041_",
    " a ",
    "a\r\nb\n",
    "TRUE",
    "1",
    "5⅜ ″",
    "\uFFFE",
    "",
  ),
);
const error = fc
  .constantFrom("#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A")
  .map((code) => ({ error: code }));
const value = fc.oneof(number, text, fc.boolean(), error);
// Dates keep their thousandths of a second; 60 is the day that never was.
const date = fc.record({
  value: fc.oneof(fc.constantFrom(59, 60, 60.5, 61, 45_000), fc.integer({ min: 0, max: 60_000 })),
  format: fc.constantFrom("m/d/yyyy", "d-mmm", "yyyy-mm-dd hh:mm"),
});
const plain = fc.record(
  {
    value,
    format: fc.constantFrom("0.0", "@", "0.00%", "# ?/?", '0.0 "mm"'),
    style: fc.constantFrom("title", "quiet", "heading", "wrap", "amount", "marked", "verdict"),
    formula: fc.constantFrom("=FIT.TAPE(A1)", '=IF(A1>"x",1,2)', "=SUM(A1:B2)", "=XLOOKUP(A1,B:B,C:C)"),
  },
  { requiredKeys: [] },
) satisfies fc.Arbitrary<CellContent>;
const cell = fc.option(fc.oneof({ weight: 5, arbitrary: plain }, { weight: 1, arbitrary: date }), {
  nil: undefined,
});

const note = fc.record({
  row: fc.nat(5),
  column: fc.nat(4),
  text: fc.string({ unit: "binary", minLength: 1, maxLength: 30 }),
});
const sheet: fc.Arbitrary<SheetContent> = fc
  .record(
    {
      name: fc.constantFrom("Figures", "Zoë’s 5⅜ & more", "a'b", "Übersicht <1>", "表"),
      cells: fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 6 }),
      frozenRows: fc.integer({ min: 1, max: 9 }),
      frozenColumns: fc.integer({ min: 1, max: 9 }),
      notes: fc.uniqueArray(note, {
        selector: ({ row, column }) => row * 10 + column,
        minLength: 1,
        maxLength: 4,
      }),
    },
    { requiredKeys: ["name", "cells"] },
  )
  .map((drawn) => ({
    ...drawn,
    ...(drawn.notes && { notes: drawn.notes.toSorted((a, b) => a.row - b.row || a.column - b.column) }),
  }));

/** Without what the model does not tell apart: empty cells and rows at the end, cells that hold nothing. */
function tidy(content: SheetContent): SheetContent {
  const rows = content.cells.map((row) =>
    cut(row.map((each) => (each && Object.keys(each).length > 0 ? each : undefined))),
  );
  return { ...content, cells: rows.slice(0, rows.findLastIndex((row) => row.length > 0) + 1) };
}

function withoutUndefined(content: Record<string, unknown>): CellContent {
  return Object.fromEntries(Object.entries(content).filter(([, field]) => field !== undefined));
}

function cut<T>(row: readonly (T | undefined)[]): readonly (T | undefined)[] {
  return row.slice(0, row.findLastIndex((each) => each !== undefined) + 1);
}

async function reread(content: WorkbookContent): Promise<WorkbookContent> {
  return readXlsx((await writeXlsx(content)).bytes);
}

describe("writing and reading", () => {
  test("gives back whatever the sheets held", async () => {
    const workbook = fc.uniqueArray(sheet, { selector: ({ name }) => name, minLength: 1, maxLength: 2 });
    await fc.assert(
      fc.asyncProperty(workbook, async (sheets) => {
        expect(await reread({ sheets })).toEqual({ sheets: sheets.map(tidy), leftOut: [] });
      }),
      { numRuns: 100 },
    );
  });

  test.each([
    ["the demo", demoWorkbook()],
    ["the starter in mm", starterWorkbook("mm")],
    ["the starter in inches", starterWorkbook("in")],
  ])("gives back %s", async (_, workbook) => {
    // Formulas are not calculated yet: no file can say which cells their results will fill.
    const sheets = workbook.sheets.map((each) => ({
      ...each,
      cells: each.cells.map((row) =>
        row.map((content) => content && withoutUndefined({ ...content, spilled: undefined })),
      ),
    }));
    expect(await reread({ sheets })).toEqual({ sheets: sheets.map(tidy), leftOut: [] });
  });

  test("gives back a table, a spilled result and column widths", async () => {
    const content: WorkbookContent = {
      sheets: [
        {
          name: "Chart",
          cells: [
            [{ value: "Chart of the workshop", style: "title" }],
            [],
            [
              { value: "Figure", style: "heading" },
              { value: "Waist (mm)", style: "heading" },
            ],
            [{ value: "Ada" }, { value: 80.125, format: "0.0" }],
            [{ value: "Bo" }, { value: 82 }],
          ],
          frozenRows: 3,
          columnWidths: [140, 90],
          tables: [{ name: "Figures", row: 2, column: 0, rows: 3, columns: 2 }],
          notes: [{ row: 3, column: 1, text: " Measured twice.\nSecond tape. " }],
        },
        {
          name: "Groups",
          cells: [
            [
              { value: "Figure", formula: "=FIT.GROUPS(Figures[#All])", spill: { rows: 3, columns: 2 } },
              { value: "Group", spilled: true },
            ],
            [
              { value: "Ada", spilled: true },
              { value: 1, spilled: true },
            ],
            [
              { value: "Bo", spilled: true },
              { value: "", spilled: true },
            ],
            [{ value: { error: "#N/A" }, formula: '=FIT.APART(Figures[#All],A2,"Cy")' }],
          ],
          columnWidths: [undefined, 75],
        },
      ],
    };
    expect(await reread(content)).toEqual({ ...content, leftOut: [] });
  });

  test("gives back lists to choose from, also those of tables and of names with apostrophes", async () => {
    const sheets: SheetContent[] = [
      {
        name: "Ada's chart",
        cells: [[], [undefined, { value: "Figure" }], [undefined, { value: "Bo" }]],
        tables: [{ name: "Chart", row: 1, column: 1, rows: 2, columns: 1 }],
      },
      {
        name: "S",
        cells: [],
        pickLists: [
          { row: 0, column: 0, rows: 9, columns: 2, from: ["yes", "no", '5" wide'] },
          { row: 3, column: 4, rows: 1, columns: 1, from: { table: "Chart", heading: "Figure" } },
        ],
      },
    ];
    expect(await reread({ sheets })).toEqual({ sheets, leftOut: [] });
  });

  test("keeps any width of a column to the pixel", async () => {
    const widths = Array.from({ length: 500 }, (_, i) => i + 1);
    const content = {
      sheets: [{ name: "W", cells: [widths.map(() => ({ value: 1 }))], columnWidths: widths }],
    };
    expect((await reread(content)).sheets[0]?.columnWidths).toEqual(widths);
  });

  test("writes values instead of formulas on request", async () => {
    const cells: CellContent[][] = [
      [{ value: "Ada", formula: "=FIT.BASE()", spill: { rows: 2, columns: 1 } }],
      [{ value: "Bo", spilled: true }],
      [{ value: { error: "#N/A" }, formula: "=FIT.APART(A1)" }],
    ];
    const { bytes } = await writeXlsx({ sheets: [{ name: "S", cells }] }, { cells: "values" });
    expect((await readXlsx(bytes)).sheets[0]?.cells).toEqual([
      [{ value: "Ada" }],
      [{ value: "Bo" }],
      [{ value: { error: "#N/A" } }],
    ]);
  });
});
