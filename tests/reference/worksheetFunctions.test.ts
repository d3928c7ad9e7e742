import { describe, expect, it } from "vitest";
import { exampleTolerances } from "../../functions/exampleChart.ts";
import { loadFunctions } from "../functions/loadFunctions.ts";
import { body10Cm } from "./body10.ts";

/** Published values through the built functions.js itself, called as Excel calls it. */
const { registered } = await loadFunctions();
const call = (name: string, ...args: unknown[]): unknown => registered.get(name)?.(...args);
const rowsOf = (result: unknown): unknown[][] =>
  Array.from(result as unknown[][], (row) => Array.from(row)).slice(1);
const column = (values: readonly number[]): number[][] => values.map((value) => [value]);

describe("TREE and GROUPS on ten men and twelve girths, 3 cm of tolerance on each", () => {
  const girths = [
    "Shoulder girth", "Chest", "Waist", "Abdomen", "Hip", "Thigh", "Biceps", "Forearm", "Knee", "Calf", "Ankle", "Wrist",
  ]; // prettier-ignore
  const chart = [
    ["Man", ...girths.map((girth) => `${girth} (cm)`)],
    ...body10Cm.map((row, i) => [`Man ${String(i + 1)}`, ...row]),
  ];
  const tolerances = [exampleTolerances[0], ...girths.map((girth) => [girth, 3])];

  /** R 4.2.2, hclust(dist(x / 3, "maximum"), "complete"), on Heinz et al., J. Statistics Education 11(2), 2003. */
  it("the heights are those of R", () => {
    const heights = rowsOf(call("TREE", chart, tolerances, "all", null)).map((row) => Number(row[3]));
    const published = [4 / 3, 4.7 / 3, 5.5 / 3, 6.4 / 3, 7.7 / 3, 3, 13.4 / 3, 5.8, 19 / 3];
    expect(heights).toHaveLength(published.length);
    heights.forEach((height, i) => expect(height).toBeCloseTo(published[i] ?? Number.NaN, 9));
  });

  it("nobody shares a body at 3 cm; at 6 cm the groups are those of R cut at height 2", () => {
    const groupsAt = (cm: number): unknown[] =>
      rowsOf(call("GROUPS", chart, [tolerances[0], ...girths.map((girth) => [girth, cm])], "all", null)).map(
        (row) => row[1],
      );
    expect(new Set(groupsAt(3)).size).toBe(10);
    const published = [1, 2, 3, 4, 2, 3, 5, 6, 1, 7];
    expect(byFirstAppearance(groupsAt(6))).toEqual(published);
  });
});

describe("TEM", () => {
  /** Ulijaszek & Kerr, British Journal of Nutrition 82 (1999): the formula; the readings are invented. */
  it("of ten readings and their repetition is 0.387298", () => {
    const first = column([80, 120.5, 62, 95.5, 41, 110, 75.5, 88, 54.5, 101]);
    const second = column([80.5, 121, 61.5, 96, 41, 109, 76, 88.5, 55, 100.5]);
    expect(call("TEM", first, second)).toBeCloseTo(0.387298, 6);
  });
});

describe("SCORE", () => {
  /** The eight readings of modifiedZ.test.ts; the score computed in R 4.2.2. */
  it("of the last of eight masses is 29.9627", () => {
    const masses = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
    const scores = Array.from(call("SCORE", column(masses)) as number[][], ([score]) => score ?? Number.NaN);
    expect(scores.at(-1)).toBeCloseTo(29.9627, 4);
    expect(scores.filter((score) => Math.abs(score) > 3.5)).toHaveLength(1);
  });
});

/** Group numbers in the order in which groups first appear, as R gives them. */
function byFirstAppearance(numbers: readonly unknown[]): number[] {
  const seen = [...new Set(numbers)];
  return numbers.map((number) => seen.indexOf(number) + 1);
}
