import { describe, expect, it } from "vitest";
import { readCell } from "../../addin/chart/readCell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { dateFractions, serialToDay } from "../../addin/measures/dateFractions.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";

/**
 * A spreadsheet turns a typed 5/8 into a date: 8 May where the month comes first, 5 August where the day does; 1/32
 * becomes January 1932. Source: Microsoft support article Q159491 for the conversion; serials as
 * LibreOffice 7.4.7 gives them (DATE(2026;5;8) = 46150, DATE(2026;8;5) = 46239, DATE(1932;1;1) = 11689).
 */
describe("fractions that a spreadsheet turned into dates", () => {
  it.each([
    [46150, { year: 2026, month: 5, day: 8 }],
    [46239, { year: 2026, month: 8, day: 5 }],
    [11689, { year: 1932, month: 1, day: 1 }],
    // The start and a leap day of the same calendar: DATE(1900;3;1) = 61, DATE(2000;2;29) = 36585.
    [61, { year: 1900, month: 3, day: 1 }],
    [36585, { year: 2000, month: 2, day: 29 }],
  ])("serial %i", (serial, day) => {
    expect(serialToDay(serial)).toEqual(day);
  });

  it("offers 5/8 for both dates, whichever way round the sheet reads days", () => {
    for (const serial of [46150, 46239]) {
      const day = serialToDay(serial);
      expect(day && dateFractions(day)).toEqual(["5/8", "8/5"]);
    }
  });

  it("offers 1/32 for January 1932", () => {
    const day = serialToDay(11689);
    expect(day && dateFractions(day)).toEqual(["1/32", "1/1"]);
  });

  it("finds them by number format, and by size where the format is not known", () => {
    for (const format of ["d-mmm", "m/d/yyyy", "[$-409]d\\-mmm\\-yy;@", undefined]) {
      for (const unit of ["mm", "cm", "in"] as const) {
        expect(readCell(46150, unit, { format })).toMatchObject({
          kind: "refused",
          fractions: ["5/8", "8/5"],
        });
      }
    }
  });

  it("is reported with the cell and both fractions, and no reading is kept", () => {
    const chart = readChart([
      ["Figure", "Foot width (in)"],
      ["Ada", "7/8"],
      ["Bea", 46150],
    ]);
    expect([...(chart.measures[0]?.mm ?? [])]).toEqual([(7 / 8) * 25.4, NaN]);
    expect(chart.problems).toEqual([
      expect.objectContaining({
        kind: "date instead of a reading",
        row: 2,
        column: 1,
        fractions: ["5/8", "8/5"],
      }),
    ]);
    expect(chart.problems[0]?.message).toContain("5/8 or 8/5");
  });

  it("reads 1 5/8, which a spreadsheet leaves alone, as 1.625", () => {
    expect(parseReading("1 5/8", { unit: "in" })).toMatchObject({
      kind: "length",
      mm: 1.625 * 25.4,
      unit: "in",
    });
  });
});
