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
      expect(day && dateFractions(day)).toEqual(["5/8"]);
    }
  });

  it("offers 1/32 for January 1932", () => {
    const day = serialToDay(11689);
    expect(day && dateFractions(day)).toEqual(["1/32"]);
  });

  it("finds them by number format, and by size where the format is not known", () => {
    for (const format of ["d-mmm", "m/d/yyyy", "[$-409]d\\-mmm\\-yy;@", undefined]) {
      for (const unit of ["mm", "cm", "in"] as const) {
        expect(readCell(46150, unit, { format })).toMatchObject({
          kind: "refused",
          fractions: ["5/8"],
        });
      }
    }
  });

  it("is reported with the cell and the fraction, and no reading is kept", () => {
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
        fractions: ["5/8"],
      }),
    ]);
    expect(chart.problems[0]?.message).toContain("perhaps a fraction that the sheet changed: 5/8.");
  });

  it("offers what a tape has, of every day of the year, and nothing else", () => {
    // Inch tapes are halved up to sixty-fourths: common practice.
    const onTape = /^(\d+)\/(2|4|8|16|32|64)$/;
    for (let serial = 46023; serial < 46023 + 365; serial++) {
      const day = serialToDay(serial);
      for (const fraction of day ? dateFractions(day) : []) {
        expect(fraction).toMatch(onTape);
        const [over = 0, under = 0] = fraction.split("/").map(Number);
        expect(over).toBeLessThan(under);
      }
    }
    const thirdOfMay = readCell(46145, "in", { format: "d-mmm" });
    expect(thirdOfMay).toEqual({
      kind: "refused",
      reason: "“3 May 2026” is a date. Type the reading again, as text.",
      fractions: [],
    });
  });

  it("reads 1 5/8, which a spreadsheet leaves alone, as 1.625", () => {
    expect(parseReading("1 5/8", { unit: "in" })).toMatchObject({
      kind: "length",
      mm: 1.625 * 25.4,
      unit: "in",
    });
  });
});
