import { describe, expect, it } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { checkChart } from "../../../addin/checking/checkChart.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { explainCell, readSelectedCell } from "../../../taskpane/explain/explainCell.ts";
import { misnamed } from "../../../taskpane/explain/explainResult.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, sheetOf } from "../fit/wardrobe.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";

const values = [
  ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Maker"],
  ["Linnet", 135, "10 cm", 140, "own"],
  ["Dunnock", 162, 120, undefined, ""],
  ["Pipit", 148.5, 110, 154, ""],
  ["Teal", 189, "abc", 196, ""],
  ["Siskin", 202.5, 150, 210, ""],
  [undefined, undefined, undefined, undefined, undefined],
];
const chart = readChart(values);
const words = (row: number, column: number) => explainCell(chart, values, { row, column }, checkChart(chart));

describe("the explanation of a cell", () => {
  it("of a reading says what was read, from what, and how it is taken", () => {
    const { title, says } = words(1, 2);
    expect(title).toBe("Waist of Linnet");
    // A centimetre is 10 mm (SI Brochure).
    expect(says[0]).toBe("The reading is 100 mm, from “10 cm”.");
    expect(says.at(-1)).toMatch(/^How to take it: /);
  });

  it("of an empty cell says that there is no reading, and of one that is no length what was read", () => {
    expect(words(2, 3).says[0]).toBe("There is no reading.");
    expect(words(4, 2).says[0]).toContain("“abc”");
  });

  it("of a reading that cannot be right says why it deserves a look", () => {
    expect(words(4, 2).looks).toEqual([expect.objectContaining({ kind: "not a length" })]);
    expect(words(1, 1).looks).toEqual([]);
  });

  it("of a figure says what is taken and what is not", () => {
    expect(words(2, 0)).toMatchObject({
      title: "Dunnock",
      says: ["2 of 3 measures have a reading.", "Not taken: Hip."],
    });
  });

  it("of a heading says how many figures have a reading, and from where to where", () => {
    const { title, says } = words(0, 1);
    expect(title).toBe("Bust girth");
    expect(says[0]).toBe("5 of 5 figures have a reading, from 135 mm to 202.5 mm.");
  });

  it("of other columns and empty rows says what they are", () => {
    expect(words(1, 4).says).toEqual([
      "The cell says “own”.",
      "This column is no measure: it is kept with the figure.",
    ]);
    expect(words(0, 4).says).toEqual(["This column holds no readings."]);
    expect(words(6, 0).title).toBe("A row without a figure");
  });

  it("is of the selected cell, and says so when that is in no chart", async () => {
    const { double, workbook } = openExcel(demoWorkbook());
    const table = double.book.tables.find(({ name }) => name === "Figures");
    const start = double.book.sheets.find(({ name }) => name === "Start");
    if (!table || !start) throw new Error("The demo has no chart.");
    double.book.selected = { sheet: table.sheet, row: table.row, column: table.column, rows: 2, columns: 1 };
    expect(await readSelectedCell(workbook, openBook(workbook)())).toMatchObject({
      at: { row: 0, column: 0 },
    });
    double.book.selected = { sheet: start, row: 0, column: 0, rows: 1, columns: 1 };
    await expect(readSelectedCell(workbook, openBook(workbook)())).rejects.toThrow(
      "There is nothing to explain in the selected cell. Select a reading, a figure’s name or a heading of the table Figures on the sheet Figures",
    );
    await workbook.close?.();
  });

  it("of an error, a verdict or a pattern that cannot be read says what it means and where it comes from", async () => {
    const workbook = createMemoryWorkbook({
      sheets: [
        {
          name: "Verdicts",
          cells: [
            [{ formula: '=FIT.WEARERS(Patterns[#All], Figures[#All], "P1")', value: "Figure" }],
            [{ value: "too tight", spilled: true }, { value: { error: "#SPILL!" } }],
          ],
        },
        sheetOf("Patterns", [...patterns, ["P5", "Slip", "Dres"]]),
        sheetOf("Figures", figures),
      ],
    });
    const explained = async (sheet: string, row: number, column: number) => {
      await workbook.select({ sheet, row, column, rows: 1, columns: 1 });
      return readSelectedCell(workbook, openBook(workbook)());
    };
    expect(await explained("Verdicts", 1, 0)).toMatchObject({
      title: "A2 of the sheet “Verdicts”",
      says: [
        expect.stringContaining("It cannot be closed, or pulls."),
        expect.stringMatching(/^It is filled from A1, which holds =FIT\.WEARERS\(/),
        expect.stringContaining("Why not?"),
      ],
    });
    expect(await explained("Verdicts", 1, 1)).toMatchObject({
      looks: [{ kind: "#SPILL!", why: expect.stringContaining("Clear what stands below") as string }],
    });
    expect(await explained("Patterns sheet", 5, 1)).toMatchObject({
      looks: [
        { kind: "cannot be read", why: expect.stringContaining("“Dres” is not a garment class") as string },
      ],
    });
  });
});

describe("a formula that names what nobody knows", () => {
  const tables = ["Figures", "Patterns"];

  it.each([
    ["=FIT.WEARES(Patterns[#All])", /^There is no function “FIT\.WEARES”\. Did you mean “FIT\.WEARERS”/],
    [
      '=FIT.NEAREST(Figure[#All], "Ann")',
      /^There is no table “Figure” in this workbook\. Did you mean “Figures”\?$/,
    ],
    ["=SUM(Prices[Paid])", /^There is no table “Prices” in this workbook\.$/],
  ])("has it told of %s", (formula, said) => {
    expect(misnamed(formula, tables)).toMatch(said);
  });

  it.each([
    '=FIT.WEARERS(Patterns[#All], FIGURES[#All], "S1")',
    "=IF(A1=\"Nothing[here]\", SUM(Figures[[#All],[Bust (mm)]]), 'My sheet'!A1)",
    "=[Other.xlsx]Sheet1!A1+Figures[@[Bust (mm)]]",
  ])("is not told of %s", (formula) => {
    expect(misnamed(formula, tables)).toBeUndefined();
  });
});
