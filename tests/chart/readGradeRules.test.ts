import { describe, expect, test } from "vitest";
import { defaultGradeRules } from "../../addin/chart/gradeBlocks.ts";
import { readGradeRules, readGradeRuleTable } from "../../addin/chart/readGradeRules.ts";

const headings = ["Piece", "Point", "Measure", "Share across", "Share along"];

describe("a table of grade rules with rows that cannot be used", () => {
  const cells = [
    headings,
    ["Sleeve", "Wrist at seam", "Wrist", "1/2", ""],
    ["Slevee", "Wrist at seam", "Wrist", "1/2", ""],
    ["Skirt front", "Waist at sied", "Waist", "1/4", ""],
    ["Skirt front", "Waist at side", "Whist", "1/4", ""],
    ["Sleeve", "Underarm", "Upper arm", 1.5, ""],
    ["Sleeve", "Wrist at seam", "wrist girth", "1/2", ""],
  ];

  test("names row and column of each, and keeps the rows that can be used", () => {
    const { rules, problems } = readGradeRuleTable(cells);
    expect(rules.filter(({ row }) => row !== undefined)).toEqual([
      { piece: "Sleeve", point: "Wrist at seam", measure: "wristGirth", across: 0.5, along: 0, row: 1 },
    ]);
    expect(problems.map(({ row, column, piece }) => [row, column, piece])).toEqual([
      [2, 0, undefined],
      [3, 1, "Skirt front"],
      [4, 2, "Skirt front"],
      [5, 3, "Sleeve"],
      [6, undefined, "Sleeve"],
    ]);
    expect(problems[0]?.message).toMatch(/^Row 3 of the grade rules, Piece: “Slevee” is not a piece/);
    expect(problems[3]?.message).toContain("more than the whole change");
    expect(problems[4]?.message).toContain("is in row 2 too");
  });

  test("leaves the pieces that it does not name to the usual rules, and those that it names to itself", () => {
    const { rules, pieces } = readGradeRuleTable(cells);
    expect(pieces).toEqual(["Sleeve", "Skirt front"]);
    expect(rules.some(({ piece }) => piece === "Skirt front")).toBe(false);
    const bodice = (each: { piece: string }) => each.piece === "Bodice front";
    expect(rules.filter(bodice)).toEqual(defaultGradeRules.filter(bodice));
  });

  test("is refused as a whole where every row must be sound", () => {
    expect(() => readGradeRules(cells)).toThrow(/“Slevee” is not a piece .*There are 4 more to mend\.$/u);
    expect(() => readGradeRuleTable([headings])).toThrow("headings but no rows");
  });
});
