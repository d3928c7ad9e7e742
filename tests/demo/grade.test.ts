import { describe, expect, it } from "vitest";
import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import { readGradeRules } from "../../addin/chart/readGradeRules.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { girthMismatches } from "../../addin/grading/girthIdentity.ts";
import { descriptors } from "../../functions/all.ts";
import { calculate, tableCells } from "../../addin/standalone/workbooks/calculate.ts";

type Rows = readonly (readonly unknown[])[];

const workbook = demoWorkbook();
const calculated = calculate(workbook);
const resultOf = (sheet: string, name: string): Rows =>
  calculated.find((each) => each.sheet === sheet && each.formula.startsWith(`=FIT.${name}(`))?.result ?? [];
const row = (rows: Rows, ...first: readonly string[]) =>
  rows.find((each) => first.every((text, i) => each[i] === text));

describe("from the base figure of the demo to a taller one that is slimmer at the hip", () => {
  it("the first figure is the base of its group, and the second is taller", () => {
    const groups = resultOf("Groups", "GROUPS");
    expect(row(groups, "Ardwen")?.[2]).toBe("Ardwen");
    const chart = tableCells(workbook, "Figures");
    const at = chart[0]?.indexOf("Height (in)") ?? -1;
    expect([row(chart, "Ardwen")?.[at], row(chart, "Isolmay")?.[at]]).toEqual(["16", "18 9/16"]);
  });

  it("a print leaves the hip too large, with how much to take in", () => {
    const rows = resultOf("Resize", "RESIZE");
    expect(row(rows, "Verdict")?.at(-1)).toMatch(/^Print at [\d.]+ % .*, then take in Hip by [\d.]+ mm/);
    const [, base, target, , printed, leftOver, ofTolerance] = row(rows, "Hip (mm)") ?? [];
    expect(Number(printed) + Number(leftOver)).toBeCloseTo(Number(target), 9);
    expect(Number(target) / Number(base)).toBeLessThan(Number(row(rows, "Print setting, width")?.[3]) / 100);
    expect(Number(ofTolerance)).toBeGreaterThan(1);
  });

  it("the grade is known at every point but where nobody measured, and says what to take in", () => {
    const rows = resultOf("Grade", "GRADE");
    expect(row(rows, "All pieces", "Print scale")?.at(-1)).toMatch(/, then take in Hip by/);
    const garments = new Set(gradePieces.map(({ garment }) => garment)).size;
    expect(rows).toHaveLength(2 + garments + gradePieces.reduce((sum, { points }) => sum + points.length, 0));
    const unknown = rows.slice(1).filter((each) => each[5] !== "" && each[1] !== "Print scale");
    expect(unknown.map((each) => each[5])).toEqual(["Heel is not known of Isolmay."]);
  });
});

describe("the grade rules", () => {
  it("of the sheet are those that come with Measure Book, and keep every girth", () => {
    const { rules } = readGradeRules(tableCells(workbook, "GradeRules"));
    expect(rules).toMatchObject(defaultGradeRules);
    expect(rules).toHaveLength(defaultGradeRules.length);
    expect(girthMismatches(rules, gradePieces)).toEqual([]);
  });

  it("of the sheet are followed, and a share that breaks a girth is told in the sheet Grade", () => {
    const edited = tableCells(workbook, "GradeRules");
    const at = edited.findIndex(
      ([piece, point, measure]) =>
        `${String(piece)}/${String(point)}/${String(measure)}` === "Bodice front/Underarm/Bust girth",
    );
    expect(at).toBeGreaterThan(0);
    const broken = edited.map((each, i) => (i === at ? each.with(3, 0.3) : each));
    const grade = descriptors.find(({ name }) => name === "GRADE");
    const rows = grade?.compute([tableCells(workbook, "Figures"), "Ardwen", "Isolmay", broken]);
    expect(Array.isArray(rows) && row(rows, "Bodice front", "Underarm")?.slice(2)).toEqual([
      ...[0.3 * 22, 8.5, "mm", expect.stringContaining(`${String(at + 1)}`)],
      "",
    ]);
  });
});

describe("the run of sizes", () => {
  it("has even and uneven steps, and a last one that has to be altered after printing", () => {
    const says = resultOf("Sizes", "STEPS")
      .slice(1)
      .map((each) => String(each.at(-1)));
    expect(says.map((words) => words.startsWith("Print at "))).toEqual([true, true, true, true]);
    expect(says.map((words) => words.includes("then let out Bust"))).toEqual([false, false, false, true]);
    expect(says.map((words) => words.includes("Another step"))).toEqual([false, false, true, true]);
  });

  it("is graded in one table", () => {
    const rows = resultOf("Sizes", "GRADE");
    expect(row(rows, "All pieces", "Print scale")?.at(-1)).toMatch(
      /^Small: print at .* Large: print at .* Extra large: print at .* within tolerance\.$/,
    );
    // A quarter of the change of the waist: 126, 135, 144, 156.
    expect(row(rows, "Skirt back", "Waist at side")?.filter((_, i) => [2, 4, 6].includes(i))).toEqual([
      -2.25, 2.25, 5.25,
    ]);
  });
});
