import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { readTolerances } from "../../addin/chart/tolerances.ts";
import { compare } from "../../addin/fit/compare.ts";

const chart = readChart([
  ["Figure", "Bust (in)", "Waist (cm)", "Frill"],
  ["A", 5, 10, 30],
  ["B", 5.5, 10, 33],
  ["C", undefined, 11, 30],
]);

describe("compare", () => {
  it("gives each measure in mm, in the order of the chart", () => {
    const [bust, waist] = compare(chart, 0, 1);
    expect(bust).toMatchObject({ column: { heading: "Bust", unit: "in" } });
    expect(bust?.baseMm).toBeCloseTo(127, 9);
    expect(bust?.targetMm).toBeCloseTo(139.7, 9);
    expect(bust?.deltaMm).toBeCloseTo(12.7, 9);
    expect(bust?.percent).toBeCloseTo(10, 9);
    expect(waist).toMatchObject({ baseMm: 100, targetMm: 100, deltaMm: 0, percent: 0, ofTolerance: 0 });
  });

  it("measures the difference by the tolerance: the floor, or the percentage of the mean where that is more", () => {
    const cells = [
      ["Measure", "Tolerance"],
      ["Bust", '1/4"'],
      ["Waist", "2%"],
    ];
    const [bust, waist] = compare(chart, 0, 1, readTolerances(cells, chart));
    expect(bust?.ofTolerance).toBeCloseTo(2, 9);
    expect(waist?.ofTolerance).toBe(0);
    const other = compare(chart, 1, 2, readTolerances(cells, chart))[1];
    // 10 mm of 2 % of the mean of 100 and 110 mm.
    expect(other?.ofTolerance).toBeCloseTo(10 / 2.1, 9);
  });

  it("knows no tolerance for a measure that nobody knows", () => {
    expect(compare(chart, 0, 1)[2]).toMatchObject({ deltaMm: 3, percent: 10, ofTolerance: Number.NaN });
  });

  it("leaves open what rests on a missing reading", () => {
    expect(compare(chart, 0, 2)[0]).toMatchObject({
      targetMm: Number.NaN,
      deltaMm: Number.NaN,
      percent: Number.NaN,
      ofTolerance: Number.NaN,
    });
  });

  it("turns the signs round when base and target change places", () => {
    const there = compare(chart, 0, 1);
    const back = compare(chart, 1, 0);
    there.forEach(({ deltaMm, ofTolerance }, i) => {
      expect(back[i]?.deltaMm).toBeCloseTo(-deltaMm, 12);
      expect(back[i]?.ofTolerance).toEqual(ofTolerance);
    });
  });
});
