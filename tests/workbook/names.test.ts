import { describe, expect, it } from "vitest";
import { areaName, cellName } from "../../addin/workbook/address.ts";
import { checkSheetName, checkTableName } from "../../addin/workbook/names.ts";
import { columnLetters } from "../../addin/chart/columnLetters.ts";

describe("addresses", () => {
  // The last column of a sheet is XFD: Microsoft, “Excel specifications and limits” (16,384 columns).
  // Column letters as spreadsheets write them: A to Z, then AA; column 702 is ZZ, 703 is AAA.
  it.each([
    [0, "A"],
    [25, "Z"],
    [26, "AA"],
    [701, "ZZ"],
    [702, "AAA"],
    [16_383, "XFD"],
  ])("column %d is %s", (column, letters) => {
    expect(columnLetters(column)).toBe(letters);
  });

  it("names cells and areas", () => {
    expect(cellName(0, 0)).toBe("A1");
    expect(areaName({ row: 1, column: 1, rows: 1, columns: 1 })).toBe("B2");
    expect(areaName({ row: 0, column: 25, rows: 10, columns: 2 })).toBe("Z1:AA10");
  });
});

// Microsoft support, “Rename a worksheet”.
describe("sheet names", () => {
  it.each(["Figures", "Bust & waist", "1", "x".repeat(31), "Ada’s", "Ångström"])("may be “%s”", (name) => {
    expect(() => {
      checkSheetName(name);
    }).not.toThrow();
  });
  it.each(["", " ", "x".repeat(32), "a/b", "a\\b", "a?b", "a*b", "a[b", "a]b", "a:b", "'a", "a'", "history"])(
    "may not be “%s”",
    (name) => {
      expect(() => {
        checkSheetName(name);
      }).toThrow(`“${name}”`);
    },
  );
});

// Microsoft support, “Rename an Excel table” and “Names in formulas”.
describe("table names", () => {
  it.each(["Figures", "_x", "Bust.2", "Größen", "ABCD1", "x".repeat(255)])("may be “%s”", (name) => {
    expect(() => {
      checkTableName(name);
    }).not.toThrow();
  });
  it.each(["", "x".repeat(256), "2figures", "My figures", "a-b", "A1", "xfd12", "R1C1", "r", "C", "rc"])(
    "may not be “%s”",
    (name) => {
      expect(() => {
        checkTableName(name);
      }).toThrow(`“${name}”`);
    },
  );
});
