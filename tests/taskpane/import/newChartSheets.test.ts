import { describe, expect, it } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { newChartSheets } from "../../../taskpane/import/newChartSheets.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";

const namesOf = async ({ sheets, tables }: ReturnType<typeof openExcel>["workbook"]) => ({
  sheets: await sheets(),
  tables: (await tables()).map(({ name }) => name),
});

describe("a new measurement chart, in Excel", () => {
  it.each(["mm", "cm", "in"] as const)(
    "fills an empty workbook with the starter’s sheets in %s, and goes again",
    async (unit) => {
      const { workbook } = openExcel({ sheets: [{ name: "Sheet1", cells: [] }] });
      const before = await namesOf(workbook);
      const sheets = await newChartSheets(unit, before);
      expect(sheets.length).toBeGreaterThan(10);
      await workbook.apply(
        "Add a new measurement chart",
        sheets.map((sheet) => ({ kind: "sheet", sheet }) as const),
      );
      const { values } = await workbook.readTable("Figures");
      expect(values[0]).toContain(`Bust (${unit})`);
      expect(
        values
          .slice(1)
          .flat()
          .every((cell) => cell === undefined || cell === ""),
      ).toBe(true);
      await workbook.undo();
      expect(await namesOf(workbook)).toEqual(before);
      await workbook.close?.();
    },
  );

  it("is the chart alone, under free names, where a name is taken", async () => {
    const { workbook } = openExcel(demoWorkbook());
    const before = await namesOf(workbook);
    const sheets = await newChartSheets("mm", before);
    expect(sheets.map(({ name, tables }) => [name, tables?.map((table) => table.name)])).toEqual([
      ["Figures 2", ["Figures_2"]],
    ]);
    await workbook.apply("Add", [{ kind: "sheet", sheet: sheets[0]! }]);
    expect((await namesOf(workbook)).sheets).toEqual([...before.sheets, "Figures 2"]);
    await workbook.close?.();
  });
});
