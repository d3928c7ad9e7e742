import { describe, expect, it } from "vitest";
import { measureColumn } from "../../addin/chart/find.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { figureScale } from "../../addin/grading/scale.ts";
import { steps } from "../../addin/grading/steps.ts";

const chart = readChart([
  ["Size", "Bust", "Waist"],
  ["1", 100, 80],
  ["2", 104, undefined],
  ["3", 110, 90],
]);

describe("steps", () => {
  it("go from each row to the next", () => {
    expect(steps(chart)).toEqual([
      { from: "1", to: "2", deltasMm: [4, Number.NaN] },
      { from: "2", to: "3", deltasMm: [6, Number.NaN] },
    ]);
  });

  it("of the measures wanted, in the order wanted", () => {
    const wanted = ["Waist", "Bust"].map((name) => measureColumn(chart, name));
    expect(steps(chart, wanted)[0]?.deltasMm).toEqual([Number.NaN, 4]);
  });

  it("add up to the difference of the first and the last row", () => {
    const total = steps(chart).reduce((sum, { deltasMm }) => sum + (deltasMm[0] ?? 0), 0);
    expect(total).toBe(10);
  });

  it("of one row are none", () => {
    expect(
      steps(
        readChart([
          ["Size", "Bust"],
          ["1", 100],
        ]),
      ),
    ).toEqual([]);
  });
});

describe("figureScale", () => {
  it("is the x of 1:x", () => {
    expect(figureScale(280, 1680)).toBe(6);
    expect(figureScale(22, 66)).toBe(3);
  });
});
