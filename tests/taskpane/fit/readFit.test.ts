import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { findFitTables, tableFor } from "../../../taskpane/fit/fitTables.ts";
import { readFit } from "../../../taskpane/fit/readFit.ts";
import { easeRulesStarter, garmentClassesStarter } from "../../../taskpane/fit/starterTables.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, ready, sheetOf, wardrobe } from "./wardrobe.ts";

describe("the tables for fit", () => {
  test("are told apart by their headings, whatever they are called", async () => {
    const workbook = createMemoryWorkbook({
      sheets: [sheetOf("Bodies", figures), sheetOf("Spring", patterns), sheetOf("Autumn", patterns)],
    });
    const fit = await readFit(openBook(workbook)(), {});
    expect(fit.used.figures?.name).toBe("Bodies");
    expect(fit.used.patterns?.name).toBe("Spring");
    expect(fit.found.patterns.map(({ name }) => name)).toEqual(["Spring", "Autumn"]);
    expect(fit.fitting?.patterns).toHaveLength(4);
    const other = await readFit(openBook(workbook)(), { patterns: "Autumn" });
    expect(other.used.patterns?.name).toBe("Autumn");
  });

  test("of the usual name come first, and the project’s own rules can be taken back", async () => {
    const content = wardrobe(sheetOf("Patterns_2", patterns));
    const { found } = await readFit(openBook(createMemoryWorkbook(content))(), {});
    expect(tableFor("patterns", found, {})?.name).toBe("Patterns");
    const workbook = createMemoryWorkbook(content);
    await workbook.apply("Add", easeRulesStarter({ sheets: [], tables: [] }).edits);
    expect((await readFit(openBook(workbook)(), {})).used.easeRules?.name).toBe("EaseRules");
    expect((await readFit(openBook(workbook)(), { easeRules: "" })).used.easeRules).toBeUndefined();
  });

  test("take a chart with a code and a class of its own for a chart", () => {
    const table = (name: string, headings: readonly string[]) => ({
      name,
      headings,
      area: { sheet: "Sheet1", row: 0, column: 0, rows: 2, columns: headings.length },
    });
    const chart = table("Bodies", ["Figure", "Code", "Class", "Bust"]);
    const list = table("List", ["Code", "Garment", "Finished bust (in)"]);
    const tolerances = table("Tolerances", ["Measure", "Tolerance"]);
    const found = findFitTables([tolerances, list, chart]);
    expect(found.figures).toEqual([chart]);
    expect(found.patterns).toEqual([list]);
  });

  test("of the demo are found, with patterns that can all be read", async () => {
    const fit = await readFit(openBook(createMemoryWorkbook(demoWorkbook()))(), {});
    expect(fit.used.figures?.name).toBe("Figures");
    expect(fit.used.patterns?.name).toBe("Patterns");
    expect(fit.found.figures.map(({ name }) => name)).toEqual(["Figures"]);
    expect(fit.failure).toBeUndefined();
    expect(fit.problems).toEqual([]);
    expect(fit.hasOwnClasses).toBe(false);
    expect(fit.fitting?.patterns.length).toBeGreaterThanOrEqual(24);
  });

  test("are empty for an empty workbook, without a failure", async () => {
    const fit = await readFit(
      openBook(createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] }))(),
      {},
    );
    expect(fit).toMatchObject({ chart: undefined, fitting: undefined, failure: undefined, problems: [] });
    expect(findFitTables([])).toEqual({ figures: [], patterns: [], easeRules: [], garmentClasses: [] });
  });

  test("name row and column of what cannot be used, and judge the other rows", async () => {
    const bad = [...patterns, ["P5", "Slip", "Dres", undefined, "none", undefined, 90, 120, 95, 140]];
    const fit = await ready({ sheets: [sheetOf("Figures", figures), sheetOf("Patterns", bad)] });
    expect(fit.fitting.patterns).toHaveLength(4);
    expect(fit.problems).toHaveLength(1);
    expect(fit.problems[0]?.message).toMatch(/^Row 6 of the patterns, Garment class: “Dres”/);
  });

  test("say in which table and row a rule is wrong", async () => {
    const rules = [
      ["Garment class", "Measure", "Least %", "Most %"],
      ["Dress", "Waist", "9%", "3%"],
    ];
    const fit = await readFit(openBook(createMemoryWorkbook(wardrobe(sheetOf("MyRules", rules))))(), {});
    expect(fit.fitting).toBeUndefined();
    expect(fit.failure).toMatch(/^Table MyRules: Row 2 of the ease rules, Least %: /);
  });
});

describe("the tables that are offered", () => {
  test("get free names, and change no verdict while they are unchanged", async () => {
    const before = await ready();
    const workbook = createMemoryWorkbook(wardrobe());
    const taken = { sheets: ["Ease rules"], tables: ["easerules"] };
    expect(easeRulesStarter(taken)).toMatchObject({ sheet: "Ease rules 2", table: "EaseRules_2" });
    await workbook.apply("Add the ease rules", easeRulesStarter(taken).edits);
    await workbook.apply("Add the garment classes", garmentClassesStarter(taken).edits);
    const after = await readFit(openBook(workbook)(), {});
    expect(after.used.easeRules?.name).toBe("EaseRules_2");
    expect(after.used.garmentClasses?.name).toBe("GarmentClasses");
    expect(after.hasOwnClasses).toBe(false);
    expect(after.fitting?.patterns.map(({ eases }) => eases.length)).toEqual(
      before.fitting.patterns.map(({ eases }) => eases.length),
    );
  });
});
