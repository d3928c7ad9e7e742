import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { partOptions } from "../../../taskpane/groups/parts.ts";
import { readGroups } from "../../../taskpane/groups/readGroups.ts";
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

  test("is empty without a chart", async () => {
    const read = await readGroups(
      openBook(createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] }))(),
      {},
    );
    expect(read).toMatchObject({ figures: undefined, failure: undefined, charts: [] });
  });
});
