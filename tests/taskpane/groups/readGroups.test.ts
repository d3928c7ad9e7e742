import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { columnsOfPart } from "../../../addin/similarity/columns.ts";
import { groupingAt, groupTree } from "../../../taskpane/groups/grouping.ts";
import { planBodyFormula } from "../../../taskpane/groups/writeSheet.ts";
import { partOptions } from "../../../taskpane/groups/parts.ts";
import type { ChosenForGroups } from "../../../taskpane/groups/readGroups.ts";
import { readGroups, estimateWords } from "../../../taskpane/groups/readGroups.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { sheetOf } from "../fit/wardrobe.ts";
import { figures, tolerances, workbookOf } from "./grouped.ts";

describe("what the workbook holds for groups", () => {
  test("takes the chart and the tolerances of the demo, with their classes of garments", async () => {
    const { figures: read, failure } = await readGroups(openBook(createMemoryWorkbook(demoWorkbook()))(), {});
    expect(failure).toBeUndefined();
    expect(read?.table.name).toBe("Figures");
    expect(read?.tolerancesTable?.name).toBe("Tolerances");
    const parts = partOptions(read?.garments ?? []).map(([part]) => part);
    expect(parts).toEqual(expect.arrayContaining(["body", "head", "Loose clothes", "Hats"]));
  });

  test("can do without tolerances, and goes by the usual ones where the user wants that", async () => {
    const none = await readGroups(
      openBook(createMemoryWorkbook({ sheets: [sheetOf("Figures", figures)] }))(),
      {},
    );
    expect(none.figures).toMatchObject({ tolerancesTable: undefined, tolerances: undefined, garments: [] });
    const chosen = await readGroups(openBook(createMemoryWorkbook(workbookOf()))(), { tolerances: "" });
    expect(chosen.figures?.tolerancesTable).toBeUndefined();
    expect(chosen.toleranceTables.map(({ name }) => name)).toEqual(["Tolerances"]);
  });

  test("says which table is at fault", async () => {
    const zero = tolerances.map((row, i) => (i === 2 ? ["Waist", 0] : row));
    const read = await readGroups(openBook(createMemoryWorkbook(workbookOf(figures, zero)))(), {});
    expect(read.figures).toBeUndefined();
    expect(read.failure).toMatch(/^Table Tolerances: .*Waist.*“0” is not above 0/);
  });

  test("leaves estimates out unless they are asked to count, and says so", async () => {
    const guessed = figures.map((row) => (row[0] === "Dipper" ? ["Dipper", 111, "~ 136", 100, 140] : row));
    const workbook = createMemoryWorkbook(workbookOf(guessed));
    const answer = async (chosen: ChosenForGroups) => {
      const read = (await readGroups(openBook(workbook)(), chosen)).figures!;
      const columns = columnsOfPart(read.chart, "body", read);
      const groups = groupingAt(groupTree(read.chart, columns, "complete"), 1);
      const at = (name: string) => groups[read.chart.figures.indexOf(name)];
      return { says: estimateWords(read.estimates), isOne: at("Dipper") === at("Linnet"), read };
    };
    const out = await answer({});
    expect(out).toMatchObject({
      says: "1 takes no part in what follows",
      isOne: false,
    });
    const counted = await answer({ estimates: true });
    expect(counted).toMatchObject({
      says: "1 counts as if measured: what follows rests on guesses too",
      isOne: true,
    });
    const input = await readGroups(openBook(workbook)(), { estimates: true });
    const sheet = { name: "Next", title: "Next", what: "list", values: [["Figure"]], widths: [80] };
    const next = { name: "FIT.MEASURENEXT", more: [], part: "body" };
    expect(() => planBodyFormula(sheet, next, input, counted.read)).toThrow(/leaves estimates out/);
    expect(planBodyFormula(sheet, next, input, out.read).preview).toContain("FIT.MEASURENEXT");
  });

  test("is empty without a chart", async () => {
    const read = await readGroups(
      openBook(createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] }))(),
      {},
    );
    expect(read).toMatchObject({ figures: undefined, failure: undefined, charts: [] });
  });
});
