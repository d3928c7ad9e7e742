import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { Writing } from "../../../taskpane/shell/writing.ts";
import { gradeFunction } from "../../../functions/grade.ts";
import { pieceChoices } from "../../../taskpane/grade/garments.ts";
import { placeOfFigure } from "../../../taskpane/grade/chosenFigure.ts";
import { ownRules, readGrading } from "../../../taskpane/grade/readGrading.ts";
import { mismatchProblems } from "../../../taskpane/grade/ruleProblems.ts";
import { gradeRulesStarter } from "../../../taskpane/grade/rulesStarter.ts";
import type { GradeToWrite } from "../../../taskpane/grade/writeGrade.ts";
import { planGrade } from "../../../taskpane/grade/writeGrade.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { sheetOf } from "../fit/wardrobe.ts";
import { chart, figures } from "./figures.ts";

const rules: Cells = [
  ["Piece", "Point", "Measure", "Share across", "Share along"],
  ["Skirt front", "Waist at side", "Waist", "1/4", 0],
  ["Skirt front", "Hip at side", "Hip", 0.3, 0],
  ["Skirt back", "Waist at side", "Waist", 0.25, 0],
  ["Skirt back", "Hip at side", "Hip", "25%", 0],
  ["Skirt back", "Hem at side", "Hip", "25%", 0],
  ["Skirt front", "Hem at side", "Hip", "25%", 0],
];

const withRules = (cells: Cells) =>
  createMemoryWorkbook({ sheets: [sheetOf("Figures", figures), sheetOf("MyRules", cells)] });

describe("what the workbook holds for grading", () => {
  test("is the usual rules until there is a table of them", async () => {
    const workbook = createMemoryWorkbook({ sheets: [sheetOf("Figures", figures)] });
    const before = await readGrading(openBook(workbook)(), {});
    expect(before.ruleSet).toBe(ownRules);
    const { edits, table } = gradeRulesStarter({ sheets: before.sheets, tables: ["Figures"] });
    await workbook.apply("Add a table of grade rules", edits);
    const after = await readGrading(openBook(workbook)(), {});
    expect(after.ruleSet.table?.name).toBe(table);
    expect(after.ruleSet.problems).toEqual([]);
    expect(after.ruleSet.mismatches).toEqual([]);
    expect(after.ruleSet.pieces).toEqual(ownRules.pieces);
    expect((await readGrading(openBook(workbook)(), { rules: "" })).ruleSet).toBe(ownRules);
    expect(await workbook.undo()).toBe("Add a table of grade rules");
    expect((await readGrading(openBook(workbook)(), {})).ruleSet).toBe(ownRules);
  });

  test("says where an edited set does not add up, by how much, and in which rows", async () => {
    const { ruleSet } = await readGrading(openBook(withRules(rules))(), {});
    expect(ruleSet.problems).toEqual([]);
    const [problem, ...others] = mismatchProblems(ruleSet.mismatches, chart, 0, [1]);
    expect(others).toEqual([]);
    // Twice 0.3 and twice 0.25 are 110 % of the hip; a tenth of 20 mm is 2 mm.
    expect(problem?.message).toBe(
      "Rows 3, 5 of the grade rules: at the hip line the pieces of the fitted skirt add up to 110 % of the change of Hip instead of 100 %, 10 % or 2 mm too much.",
    );
    expect(problem?.rows).toEqual([2, 4]);
  });

  test("keeps a piece back whose rows cannot all be used, and names the cell", async () => {
    const { ruleSet } = await readGrading(
      openBook(withRules([...rules, ["Skirt back", "Hem at centre", "Wasit to knee", 0, -1]]))(),
      {},
    );
    expect(ruleSet.waiting).toEqual(["Skirt back"]);
    expect(ruleSet.pieces.map(({ name }) => name)).not.toContain("Skirt back");
    expect(ruleSet.mismatches).toEqual([]);
    expect(ruleSet.problems[0]).toMatchObject({ row: 7, column: 2 });
    expect(ruleSet.problems[0]?.message).toContain("“Wasit to knee” is not a measure");
  });

  test("falls back on the usual rules, and says why, where a table holds none", async () => {
    const { ruleSet } = await readGrading(openBook(withRules(rules.slice(0, 1)))(), {});
    expect(ruleSet.failure).toMatch(/^Table MyRules: The grade rules have headings but no rows/);
    expect(ruleSet.rules).toBe(ownRules.rules);
  });

  test("is nothing in an empty workbook, without a failure", async () => {
    const input = await readGrading(
      openBook(createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] }))(),
      {},
    );
    expect(input).toMatchObject({ figures: undefined, failure: undefined });
  });

  test("of the demo can all be used", async () => {
    const input = await readGrading(openBook(createMemoryWorkbook(demoWorkbook()))(), {});
    expect(input.failure).toBeUndefined();
    expect(input.ruleSet.problems).toEqual([]);
    expect(input.ruleSet.mismatches).toEqual([]);
    expect(input.toleranceCells?.name).toBe("Tolerances");
  });
});

describe("the choices", () => {
  test("are garments, their pieces one by one, and all", () => {
    const choices = pieceChoices(ownRules.pieces);
    expect(choices[0]).toMatchObject({ words: "Bodice", name: "Bodice" });
    expect(choices[0]?.pieces.map(({ name }) => name)).toEqual(["Bodice front", "Bodice back"]);
    expect(choices[1]?.words).toBe("Bodice front alone");
    expect(choices.at(-1)?.pieces).toBe(ownRules.pieces);
    expect(new Set(choices.map(({ key }) => key)).size).toBe(choices.length);
  });

  test("find a figure again where rows have moved, and none where it is gone", () => {
    const names = ["Brae", "Ardmoor"];
    expect(placeOfFigure(names, undefined, 1)).toBe(1);
    expect(placeOfFigure(["Brae"], undefined, 1)).toBe(0);
    expect(placeOfFigure(names, { place: 0, name: "Ardmoor" }, 0)).toBe(1);
    expect(placeOfFigure(names, { place: 0, name: "Corrie" }, 0)).toBeUndefined();
  });
});

describe("writing the grade", () => {
  const given: GradeToWrite = {
    ...{ chart, base: 0, targets: [2], rules: undefined, tolerances: undefined, pieces: "Fitted skirt" },
    ...{ figures: { name: "Figures", values: figures }, measures: undefined, allowance: "" },
    sheets: ["Figures sheet", "Grade"],
  };

  test("says the formulas and where they stand, and writes them as one action", async () => {
    const plan = planGrade("formulas", given);
    expect(plan.preview).toContain(
      'On the new sheet “Grade 2”: =FIT.GRADE(Figures[#All], "Ardmoor", "Corrie", "Fitted skirt") fills A4:F15; ',
    );
    expect(plan.preview).toMatch(/=FIT\.RESIZE\(Figures\[#All\], "Ardmoor", "Corrie"\) fills H4:O\d+\.$/);
    const workbook = createMemoryWorkbook({
      sheets: [sheetOf("Figures", figures), { name: "Grade", cells: [] }],
    });
    await workbook.apply(plan.label, plan.edits());
    expect(await workbook.sheets()).toEqual(["Figures sheet", "Grade", "Grade 2"]);
    await workbook.undo();
    expect(await workbook.sheets()).toEqual(["Figures sheet", "Grade"]);
  });

  test("writes the same as values", () => {
    const cells = sheetCells(planGrade("values", given), "Grade 2");
    const table = gradeFunction.compute([figures, "Ardmoor", "Corrie", "Fitted skirt"]);
    const shown = cells.slice(3).map((row) => row.map((cell) => cell?.value ?? ""));
    expect(shown.slice(0, 12).map((row) => row.slice(0, 6))).toEqual(table);
    expect(shown.map((row) => row[7])).toContain("Print setting");
  });

  test("names tolerances, rules, measures and allowance, and several targets", () => {
    const plan = planGrade("formulas", {
      ...{ ...given, targets: [2, 1], measures: ["Waist", "Hip"], allowance: "6 mm" },
      tolerances: {
        name: "Tol",
        values: [
          ["Measure", "Tolerance"],
          ["Hip", 3],
        ],
      },
      rules: { name: "GradeRules", values: rules },
    });
    expect(plan.preview).toContain(
      '=FIT.GRADE(Figures[#All], "Ardmoor", "Corrie, Brae", GradeRules[#All], Tol[#All])',
    );
    expect(plan.preview).toContain(
      '=FIT.RESIZE(Figures[#All], "Ardmoor", "Brae", "Waist, Hip", "6 mm", Tol[#All])',
    );
    expect(plan.preview).toContain("every piece that the table GradeRules names");
    const [formulas] = sheetCells(plan, "Grade 2").slice(3);
    // Eight columns of the grade and eight of each print scale, an empty one between.
    expect(formulas?.flatMap((cell, i) => (cell?.formula ? [i] : []))).toEqual([0, 9, 18]);
  });

  test("refuses what a formula would read otherwise, and says what to do", () => {
    const twice = [...figures, ["Ardmoor", 400, 180, 140, 200, 44, 140]];
    const values = { name: "Figures", values: twice };
    const named = { ...chart, figures: [...chart.figures, "Ardmoor"] };
    expect(() => planGrade("values", { ...given, figures: values, chart: named, targets: [4] })).toThrow(
      "“Ardmoor” is in the chart twice",
    );
    const comma = { ...chart, figures: ["Ardmoor", "Brae, tall", "Corrie"] };
    expect(() => planGrade("formulas", { ...given, chart: comma, targets: [1, 2] })).toThrow(
      "has a comma in its name",
    );
    const bad = {
      name: "Tol",
      values: [
        ["Measure", "Tolerance"],
        ["Hip", -3],
      ],
    };
    expect(() => planGrade("formulas", { ...given, tolerances: bad })).toThrow("is not above 0");
  });
});

function sheetCells(plan: Writing, name: string) {
  const edits = plan.edits();
  const found = edits.flatMap((edit) =>
    edit.kind === "sheet" && edit.sheet.name === name ? [edit.sheet] : [],
  );
  return found[0]?.cells ?? [];
}
