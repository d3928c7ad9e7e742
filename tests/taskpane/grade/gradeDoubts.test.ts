import { expect, test } from "vitest";
import type { Doubt } from "../../../addin/chart/doubt.ts";
import { defaultGradeRules, gradePieces } from "../../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { printScale } from "../../../addin/grading/printScale.ts";
import { printAdvice } from "../../../addin/grading/printWords.ts";
import { countedMeasures } from "../../../taskpane/grade/countedMeasures.ts";
import { gradeDoubts } from "../../../taskpane/grade/gradeDoubts.ts";

/** Invented: Brill is Arden at 105 %, but for her hip, of which a digit is missing. */
const chartWith = (hip: number) =>
  readChart([
    ["Figure", "Waist (mm)", "Hip (mm)", "Waist to hip (mm)", "Waist to knee (mm)", "Head girth (mm)"],
    ["Arden", 200, 300, 60, 160, 240],
    ["Brill", 210, hip, 63, 168, 252],
  ]);
const chart = chartWith(31);
const pieces = gradePieces.filter(({ garment }) => garment === "Fitted skirt");
const askedOf = (of: typeof chart) => ({
  ...{ chart: of, base: 0, targets: [1], rules: defaultGradeRules, pieces, tolerances: undefined },
  columns: countedMeasures(of, "pieces", {
    rules: defaultGradeRules,
    pieces,
    tolerances: undefined,
    chosen: new Set(),
  }),
});
const doubtAbout = (heading: string, mm?: number): Doubt => {
  const cell = { row: 2, column: chart.measures.find((each) => each.heading === heading)!.position };
  return {
    ...{ cells: [cell], figure: "Brill", says: `${heading} (digit missing)` },
    corrections: mm === undefined ? [] : [{ ...cell, mm }],
  };
};

test("the garment has pieces, and its print is judged by the hip", () => {
  expect(pieces.length).toBeGreaterThan(0);
  expect(askedOf(chart).columns.map(({ heading }) => heading)).toContain("Hip");
});

test("answers of Grade name the doubtful reading, and what the chart that is mended answers", () => {
  const sound = askedOf(chartWith(315));
  const { todo } = printAdvice(printScale(0, 1, sound.columns, undefined));
  expect(todo).toMatch(/^Print at 105 %/);
  expect(gradeDoubts(askedOf(chart), [doubtAbout("Hip", 315)])).toEqual([
    `Rests on a doubtful reading: Brill, Hip (digit missing). Mended as Check suggests, the answer would be “${todo}”, points would move otherwise.`,
  ]);
  expect(gradeDoubts(askedOf(chart), [doubtAbout("Hip")])).toEqual([
    "Rests on a doubtful reading: Brill, Hip (digit missing). Measure it again.",
  ]);
});

test("a reading that no piece follows is no ground, nor is one of another figure", () => {
  expect(gradeDoubts(askedOf(chart), [doubtAbout("Head girth", 250)])).toEqual([]);
  const elsewhere = doubtAbout("Hip", 315);
  expect(gradeDoubts(askedOf(chart), [{ ...elsewhere, cells: [{ row: 7, column: 2 }] }])).toEqual([]);
});
