import { describe, expect, it } from "vitest";
import { exampleChart } from "../../functions/exampleChart.ts";
import { gradeFunction } from "../../functions/grade.ts";

const headings = ["Piece", "Point", "Measure", "Share across", "Share along"];
const grade = (...raw: readonly unknown[]) => {
  const table = gradeFunction.compute(raw);
  return Array.isArray(table) ? table : [];
};
const withRules = (...rules: readonly (readonly unknown[])[]) =>
  grade(exampleChart, "Linnet", "Teal", [headings, ...rules]);
const at = (rows: readonly (readonly unknown[])[], point: string) => rows.find((row) => row[1] === point);

describe("GRADE", () => {
  it("puts a quarter of the bust on each half front and half back", () => {
    const rows = grade(exampleChart, "Linnet", "Teal", "bodice");
    expect(rows.filter((row) => row[1] === "Underarm").map((row) => [row[0], row[2]])).toEqual([
      ["Bodice front", 13.75],
      ["Bodice back", 13.75],
    ]);
  });

  it("reads shares as fractions, decimals and percentages", () => {
    const across = (share: unknown) =>
      at(withRules(["Skirt front", "Hip at side", "Hip", share, 0]), "Hip at side")?.[2];
    expect(["1/4", "¼", 0.25, "25%", "25 %"].map(across)).toEqual([15, 15, 15, 15, 15]);
    expect(across("−1/4")).toBe(-15);
  });

  it("tells at the row where an edited set breaks a girth, and by how much", () => {
    const rows = withRules(
      ["Bodice front", "Underarm", "Bust", 0.3, 0],
      ["Bodice front", "Waist at side", "Waist", "1/4", 0],
    );
    expect(at(rows, "Underarm")?.at(-1)).toBe(
      "Row 2 of the grade rules: at the bust line the pieces of the bodice add up to 110 % of the change of Bust instead of 100 %, 10 % or 5.5 mm too much.",
    );
    expect(at(rows, "Waist at side")?.at(-1)).toBe("");
  });

  it("names whose reading is missing", () => {
    const chart = [
      ["Figure", "Waist", "Hip", "Waist to hip"],
      ["Wren", 100, 140, 30],
      ["Rook", 120, 170, ""],
    ];
    expect(at(grade(chart, "Wren", "Rook", "Skirt back"), "Hip at side")).toEqual([
      ...["Skirt back", "Hip at side", 7.5, "", "mm", "Waist to hip is not known of Rook."],
    ]);
  });

  it("leaves out pieces of which nothing is known, unless they are asked for", () => {
    const pieces = new Set(grade(exampleChart, "Linnet", "Teal").map(([piece]) => piece));
    expect(pieces.has("Stocking")).toBe(false);
    expect(pieces.has("Trousers back")).toBe(true);
    expect(() => grade(exampleChart, "Linnet", "Teal", "Stocking")).toThrow(
      /None of the measures that move these pieces is known of both figures/,
    );
  });

  it("answers in the unit of the chart, and in mm where its columns differ", () => {
    const inches = [
      ["Figure", "Bust (in)", "Waist (in)"],
      ["Wren", 30, 22],
      ["Rook", 32, 24],
    ];
    expect(at(grade(inches, "Wren", "Rook", "Bodice"), "Underarm")?.slice(2, 5)).toEqual([0.5, "", "in"]);
    const mixed = [["Figure", "Bust (in)", "Waist (mm)"], ...inches.slice(1)];
    expect(at(grade(mixed, "Wren", "Rook", "Bodice"), "Underarm")?.slice(2, 5)).toEqual([12.7, "", "mm"]);
  });

  it.each([
    [
      "an unknown piece",
      ["Bodise front", "Underarm", "Bust", 0.25, 0],
      /Row 2 of the grade rules, Piece: “Bodise front”.*“Bodice front”/,
    ],
    [
      "an unknown point",
      ["Sleeve", "Underam", "Bust", 0.25, 0],
      /Row 2 of the grade rules, Point: “Underam”.*“Underarm”/,
    ],
    [
      "an unknown measure",
      ["Sleeve", "Underarm", "Bustt", 0.25, 0],
      /Row 2 of the grade rules, Measure: “Bustt”.*“Bust”/,
    ],
    [
      "more than the whole",
      ["Sleeve", "Underarm", "Bust", 1.5, 0],
      /Row 2 of the grade rules, Share across: “1.5” is more than the whole/,
    ],
    ["a date", ["Sleeve", "Underarm", "Bust", 0, 46113], /Share along: “46113”.*become a date/],
    ["words", ["Sleeve", "Underarm", "Bust", "half", 0], /“half” is not a percentage/],
    ["an error", ["Sleeve", "Underarm", "Bust", { error: "#REF!" }, 0], /#REF!/],
  ])("refuses %s in words, at the row", (_, rule, message) => {
    expect(() => withRules(rule)).toThrow(message);
  });

  it("refuses a rule twice, a table without a heading, and one figure as base and target", () => {
    const rule = ["Sleeve", "Underarm", "Upper arm", 0.5, 0];
    expect(() => withRules(rule, rule)).toThrow(/Row 3 of the grade rules: .* is in row 2 too/);
    expect(() => grade(exampleChart, "Linnet", "Teal", [headings.slice(0, 4), rule])).toThrow(
      /“Share along”/,
    );
    expect(() => grade(exampleChart, "Linnet", "Linnet")).toThrow(/both base and target/);
    expect(() => grade(exampleChart, "Linnet", "Teal", "Bodise")).toThrow(/“Bodise”.*Did you mean “Bodice”/);
  });
});
