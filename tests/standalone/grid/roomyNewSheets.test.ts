import { InsertSheetCommand } from "@univerjs/sheets";
import { expect, it } from "vitest";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import { openHeadless } from "./headless.ts";

it("gives a sheet that the user adds room for a table of a hundred figures across", async () => {
  const grid = openHeadless({ sheets: [{ name: "One", cells: [] }] });
  await grid.command(InsertSheetCommand.id, { unitId: grid.unit.unitId, sheet: { name: "Two" } });
  expect(sheetOf(grid.unit, "Two").getColumnCount()).toBeGreaterThan(100);
  expect(sheetOf(grid.unit, "Two").getRowCount()).toBeGreaterThanOrEqual(1000);
  grid.close();
});
