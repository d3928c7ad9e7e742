import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readReadings } from "../../addin/chart/readReadings.ts";
import { drawnToUsual, feedOf, repeatabilityByPerson, settle } from "../../addin/checking/repeatability.ts";
import { repeatedReadings } from "../../addin/similarity/certainty/repeatedReadings.ts";

/** Six invented figures, their busts read up to four times by two people. */
const names = ["Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel"];
const x = [134, 134.5, 133.5, 96, 95.5, 171.5, 172.5, 152, 152.5, 152, 151, 118, 118, 144.5, 145.5];
const of = [0, 0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 4, 4, 5, 5];
const who = [..."AABAABBABABBBAB"];

const chart = readChart([["Figure", "Bust (mm)"], ...names.map((name) => [name, 150])]);
const table: Cells = [
  ["Figure", "Measure", "Reading (mm)", "By"],
  ...x.map((mm, i) => [names[of[i]!], "Bust", mm, who[i]]),
];
const { readings } = readReadings(table, chart);

describe("repeatability", () => {
  it("of a measure is the standard deviation within figures, as R has it", () => {
    // R 4.2.2: m <- anova(lm(x ~ factor(f))); sqrt(m["Residuals", "Mean Sq"]) 0.559016994375 with 9 degrees of freedom;
    // mean(x) 138.066666667; 100 * sd / mean(x) 0.404889179895. The same as TEM for K readings, Ulijaszek & Kerr 1999.
    const [bust] = repeatedReadings(chart, undefined, readings).errors;
    expect(bust?.technicalErrorMm).toBeCloseTo(0.559016994375, 9);
    expect(bust?.relativePercent).toBeCloseTo(0.404889179895, 9);
    expect(bust?.figures).toBe(6);
    // R: sqrt((5 * 0.5^2 + 9 * 0.3125) / 14).
    expect(bust?.errorMm).toBeCloseTo(0.538682254607, 9);
  });

  it("of a person is that within the figures that they read themselves, as R has it", () => {
    // R 4.2.2: for each person the rows of figures that they read twice or more; r <- residuals(lm(x ~ f)); sqrt(sum(r^2) / df).
    const people = repeatabilityByPerson(readings);
    expect(people.map(({ by }) => by)).toEqual(["A", "B"]);
    expect(people[0]?.tem).toBeCloseTo(0.288675134595, 9);
    expect(people[0]?.relativePercent).toBeCloseTo(0.226708220886, 9);
    expect(people[1]?.tem).toBeCloseTo(0.735980072194, 9);
    expect(people[1]?.relativePercent).toBeCloseTo(0.499816687398, 9);
  });

  it("counts the readings in the table in the place of their mean in the chart, and the chart beside second readings elsewhere", () => {
    // The chart says 150 of all: had it counted, nothing would be left but slips.
    expect(repeatedReadings(chart, undefined, readings).slips).toEqual([]);
    const again = readChart([["Figure", "Bust (mm)"], ...names.map((name) => [name, 151])]);
    const both = repeatedReadings(chart, again, readings.slice(0, 1)).errors[0];
    // Five pairs of 150 and 151, and 134 beside 151, which is a slip.
    expect(both?.figures).toBe(5);
    expect(both?.technicalErrorMm).toBeCloseTo(Math.SQRT1_2, 9);
  });
});

describe("the error that counts", () => {
  it("is the usual one without figures of one’s own, and one’s own with many", () => {
    expect(drawnToUsual(2, 0, 0.5)).toBe(0.5);
    expect(drawnToUsual(2, 5, 0.5)).toBeCloseTo(Math.sqrt((0.25 + 4) / 2), 12);
    expect(drawnToUsual(2, 100_000, 0.5)).toBeCloseTo(2, 3);
  });

  it("lies between both", () => {
    const length = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(length, length, fc.integer({ min: 0, max: 500 }), (own, usual, freedom) => {
        const counts = drawnToUsual(own, freedom, usual);
        expect(counts).toBeGreaterThanOrEqual(Math.min(own, usual) * (1 - 1e-12));
        expect(counts).toBeLessThanOrEqual(Math.max(own, usual) * (1 + 1e-12));
      }),
    );
  });
});

describe("what stands in the chart", () => {
  it("is the mean of two readings, and the median from three on", () => {
    expect(settle([134], 0.5)).toEqual({ kind: "one", mm: 134 });
    expect(settle([134, 135], 0.5)).toEqual({ kind: "mean", mm: 134.5 });
    expect(settle([134, 135, 234], 0.5)).toEqual({ kind: "median", mm: 135 });
    expect(settle([134, 136, 135, 234], 0.5)).toEqual({ kind: "median", mm: 135.5 });
  });

  it("is neither of two that cannot both be right", () => {
    expect(settle([134, 136.5], 0.5)).toEqual({ kind: "mean", mm: 135.25 });
    expect(settle([134, 136.6], 0.5)).toEqual({ kind: "unlike" });
  });

  it("is changed only where the readings say something else", () => {
    const small = readChart([
      ["Figure", "Bust (mm)", "Waist (mm)"],
      ["Ash", 134.5, 100],
      ["Birch", "~ 96", undefined],
    ]);
    const taken = readReadings(
      [
        ["Figure", "Measure", "Reading (mm)"],
        ["Birch", "Waist", 71],
        ["Ash", "Bust", 134],
        ["Ash", "Waist", 101],
        ["Birch", "Bust", 96],
        ["Ash", "Bust", 135],
        ["Ash", "Waist", 131],
      ],
      small,
    );
    const { changes, unlike } = feedOf(small, taken.readings);
    // An estimate of the same length becomes a reading.
    expect(
      changes.map(({ figure, column, beforeMm, mm, how }) => [figure, column.heading, beforeMm, mm, how]),
    ).toEqual([
      [1, "Bust", 96, 96, "one"],
      [1, "Waist", Number.NaN, 71, "one"],
    ]);
    expect(unlike.map(({ figure, column }) => [figure, column.heading])).toEqual([[0, "Waist"]]);
  });
});
