import { describe, expect, it } from "vitest";
import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { grade, prepareGrading } from "../../addin/grading/grade.ts";
import { pieceOutlines } from "../../addin/grading/pieceOutlines.ts";

const chart = readChart([
  ["Figure", "Waist", "Hip", "Waist to hip", "Waist to knee"],
  ["Wren", 100, 140, 30, 80],
  ["Rook", 120, 150, 40, 100],
]);
const skirt = gradePieces.filter(({ name }) => name === "Skirt front");

describe("outlines of a piece for two figures", () => {
  it("are a quarter of each girth wide, and as long as the figure’s lengths", () => {
    const [drawn] = pieceOutlines(chart, defaultGradeRules, skirt, 0, 1);
    expect(drawn).toEqual({
      ...{ piece: "Skirt front", origin: "centre line, at the waist", missing: [] },
      corners: [
        { point: "Waist at centre", base: [0, 0], target: [0, 0] },
        { point: "Waist at side", base: [25, 0], target: [30, 0] },
        { point: "Hip at side", base: [35, -30], target: [37.5, -40] },
        { point: "Hem at side", base: [35, -80], target: [37.5, -100] },
        { point: "Hem at centre", base: [0, -80], target: [0, -100] },
      ],
    });
  });

  it("differ by the grade at every corner", () => {
    const movements = grade(prepareGrading(chart, defaultGradeRules, skirt), 0, 1);
    const corners = pieceOutlines(chart, defaultGradeRules, skirt, 0, 1)[0]?.corners ?? [];
    expect(corners.map(({ base, target }) => [target[0] - base[0], target[1] - base[1]])).toEqual(
      movements.map(({ acrossMm, alongMm }) => [acrossMm, alongMm]),
    );
  });

  it("are not drawn without a measure that they need; it is named", () => {
    const [sleeve] = pieceOutlines(
      chart,
      defaultGradeRules,
      gradePieces.filter(({ name }) => name === "Sleeve"),
      0,
      1,
    );
    expect(sleeve).toMatchObject({ corners: [], missing: ["wristGirth", "upperArmGirth", "armLength"] });
  });
});
