import { describe, expect, it } from "vitest";
import { isDateFormat, isPercentFormat } from "../../addin/chart/numberFormat.ts";
import { readCell } from "../../addin/chart/readCell.ts";
import { readWritten } from "../../addin/measures/parseReading.ts";

describe("readCell", () => {
  it("takes a number in the unit of the column, and text as a tape reading", () => {
    expect(readCell(5.375, "in")).toEqual({
      kind: "length",
      mm: 136.525,
      unit: "in",
      unitFrom: "assumed",
    });
    expect(readCell("5 3/8", "in")).toMatchObject({ kind: "length", mm: 136.525, unit: "in" });
    expect(readCell("13,625", "cm", { readText: (text) => readWritten(text, ",") })).toMatchObject({
      kind: "length",
      mm: 136.25,
      unit: "cm",
    });
    expect(readCell(0, "mm")).toMatchObject({ kind: "length", mm: 0, unit: "mm" });
  });

  it("takes an empty cell and a mark as not taken", () => {
    expect(readCell(undefined, "mm")).toEqual({ kind: "missing" });
    expect(readCell("–", "mm")).toEqual({ kind: "missing" });
  });

  it.each([
    [-3, undefined, "“-3” is negative"],
    [999_999, undefined, "“999999” mm is longer than 10 m"],
    [NaN, undefined, "no number"],
    [true, undefined, "“TRUE” is not a length"],
    [{ error: "#DIV/0!" }, undefined, "error #DIV/0!"],
    [0.03, "0%", "“3 %” is not a length"],
    [0.07, "0.0%", "“7 %” is not a length"],
    [46150, "d-mmm", "“8 May 2026” is a date"],
    [46150, undefined, "“46150” (8 May 2026) is a date"],
    [5.375, "d-mmm", "“5.375” is shown as a date or time"],
    [0.0625, "h:mm", "“0.0625” is shown as a date or time"],
  ])("refuses %j with the format %j", (cell, format, reason) => {
    const reading = readCell(cell, "mm", { format });
    expect(reading.kind === "refused" && reading.reason).toContain(reason);
  });
});

describe("number formats", () => {
  it.each(["d-mmm", "m/d/yyyy", "dd.mm.yyyy", "[$-409]mmm-yy;@", "h:mm", "[h]:mm:ss", "yyyy\\-mm\\-dd"])(
    "%s shows dates",
    (format) => {
      expect(isDateFormat(format)).toBe(true);
    },
  );

  it.each([
    "General",
    "0.0",
    "# ?/?",
    "# ??/16",
    '0.0 "mm"',
    "0\\m\\m",
    "@",
    "",
    "[Red]0",
    '0 "inches, dry"',
    "0.00E+00",
  ])("%s does not", (format) => {
    expect(isDateFormat(format)).toBe(false);
  });

  it("tells percentages", () => {
    expect(isPercentFormat("0.0%")).toBe(true);
    expect(isPercentFormat('0"%"')).toBe(false);
  });
});
