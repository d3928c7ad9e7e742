import { SetRangeValuesCommand } from "@univerjs/sheets";
import { expect, it } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import { descriptors } from "../../../functions/all.ts";
import { openHeadless } from "./headless.ts";

it("calculates only what depends on the cell that was typed into", async () => {
  const called: string[] = [];
  const counted = descriptors.map((descriptor) => ({
    ...descriptor,
    compute: (raw: readonly unknown[]) => {
      called.push(descriptor.name);
      return descriptor.compute(raw);
    },
  }));
  const grid = openHeadless(demoWorkbook(), counted);
  await grid.calculated();
  const type = async (sheet: string, row: number, column: number, value: string | number) => {
    called.length = 0;
    const calculated = grid.calculated();
    await grid.command(SetRangeValuesCommand.id, {
      unitId: grid.unit.unitId,
      subUnitId: sheetOf(grid.unit, sheet).getSheetId(),
      range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
      value: { v: value, f: null },
    });
    await calculated;
    return new Set(called);
  };

  // Wearers B3: the code of the pattern.
  expect(await type("Wearers", 2, 1, "D-2")).toEqual(new Set(["WEARERS"]));

  // Patterns, first row of the table, its title: read by all that reads patterns, and by nothing else.
  const ofPatterns = await type("Patterns", 3, 1, "A new title");
  expect(ofPatterns).toContain("WHATFITS");
  expect(ofPatterns).not.toContain("GROUPS");
  expect(ofPatterns).not.toContain("FLAGS");
  grid.close();
});

it("says when all that was typed is calculated, however short before it is asked", async () => {
  const cells = [[{ value: 1 }, { formula: "=A1*2" }, { formula: "=SEQUENCE(1,2)*A1" }]];
  const grid = openHeadless({ sheets: [{ name: "Sums", cells }] });
  await grid.opened;
  const subUnitId = sheetOf(grid.unit, "Sums").getSheetId();
  const results = () => grid.workbook.content().sheets[0]?.cells[0]?.map((cell) => cell?.value);
  for (const value of [2, 3, 4]) {
    await grid.command(SetRangeValuesCommand.id, {
      ...{ unitId: grid.unit.unitId, subUnitId },
      range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 },
      value: { v: value, f: null },
    });
    await grid.workbook.calculated();
    expect(results()).toEqual([value, 2 * value, value, 2 * value]);
  }
  // Nothing was changed since.
  await grid.workbook.calculated();
  grid.close();
});
