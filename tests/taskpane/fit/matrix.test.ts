import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { matchAll } from "../../../addin/fit/match.ts";
import { rank } from "../../../addin/fit/verdict.ts";
import { whatFitsFunction } from "../../../functions/whatFits.ts";
import { wardrobeFunction } from "../../../functions/wardrobe.ts";
import { wearersFunction } from "../../../functions/wearers.ts";
import { countRanks, filterMatrix, matchInSteps } from "../../../taskpane/fit/matrix.ts";
import { countVerdicts, wardrobeOf, wearersOf } from "../../../taskpane/fit/ranking.ts";
import { planMatrix } from "../../../taskpane/fit/writeMatrix.ts";
import { garmentClassesStarter } from "../../../taskpane/fit/starterTables.ts";
import { readFit } from "../../../taskpane/fit/readFit.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, ready, sheetOf, wardrobe } from "./wardrobe.ts";

const everything = { garmentClass: undefined, verdict: undefined };

function finished<T>(steps: Generator<number, T>): {
  readonly result: T;
  readonly shares: readonly number[];
} {
  const shares: number[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done) return { result: step.value, shares };
    shares.push(step.value);
  }
}

function rowsOf(table: unknown): readonly (readonly unknown[])[] {
  if (!Array.isArray(table)) throw new Error("That is not a table.");
  return table.slice(1).map((row: unknown) => (Array.isArray(row) ? row : [row]));
}

describe("the matrix", () => {
  test("in steps is the matrix at once", async () => {
    const { fitting } = await ready();
    const { result, shares } = finished(matchInSteps(fitting));
    expect(result.ranks).toEqual(matchAll(fitting).ranks);
    expect(shares.at(-1)).toBe(1);
  });

  test("takes many steps for a large wardrobe", async () => {
    const { fitting } = await ready();
    const many = { ...fitting, patterns: Array.from({ length: 4000 }, () => fitting.patterns).flat() };
    const { result, shares } = finished(matchInSteps(many));
    expect(shares.length).toBeGreaterThan(4);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(result.ranks.slice(-16)).toEqual(matchAll(fitting).ranks);
  });

  test("is filtered by class and by verdict, and loses no pair of the kind", async () => {
    const { fitting } = await ready();
    const match = matchAll(fitting);
    expect(filterMatrix(match, { ...everything, garmentClass: "Dress" }).patterns).toEqual([2, 3]);
    const fits = filterMatrix(match, { ...everything, verdict: "fits" });
    expect(countRanks(match, fits)[rank.fits]).toBe(
      countRanks(match, filterMatrix(match, everything))[rank.fits],
    );
    for (const p of fits.patterns) {
      expect(match.figures.some((_, figure) => match.verdict(p, figure) === "fits")).toBe(true);
    }
    expect(filterMatrix(match, { ...everything, verdict: "too short" })).toEqual({
      patterns: [],
      figures: [],
    });
  });
});

describe("the lists", () => {
  test("are those of WEARERS and WARDROBE, in their order", async () => {
    const { fitting } = await ready();
    const wearers = wearersFunction.compute([patterns, figures, "P1"]);
    expect(wearersOf(fitting, 0).map(({ explanation: e }) => [e.figure, e.verdict])).toEqual(
      rowsOf(wearers).map(([figure, verdict]) => [figure, verdict]),
    );
    const worn = wardrobeFunction.compute([patterns, figures, "Corrie"]);
    expect(wardrobeOf(fitting, 2).map(({ explanation: e }) => [e.pattern, e.verdict])).toEqual(
      rowsOf(worn).map(([code, , verdict]) => [code, verdict]),
    );
  });

  test("are summed up from the best verdict to the worst", () => {
    expect(countVerdicts(["will not go on", "fits", "loose", "fits"])).toEqual([
      { verdict: "fits", count: 2 },
      { verdict: "loose", count: 1 },
      { verdict: "will not go on", count: 1 },
    ]);
  });
});

describe("writing the matrix", () => {
  async function toWrite(content = wardrobe()) {
    const fit = await ready(content);
    const match = matchAll(fit.fitting);
    return {
      match,
      part: filterMatrix(match, everything),
      used: fit.used,
      hasOwnClasses: fit.hasOwnClasses,
      problems: fit.problems.length,
      sheets: fit.sheets,
    };
  }

  test("as values writes what the worksheet function gives, as one action", async () => {
    const workbook = createMemoryWorkbook(wardrobe());
    const plan = planMatrix("values", await toWrite());
    expect(plan.preview).toBe("Writes 4 patterns on 4 figures as words into A4:E8 of the new sheet “Fit”.");
    await workbook.apply(plan.label, plan.edits());
    const { values } = await workbook.readArea({ sheet: "Fit", row: 3, column: 0, rows: 5, columns: 5 });
    expect(values).toEqual(whatFitsFunction.compute([patterns, figures]));
    expect(await workbook.undo()).toBe("Write the fit of 4 patterns on 4 figures");
    expect(await workbook.sheets()).not.toContain("Fit");
  });

  test("as a formula names the tables that are used", async () => {
    const workbook = createMemoryWorkbook(wardrobe());
    const plan = planMatrix("formulas", await toWrite());
    expect(plan.preview).toContain("=FIT.WHATFITS(Patterns[#All], Figures[#All]) into A4");
    expect(plan.preview).toContain("A4:E8");
    await workbook.apply(plan.label, plan.edits());
    const cell = workbook.content().sheets.find(({ name }) => name === "Fit")?.cells[3]?.[0];
    expect(cell).toEqual({ formula: "=FIT.WHATFITS(Patterns[#All], Figures[#All])", style: "heading" });
  });

  test("says when it will be large, and when it is too wide for a sheet", async () => {
    const matrix = await toWrite();
    const wide = (figures: number) => ({
      ...matrix,
      part: { patterns: [0, 1, 2, 3], figures: Array.from({ length: figures }, (_, i) => i % 4) },
    });
    expect(planMatrix("values", wide(16_000)).preview).toBe(
      "Writes 4 patterns on 16,000 figures as words into A4:WQK8 of the new sheet “Fit”.",
    );
    const many = { patterns: Array.from({ length: 7 }, () => 0), figures: wide(16_000).part.figures };
    expect(planMatrix("values", { ...matrix, part: many }).preview).toMatch(/may take a while\.$/);
    // 16,384 columns: “Excel specifications and limits”, support.microsoft.com.
    expect(() => planMatrix("values", wide(16_384))).toThrow("more than a sheet has columns");
  });

  test("takes a free sheet name and keeps to the filters", async () => {
    const matrix = await toWrite(wardrobe({ name: "fit", cells: [] }));
    const part = filterMatrix(matrix.match, { ...everything, garmentClass: "Dress" });
    const plan = planMatrix("values", { ...matrix, part });
    expect(plan.preview).toContain("the new sheet “Fit 2”");
    expect(plan.preview).toContain("2 patterns on 4 figures");
    expect(() => planMatrix("values", { ...matrix, part: { patterns: [], figures: [] } })).toThrow(
      "Nothing is left to write.",
    );
  });

  test("as a formula names the garment classes too where they are the user’s own", async () => {
    const workbook = createMemoryWorkbook(wardrobe());
    await workbook.apply("Add", garmentClassesStarter({ sheets: [], tables: [] }).edits);
    const unchanged = await readFit(openBook(workbook)(), {});
    expect(unchanged.hasOwnClasses).toBe(false);
    const { area } = await workbook.readTable("GarmentClasses");
    await workbook.typeInto({ sheet: area.sheet, row: area.row + 1, column: 2 }, "2");
    const changed = await readFit(openBook(workbook)(), {});
    expect(changed.hasOwnClasses).toBe(true);
    const matrix = { ...(await toWrite()), used: changed.used, hasOwnClasses: true };
    expect(planMatrix("formulas", matrix).preview).toContain(
      "=FIT.WHATFITS(Patterns[#All], Figures[#All], , GarmentClasses[#All]) into A4",
    );
    expect(planMatrix("values", matrix).preview).toMatch(/^Writes 4 patterns/);
  });
});

describe("the error of readings in Fit", () => {
  const names = ["Ardmoor", "Brae", "Corrie", "Dell", "Elm"];
  const five: Cells = [...figures, ["Elm", 110, 136, 101, 141, 35, 23, 151, "no"]];
  const readings: Cells = [
    ["Figure", "Measure", "Reading (mm)", "Date", "By", "Tool"],
    ...names.flatMap((name, i) =>
      [130, 131].map((mm) => [name, "Bust", mm + i, "2026-03-01", "Ida", "tape"]),
    ),
  ];

  test("is that of the table Readings, in the verdicts of the pane and in the formula that is written", async () => {
    const content: WorkbookContent = {
      sheets: [sheetOf("Figures", five), sheetOf("Patterns", patterns), sheetOf("Readings", readings)],
    };
    const fit = await ready(content);
    // Differences of 1 mm on five figures: 0.5 mm², drawn half way to the usual 0.25 mm².
    expect(fit.fitting.readingError.ofMeasures?.bustGirth).toBeCloseTo(Math.sqrt(0.375), 12);
    const match = matchAll(fit.fitting);
    const formula = whatFitsFunction.compute([patterns, five, null, null, readings]) as Cells;
    for (const [p, row] of formula.slice(1).entries())
      expect(row.slice(1)).toEqual(match.figures.map((_, figure) => match.verdict(p, figure)));
    const table = fit.second?.known.table;
    const part = filterMatrix(match, everything);
    const { preview } = planMatrix("formulas", { ...fit, match, part, problems: 0, readings: table });
    expect(preview).toContain("=FIT.WHATFITS(Patterns[#All], Figures[#All], , , Readings[#All]) into A4");
  });

  test("is the usual one without repeats, and the formula names no readings", async () => {
    const fit = await ready();
    expect(fit.fitting.readingError).toEqual({ mm: 0.5, percent: 0.25 });
  });
});
