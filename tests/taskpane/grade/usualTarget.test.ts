import { describe, expect, test } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readTolerances } from "../../../addin/chart/tolerances.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { usualTarget } from "../../../taskpane/grade/usualTarget.ts";
import { tableCells } from "../../../addin/standalone/workbooks/calculate.ts";

describe("the figure that a grade leads to before one is chosen", () => {
  test("has another body, and no reading that looks like a slip", () => {
    const chart = readChart(tableCells(demoWorkbook(), "Figures"));
    const tolerances = readTolerances(tableCells(demoWorkbook(), "Tolerances"), chart);
    // The figures before have planted slips or the body of the first.
    expect(chart.figures[usualTarget(chart, 0, tolerances)]).toBe("Garlow");
  });

  test("is the first other one where all share a body", () => {
    const chart = readChart([
      ["Figure", "Bust", "Waist", "Hip"],
      ["Brae", 180, 130, 190],
      ["Ardmoor", 180, 130.5, 190],
      ["Corrie", 180.5, 130, 190],
    ]);
    expect(usualTarget(chart, 0)).toBe(1);
    expect(usualTarget(chart, 1)).toBe(0);
  });

  test("is the base itself in a chart of one", () => {
    const chart = readChart([
      ["Figure", "Bust"],
      ["Brae", 180],
    ]);
    expect(usualTarget(chart, 0)).toBe(0);
  });
});
