import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { gradeRun, unevenMeasures } from "../../addin/grading/gradeRun.ts";
import { stepsFunction } from "../../functions/steps.ts";

describe("a run of figures", () => {
  /** Misses sizes in inches: the table “Misses Sizing” of sewingscholar.blogspot.com, 28 February 2011. */
  const misses = readChart([
    ["Size", "Bust (in)", "Waist (in)", "Hip (in)"],
    ["6", 30.5, 23, 32.5],
    ["8", 31.5, 24, 33.5],
    ["10", 32.5, 25, 34.5],
    ["12", 34, 26.5, 36],
  ]);

  it("of a published size chart needs no new draft at any step", () => {
    expect(gradeRun(misses, misses.measures).map(({ scale }) => scale.verdict)).toEqual([
      "one scale",
      "one scale",
      "one scale",
    ]);
  });

  it("shows where its steps are uneven: 1 and 1 1/2 in", () => {
    const uneven = unevenMeasures(gradeRun(misses, misses.measures), misses.measures);
    expect(uneven.map(({ column }) => column.heading)).toEqual(["Bust", "Waist", "Hip"]);
    for (const { leastMm, mostMm } of uneven) {
      expect(leastMm).toBeCloseTo(25.4, 9);
      expect(mostMm).toBeCloseTo(38.1, 9);
    }
    const even = readChart([
      ["Size", "Bust (in)"],
      ["A", 30.5],
      ["B", 31.7],
      ["C", 32.9],
    ]);
    expect(unevenMeasures(gradeRun(even, even.measures), even.measures)).toEqual([]);
  });

  it("is drafted anew where the shape is another one, and says nothing where nothing is known", () => {
    const chart = readChart([
      ["Figure", "Bust", "Waist", "Hip", "Back waist"],
      ["Wren", 200, 160, 220, 100],
      ["Rook", 220, 176, 242, 110],
      ["Heron", 220, 150, 290, 110],
      ["Taller Heron", 220, 150, 290, 130],
      ["Unmeasured", "", "", "", ""],
    ]);
    const run = gradeRun(chart, chart.measures);
    expect(run.map(({ scale }) => scale.verdict)).toEqual([
      "one scale",
      "draft anew",
      "two scales",
      "not known",
    ]);
    expect(run[0]?.scale.factor).toBeCloseTo(1.1, 12);
  });
});

describe("a run of chosen figures", () => {
  const chart = readChart([
    ["Size", "Bust"],
    ["Large", 220],
    ["Small", 200],
    ["Unmeasured", ""],
    ["Medium", 209],
  ]);

  it("goes in the order given", () => {
    const run = gradeRun(chart, chart.measures, undefined, [1, 3, 0]);
    expect(run.map(({ from, to, deltasMm }) => [from, to, deltasMm[0]])).toEqual([
      ["Small", "Medium", 9],
      ["Medium", "Large", 11],
    ]);
    expect(run[1]?.scale.factor).toBeCloseTo(220 / 209, 12);
    expect(unevenMeasures(run, chart.measures)).toMatchObject([{ leastMm: 9, mostMm: 11 }]);
  });
});

describe("STEPS with advice", () => {
  const chart = [
    ["Figure", "Bust", "Waist", "Hip"],
    ["Wren", 200, 160, 220],
    ["Rook", 220, 176, 242],
    ["Heron", 220, 150, 290],
    ["Stork", 660, 450, 870],
    ["Unmeasured", "", "", ""],
  ];
  const says = (...raw: readonly unknown[]) => {
    const table = stepsFunction.compute(raw);
    return Array.isArray(table) ? table.map((row) => row.at(-1)) : [];
  };

  it("says print or draft anew, with the worst measure, and where steps are uneven", () => {
    const [heading, first, second, third, last] = says(chart, null, "yes");
    expect(heading).toBe("Says");
    expect(first).toBe("Print at 110 %. Nothing is left over.");
    // 220, 176, 242 to 220, 150, 290: at 100 % the bust is right, hip and waist are 48 and 26 mm off.
    expect(second).toMatch(
      /^Draft anew\. No print scale will do: at 100 % Hip is 48 mm too small, Waist is 26 mm too large\. Another step than before: Bust, Waist, Hip\.$/,
    );
    expect(third).toMatch(/^Draft anew\. The best scale, 300 %, is outside 50 to 200 %\./);
    expect(last).toBe("Not known. None of these measures is known of both figures. Measure one on both.");
  });

  it("goes by tolerances of the user’s own", () => {
    const tolerances = [
      ["Measure", "Tolerance"],
      ["Bust", 60],
      ["Waist", 60],
      ["Hip", 60],
    ];
    expect(says(chart, null, "yes", tolerances)[2]).toMatch(/^Print at [\d.]+ %\. At worst/);
  });

  it("is as before without", () => {
    expect(says(chart, null, "no")[0]).toBe("Missing");
    expect(() => says(chart, null, "perhaps")).toThrow(/advice: “perhaps”/);
  });
});
