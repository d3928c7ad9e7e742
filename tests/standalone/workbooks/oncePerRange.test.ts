/** How often the formulas of the demo read and prepare what they name, though a host hands the cells over anew to each. */
import { describe, expect, test, vi } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readEaseRules } from "../../../addin/chart/readEaseRules.ts";
import { readGarmentClasses } from "../../../addin/chart/readGarmentClasses.ts";
import { readGradeRules } from "../../../addin/chart/readGradeRules.ts";
import { readPatternTable } from "../../../addin/chart/readPatterns.ts";
import { readGarmentTolerances, readTolerances } from "../../../addin/chart/tolerances.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { prepareFitting } from "../../../addin/fit/match.ts";
import { calculate } from "../../../addin/standalone/workbooks/calculate.ts";

vi.mock("../../../addin/chart/readChart.ts", { spy: true });
vi.mock("../../../addin/chart/readEaseRules.ts", { spy: true });
vi.mock("../../../addin/chart/readGarmentClasses.ts", { spy: true });
vi.mock("../../../addin/chart/readGradeRules.ts", { spy: true });
vi.mock("../../../addin/chart/readPatterns.ts", { spy: true });
vi.mock("../../../addin/chart/tolerances.ts", { spy: true });
vi.mock("../../../addin/fit/match.ts", { spy: true });

/** How often something was read, and how many different ranges there were to read. */
function timesRead(read: (...args: never[]) => unknown) {
  const given = vi.mocked(read).mock.calls.map(([cells]) => JSON.stringify(cells));
  return { times: given.length, ranges: new Set(given).size };
}

describe("the formulas of the demo", () => {
  const workbook = demoWorkbook();
  vi.clearAllMocks();
  const results = calculate(workbook);
  const charts = timesRead(readChart);

  test("are as many as the demo shows", () => {
    expect(results.length).toBeGreaterThanOrEqual(34);
  });

  test("read each chart once: that of the figures, and the one that stands beside an example", () => {
    expect(charts.times).toBe(charts.ranges);
    expect(charts.ranges).toBeLessThanOrEqual(2);
  });

  test.each([
    ["patterns", readPatternTable],
    ["ease rules", readEaseRules],
    ["garment classes", readGarmentClasses],
    ["grade rules", readGradeRules],
    ["tolerances", readTolerances],
    ["tolerances of garments", readGarmentTolerances],
  ])("read the %s once", (_, read) => {
    expect(timesRead(read)).toEqual({ times: 1, ranges: 1 });
  });

  test("make all patterns ready once for the figures as they are, once without doubtful readings and once with these mended", () => {
    const made = vi.mocked(prepareFitting).mock.calls;
    const all = Math.max(...made.map(([patterns]) => patterns.length));
    const whole = made.filter(([patterns]) => patterns.length === all);
    expect(all).toBeGreaterThan(30);
    expect(new Set(whole.map(([, chart]) => chart)).size).toBe(whole.length);
    expect(whole.length).toBeLessThanOrEqual(3);
    // Beside these only what one answer is about, with what is worn under it.
    expect(made.filter(([patterns]) => patterns.length < all && patterns.length > 2)).toEqual([]);
  });

  test("give the same when they are all calculated again, and read nothing more", () => {
    vi.clearAllMocks();
    expect(calculate(workbook)).toEqual(results);
    expect(timesRead(readChart).times).toBe(0);
    expect(timesRead(readPatternTable).times).toBe(0);
    expect(timesRead(readTolerances).times).toBe(0);
  });
});
