import { expect, it } from "vitest";
import { cellText } from "../../../addin/chart/cell.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { descriptors } from "../../../functions/all.ts";
import { calculate } from "../../../addin/standalone/workbooks/calculate.ts";
import { openHeadless } from "./headless.ts";

it("calculates every formula of the demo in the grid as outside it", async () => {
  const grid = openHeadless(demoWorkbook(), descriptors);
  await grid.calculated();
  const { sheets } = grid.workbook.content();
  const expected = calculate(demoWorkbook());
  grid.close();
  expect(expected.length).toBeGreaterThan(20);
  for (const { sheet, row, column, formula, result } of expected) {
    const cells = sheets.find(({ name }) => name === sheet)?.cells ?? [];
    expect(cells[row]?.[column]?.formula).toBe(formula);
    // As text: the grid takes the words “#N/A”, with which a flag quotes a cell, for an error of that name.
    const shown = result.map((line, r) => line.map((_, c) => cellText(cells[row + r]?.[column + c]?.value)));
    expect({ formula, shown }).toEqual({ formula, shown: result.map((line) => line.map(String)) });
  }
});
