import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { reasonsFunction } from "../../functions/reasons.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";

const names = ["Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel"];
const chart: Cells = [["Figure", "Bust (mm)", "Waist (mm)"], ...names.map((name) => [name, 180, 134])];
/** A dress’s least ease of a bust of 180 mm is 6.4 mm; as far again below it ends what is snug, at 180 mm. */
const patterns: Cells = [
  ["Pattern", "Garment class", "Opens", "Bust (mm)", "Waist (mm)"],
  ["G", "Dress", "full length", 180.2, 148],
];
const repeated = (apart: number): Cells => [
  ["Figure", "Measure", "Reading (mm)"],
  ...names.flatMap((name) => [180, 180 + apart].map((mm) => [name, "Bust", mm])),
];

function verdict(readings?: Cells, figures = chart): unknown {
  return (whatFitsFunction.compute([patterns, figures, null, null, readings ?? null]) as Cells)[1]?.[1];
}

describe("verdicts with readings that were repeated", () => {
  it("go by the error that these show, drawn to the usual one", () => {
    // The usual error of 0.5 mm cannot tell 0.2 mm.
    expect(verdict()).toBe("too close to call");
    // Readings in steps of half a millimetre that repeat exactly: 0.144 mm (JCGM 100:2008, 4.3.7) on six figures, drawn to
    // √((5·0.25 + 6·0.0208) / 11) = 0.354 mm.
    const exact: Cells = [
      ["Figure", "Measure", "Reading (mm)"],
      ...names.flatMap((name, i) => [180.5, 180.5].map((mm) => [name, "Bust", mm + i])),
    ];
    const says = (readings: Cells | null, at: Cells = patterns) =>
      (reasonsFunction.compute([at, chart, "G", "Ash", null, null, readings]) as Cells)
        .flat()
        .find((cell) => typeof cell === "string" && cell.includes("the tape may be off"));
    expect(says(exact)).toContain("off by 0.4 mm");
    const farther = [patterns[0]!, ["G", "Dress", "full length", 180.4, 148]];
    expect(says(null, farther)).toContain("off by 0.5 mm");
    expect(says(exact, farther)).toBeUndefined();
  });

  it("are the same with second readings as a chart, and with rows of the chart itself", () => {
    // Differences of 2 mm on six figures: √(4 / 2) = 1.414 mm, drawn to √((5·0.25 + 6·2) / 11) = 1.098 mm.
    const at: Cells = [patterns[0]!, ["G", "Dress", "full length", 181, 148]];
    const found = (figures: Cells, readings: Cells | null) =>
      (whatFitsFunction.compute([at, figures, null, null, readings]) as Cells)[1]?.[1];
    const again: Cells = [["Figure", "Bust (cm)"], ...names.map((name) => [name, 18.2])];
    expect(found(chart, null)).toBe("snug");
    expect(found(chart, again)).toBe("too close to call");
    expect(found(chart, repeated(2))).toBe("too close to call");
    expect(found([...chart, ...names.map((name) => [name, 182, 134])], null)).toBe("too close to call");
  });

  it("ask for a table that is one or the other", () => {
    const given = [patterns, chart, null, null, [["Figure", "Measure", "Length of a walk"]]];
    expect(() => whatFitsFunction.compute(given)).toThrow(/readings.*“Reading”/);
  });
});
