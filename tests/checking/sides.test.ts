import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { measureById } from "../../addin/measures/dictionary.ts";

const flagsOf = (headings: readonly string[], ...rows: readonly (number | string | undefined)[][]) =>
  checkChart(readChart([["Figure", ...headings], ...rows])).filter(
    ({ kind }) => kind === "left and right differ",
  );
const thigh = measureById("thighGirth")?.tolerance ?? { floorMm: Number.NaN, percent: Number.NaN };
/** Left reading of 100 mm and a right one that is as far apart as the tolerance allows. */
const just = (() => {
  const byPercent = (100 * (1 + thigh.percent / 200)) / (1 - thigh.percent / 200);
  return Math.max(100 + thigh.floorMm, byPercent) - 1e-6;
})();

describe("left and right", () => {
  it("are flagged where they differ by more than the tolerance, with both readings", () => {
    const flags = flagsOf(["Thigh left", "Thigh right"], ["Mira", 100, 112], ["Tola", 100, 100]);
    expect(flags).toMatchObject([
      { figure: "Mira", row: 1, column: 2, measure: "Thigh right", readingMm: 112, corrections: [] },
    ]);
    expect(flags[0]?.why).toMatch(/^Thigh left is 100 mm, Thigh right 112 mm: /);
  });

  it("may differ by the tolerance, and no more", () => {
    expect(flagsOf(["Thigh left", "Thigh right"], ["Mira", 100, just])).toEqual([]);
    expect(flagsOf(["Thigh left", "Thigh right"], ["Mira", 100, just + 1e-3])).toHaveLength(1);
  });

  it("are compared in any order, writing and unit", () => {
    const flags = flagsOf(
      ["R thigh (cm)", "Waist", "Left thigh (in)"],
      ["Mira", 10, 60, 5],
      ["Tola", 10.16, 60, 4],
    );
    expect(flags).toMatchObject([{ figure: "Mira", column: 3 }]);
    expect(flags[0]?.why).toContain("R thigh 10 cm");
  });

  it("are not compared with a missing reading, another measure, or a column without a side", () => {
    expect(flagsOf(["Thigh left", "Thigh right"], ["Mira", 100, undefined])).toEqual([]);
    expect(flagsOf(["Thigh left", "Knee right"], ["Mira", 100, 60])).toEqual([]);
    expect(flagsOf(["Thigh", "Thigh right"], ["Mira", 100, 140])).toEqual([]);
  });

  it("that differ on most figures are one flag on the column", () => {
    const rows = ["Mira", "Tola", "Wren"].map((name) => [name, 100, 120]);
    const flags = flagsOf(["Thigh left", "Thigh right"], ...rows);
    expect(flags).toMatchObject([{ figure: "", row: 0, column: 2 }]);
    expect(flags[0]?.why).toContain("3 of 3 figures");
  });
});
