import { describe, expect, test } from "vitest";
import { defaultGradeRules, gradePieces } from "../../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { printScale } from "../../../addin/grading/printScale.ts";
import { countedMeasures } from "../../../taskpane/grade/countedMeasures.ts";
import { dartsView } from "../../../taskpane/grade/dartsView.ts";
import { gradedPieces } from "../../../taskpane/grade/gradedPieces.ts";
import { flareWords } from "../../../taskpane/grade/flareView.ts";
import { movementWords } from "../../../taskpane/grade/movementWords.ts";
import { allowanceSays, printView } from "../../../taskpane/grade/printView.ts";
import { ownRules } from "../../../taskpane/grade/readGrading.ts";
import { runView } from "../../../taskpane/grade/runView.ts";
import { chart, piecesOf } from "./figures.ts";

const columns = countedMeasures(chart, "body", {
  ...{ rules: ownRules.rules, pieces: [], tolerances: undefined, chosen: new Set() },
});
const view = (base: number, target: number) => printView(printScale(base, target, columns));

describe("the verdict on a print scale", () => {
  test("is a percentage where one scale will do: a figure at 110 % is its base at 110 %", () => {
    const scaled = view(0, 1);
    expect(scaled.headline).toBe("Print at 110 %");
    expect(scaled.detail).toBe("Nothing is left over.");
    expect(scaled.settings).toEqual([{ what: "Print setting", percent: 110, says: "" }]);
    expect(scaled.square).toEqual([
      "Draw a square of 50 mm beside the pattern; on the print each side must measure 55 mm.",
    ]);
    // Geometry: 6 mm printed at 110 % are 6.6 mm.
    expect(allowanceSays(scaled, 6)).toEqual([
      "On paper it becomes 6.6 mm: trim off 0.6 mm along every edge.",
    ]);
  });

  test("names the worst measure and how far off it is where no scale will do", () => {
    const slimmer = view(0, 2);
    expect(slimmer.verdict).toBe("draft anew");
    expect(slimmer.headline).toBe("Draft anew");
    expect(slimmer.detail).toMatch(/^No print scale will do: at .* Hip is \d+(\.\d)? mm too large/);
    expect(slimmer.residuals[0]).toMatchObject({
      measure: "Hip",
      state: "out",
      base: "200 mm",
      target: "190 mm",
    });
  });

  test("says where it rests on few of the measures that count", () => {
    const sparse = readChart([
      ["Figure", "Neck", "Bust", "Waist", "Back waist length"],
      ["Ann", undefined, 180, undefined, undefined],
      ["Cleo", undefined, 126, 100, undefined],
    ]);
    expect(printView(printScale(0, 1, sparse.measures)).detail).toBe(
      "Nothing is left over. ◆ That is judged by 1 of 4 measures: the others are not known of both figures.",
    );
  });

  test("is two settings where girths and lengths go at their own scales", () => {
    // Invented: girths at 110 %, lengths at 130 %.
    const tall = readChart([
      ["Figure", "Bust", "Waist", "Hip", "Back waist length", "Arm length"],
      ["Ardmoor", 180, 140, 200, 90, 140],
      ["Eyot", 198, 154, 220, 117, 182],
    ]);
    const apart = printView(printScale(0, 1, tall.measures));
    expect(apart.headline).toBe("Print at 110 % in width and 130 % in height");
    expect(apart.settings.map(({ percent }) => percent)).toEqual([110, 130]);
    expect(apart.residuals.every(({ state }) => state === "within")).toBe(true);
    expect(allowanceSays(apart, 10)).toEqual([
      "On paper it becomes 11 mm: trim off 1 mm along every upright edge.",
      "On paper it becomes 13 mm: trim off 3 mm along every level edge.",
    ]);
    expect(apart.square[1]).toContain("its height must measure 65 mm");
  });

  test("says that too little is known, and which measure is missing of whom", () => {
    const none = printView(printScale(0, 1, []));
    expect(none.headline).toBe("Not known");
    expect(none.settings).toEqual([]);
    const missing = view(0, 3).residuals.at(-1);
    expect(missing).toMatchObject({ measure: "Hip", state: "missing", words: "not known of the target" });
  });

  test("is no scale at all outside 50 to 200 %", () => {
    const small = readChart([
      ["Figure", "Bust"],
      ["Ardmoor", 180],
      ["Finch", 60],
    ]);
    const far = printView(printScale(0, 1, small.measures));
    expect([far.headline, far.detail.split(".")[0]]).toEqual([
      "Draft anew",
      "The best scale, 33 %, is outside 50 to 200 %",
    ]);
    expect(far.settings).toEqual([]);
  });
});

describe("where a point goes", () => {
  test("is said in words: out is away from the line that the piece is measured from, on either side", () => {
    const moved = (acrossMm: number, alongMm: number, base = 10) =>
      movementWords({ acrossMm, alongMm }, base, "mm");
    expect(moved(3, 0)).toBe("3 mm out");
    expect(moved(-3, -1.5)).toBe("3 mm in, 1.5 mm down");
    expect(moved(-3, 2, -10)).toBe("3 mm out, 2 mm up");
    expect(moved(3, 0, 0)).toBe("3 mm right");
    expect(moved(0.01, 0)).toBe("stays");
    expect(moved(Number.NaN, 2)).toBe("across not known, 2 mm up");
    expect(movementWords({ acrossMm: 6.35, alongMm: 0 }, 10, "in")).toBe('1/4" out');
  });

  test("on a skirt is a quarter of what waist and hip change by", () => {
    const [front] = piecesOf("Skirt front", 0, 2);
    expect(front?.points.map(({ point, words }) => `${point}: ${words}`)).toEqual([
      "Waist at centre: stays",
      "Waist at side: 2.5 mm out",
      "Hip at side: 2.5 mm in, 6 mm down",
      "Hem at side: 2.5 mm in, 20 mm down",
      "Hem at centre: 20 mm down",
    ]);
  });

  test("is told as far as it is known, with what to measure", () => {
    const [front] = piecesOf("Skirt front", 0, 3);
    expect(front?.outlines.corners).toEqual([]);
    expect(front?.missing).toEqual(["Hip is not known of Dell."]);
    expect(front?.points[2]?.words).toBe("across not known, 4.4 mm down");
  });
});

describe("a run of figures", () => {
  // Bust, misses 00 to 20, in inches: spot values of ASTM D5585-11e1.
  const bust = [31.125, 31.75, 33, 34.125, 35.25, 36.25, 37.25, 38.75, 40.375, 42.125, 44, 46];
  const sizes = readChart([
    ["Size", "Bust (in)", "Step (in)"],
    ...bust.map((reading, i) => [`Size ${String(2 * i)}`, reading, 10 + i]),
  ]);
  const run = runView(sizes, { base: 11, targets: [...bust.keys()].slice(0, 11) }, sizes.measures, undefined);

  test("goes from the smallest to the largest, and marks uneven steps", () => {
    expect(run.steps.map(({ way }) => way)[0]).toBe("Size 0 to Size 2");
    expect(run.rows[0]).toEqual({
      measure: "Bust",
      isUneven: true,
      steps: ["5/8", "1 1/4", "1 1/8", "1 1/8", "1", "1", "1 1/2", "1 5/8", "1 3/4", "1 7/8", "2"].map(
        (step) => `+${step}"`,
      ),
    });
    expect(run.rows[1]?.isUneven).toBe(false);
  });

  test("tells figures of another shape from those that a print will do for", () => {
    const figures = runView(chart, { base: 0, targets: [1, 2] }, columns, undefined);
    expect(figures.fromBase.map(({ way, verdict }) => [way, verdict])).toEqual([
      ["Ardmoor to Brae", "one scale"],
      ["Ardmoor to Corrie", "draft anew"],
    ]);
    expect(figures.fromBase[1]?.says).toMatch(/^Draft anew\. No print scale will do: .*Hip is .* too large/);
    expect(figures.fromBase[0]?.says).toBe("Print at 110 %. Nothing is left over.");
  });
});

describe("darts and flared skirts", () => {
  test("take half of the difference at the seams, and say when a dart is too wide to press flat", () => {
    // Geometry: hip 200 and waist 140 differ by 60; half at the seams, 30 over four darts.
    const [ardmoor] = dartsView(chart, "Fitted skirt", [0], 4);
    expect(ardmoor).toMatchObject({ difference: "60 mm", atSeams: "30 mm", intake: "7.5 mm" });
    // 400 mm stands for 1680 mm, 1:4.2; 32 mm at full size are 7.6 mm.
    expect(ardmoor?.widest).toBe("7.6 mm");
    expect(ardmoor?.says).toContain("presses flat");
    expect(dartsView(chart, "Fitted skirt", [0], 2)[0]?.says).toContain("Sew 4 of 7.5 mm");
    expect(dartsView(chart, "Fitted skirt", [3], 4)[0]?.says).toBe("Measure hip of Dell first.");
    expect(dartsView(chart, "Sleeve", [0], 4)).toEqual([]);
  });

  test("have the radius of the part of a circle", () => {
    const eighty = readChart([
      ["Figure", "Waist"],
      ["Gorse", 80],
      ["Heath", undefined],
    ]);
    const cut = { easeMm: 0, allowanceMm: 0 };
    // Geometry, 80 / (2π · part): 12.732, 16.977, 25.465, 50.930.
    expect(flareWords(eighty, 0, { ...cut, part: "full" })).toContain("a radius of 12.7 mm");
    expect(flareWords(eighty, 0, { ...cut, part: "threeQuarters" })).toContain("17 mm");
    expect(flareWords(eighty, 0, { ...cut, part: "half" })).toContain("25.5 mm");
    expect(flareWords(eighty, 0, { ...cut, part: "quarter" })).toContain("50.9 mm");
    expect(flareWords(eighty, 0, { part: "half", easeMm: 2, allowanceMm: 5 })).toBe(
      "Gorse: cut the waist at a radius of 21.1 mm; the seam line lies at 26.1 mm.",
    );
    expect(flareWords(eighty, 0, { part: "full", easeMm: 0, allowanceMm: 20 })).toContain(
      "Take a narrower allowance",
    );
    expect(flareWords(eighty, 1, { ...cut, part: "full" })).toBe("Heath: measure the waist first.");
  });
});

test("a piece whose measures are in inches and in centimetres is told in the unit of most of them", () => {
  const mixed = readChart([
    ["Figure", "Bust (in)", "Waist (in)", "Hip (in)", "Waist to hip (cm)", "Waist to knee (cm)"],
    ["Ardmoor", 7, 5.5, 8, 4.4, 14],
    ["Brae", 8, 6.5, 9, 4.8, 15.4],
  ]);
  const front = gradePieces.filter(({ name }) => name === "Skirt front");
  const [piece] = gradedPieces(mixed, defaultGradeRules, front, 0, 1);
  // Two girths in inches against two lengths in cm: of as many the first in the chart. A quarter of an inch each side.
  expect(piece?.unit).toBe("in");
  expect(piece?.points.find(({ point }) => point === "Waist at side")?.words).toBe('1/4" out');
});
