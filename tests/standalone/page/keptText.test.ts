import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { toSnapshot } from "../../../addin/standalone/grid/toSnapshot.ts";
import { fromKeptText, toKeptText } from "../../../addin/standalone/page/keptText.ts";
import { fileNameFor } from "../../../addin/standalone/page/notices.ts";
import { openHeadless } from "../grid/headless.ts";

const small = () =>
  toSnapshot({ sheets: [{ name: "Sheet1", cells: [[{ value: 1 }, { formula: "=A1+1" }]] }] }, "workbook");

/** The small workbook with other values in some places, as kept text. */
const keptWith = (change: (sheet: Record<string, unknown>, workbook: Record<string, unknown>) => void) => {
  const text = JSON.parse(JSON.stringify(small())) as Record<string, unknown>;
  const [sheet] = Object.values(text.sheets as Record<string, Record<string, unknown>>);
  change(sheet!, text);
  return JSON.stringify({ format: 1, snapshot: text });
};

describe("kept text", () => {
  it("gives the workbook back", () => {
    expect(fromKeptText(toKeptText(small()))).toEqual(JSON.parse(JSON.stringify(small())));
  });

  it("is accepted as the grid writes it, the whole demo with all that the grid adds", () => {
    const grid = openHeadless(demoWorkbook());
    const snapshot = grid.workbook.snapshot();
    grid.close();
    expect(fromKeptText(toKeptText(snapshot))).toEqual(JSON.parse(JSON.stringify(snapshot)));
  });

  it("leaves out cells that were emptied", () => {
    const text = keptWith((sheet) => (sheet.cellData = { 0: { 0: null, 1: { v: 2 } } }));
    expect(Object.values(fromKeptText(text)!.sheets)[0]?.cellData).toEqual({ 0: { 1: { v: 2 } } });
  });

  it.each<readonly [string, (sheet: Record<string, unknown>, workbook: Record<string, unknown>) => void]>([
    ["−1 rows", (sheet) => (sheet.rowCount = -1)],
    ["a thousand million rows", (sheet) => (sheet.rowCount = 1e9)],
    ["half a column", (sheet) => (sheet.columnCount = 0.5)],
    ["no sheets", (_, workbook) => (workbook.sheets = {})],
    ["a sheet that is not there", (_, workbook) => (workbook.sheetOrder = ["sheet-1", "sheet-2"])],
    ["the same sheet twice", (_, workbook) => (workbook.sheetOrder = ["sheet-1", "sheet-1"])],
    ["null cell data", (sheet) => (sheet.cellData = null)],
    ["a row that is null", (sheet) => (sheet.cellData = { 0: null })],
    ["a cell below the last row that a sheet can have", (sheet) => (sheet.cellData = { 1048576: { 0: {} } })],
    ["a cell that is a text", (sheet) => (sheet.cellData = { 0: { 0: "x" } })],
    ["a value that is a list", (sheet) => (sheet.cellData = { 0: { 0: { v: [] } } })],
    ["a formula that is a number", (sheet) => (sheet.cellData = { 0: { 0: { f: 1 } } })],
    ["merged cells that are a text", (sheet) => (sheet.mergeData = "A1:B2")],
    ["columns of a million pixels", (sheet) => (sheet.columnData = { 0: { w: 1e6 } })],
    ["styles that are texts", (_, workbook) => (workbook.styles = { a: "bold" })],
    ["resources that are no JSON", (_, workbook) => (workbook.resources = [{ name: "X", data: "{half" }])],
    [
      "tables without a place",
      (_, workbook) =>
        (workbook.resources = [{ name: "SHEET_TABLE_PLUGIN", data: '{"sheet-1":[{"id":"a","name":"A"}]}' }]),
    ],
  ])("is refused with %s", (_, change) => {
    expect(fromKeptText(keptWith(change))).toBeUndefined();
  });

  it("is refused without an error, whatever the text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(fromKeptText(text)).toBeUndefined();
      }),
    );
  });
});

// Microsoft, “Naming Files, Paths, and Namespaces”: reserved characters and device names, no dot or space at the end.
describe("the name of a file after a book", () => {
  it.each([
    ["Spring: 1/4 scale", "Spring 1 4 scale"],
    ["  Autumn. ", "Autumn"],
    ["Séraphe", "Séraphe"],
    ["con", "Book con"],
    ["LPT1.old", "Book LPT1.old"],
    ["///", "Book"],
    ["../../etc/passwd", "etc passwd"],
  ])("%s", (book, file) => {
    expect(fileNameFor(book)).toBe(file);
  });

  it("is one that every system takes", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (book) => {
        const name = fileNameFor(book);
        expect(name).toMatch(/^[^<>:"/\\|?*\p{Cc}]{1,90}$/u);
        expect(name).not.toMatch(/^[. ]|[. ]$/);
      }),
    );
  });
});
