import { expect, it } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { starterWorkbook } from "../../../addin/demo/starterWorkbook.ts";
import { calculate } from "../../../addin/standalone/workbooks/calculate.ts";
import type { SheetContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { descriptors } from "../../../functions/all.ts";
import { openHeadless } from "./headless.ts";

it("says in words what to do first while it is empty", async () => {
  const starter = starterWorkbook("mm");
  const { sheets } = await shown(starter);
  for (const [s, { name, cells }] of starter.sheets.entries())
    cells.forEach((row, r) => {
      row.forEach((cell, c) => {
        if (cell?.formula === undefined) return;
        expect({ name, formula: cell.formula, value: sheets[s]?.cells[r]?.[c]?.value }).toEqual({
          name,
          formula: cell.formula,
          value: cell.value,
        });
      });
    });
});

it("answers as the demo does once it is filled in", async () => {
  const demo = demoWorkbook();
  const content = { sheets: starterWorkbook("mm").sheets.map((sheet) => filledIn(sheet, demo)) };
  const { sheets } = await shown(content);
  const expected = calculate(demo).filter(({ sheet }) => sheets.some(({ name }) => name === sheet));
  expect(expected.length).toBeGreaterThan(14);
  for (const { sheet, row, column, formula, result } of expected) {
    const cells = sheets.find(({ name }) => name === sheet)?.cells ?? [];
    expect(cells[row]?.[column]?.formula).toContain(formula.slice(1));
    expect({ formula, first: cells[row]?.[column]?.value }).toEqual({ formula, first: result[0]?.[0] });
    // Below stands the next row of the answer, or another answer, or nothing.
    const next = expected.find((one) => one.sheet === sheet && one.row === row + 1 && one.column === column);
    const below = result.length > 1 ? result[1]?.[0] : next?.result[0]?.[0];
    expect(String(cells[row + 1]?.[column]?.value ?? "")).toBe(String(below ?? ""));
  }
});

async function shown(content: WorkbookContent): Promise<WorkbookContent> {
  const grid = openHeadless(content, descriptors);
  await grid.calculated();
  const read = grid.workbook.content();
  grid.close();
  return read;
}

/** The sheet with the tables of the demo, and its names in the cells that ask for them. */
function filledIn(sheet: SheetContent, demo: WorkbookContent): SheetContent {
  const twin = demo.sheets.find(({ name }) => name === sheet.name);
  if (!twin) return sheet;
  if (twin.tables) return twin;
  return {
    ...sheet,
    cells: sheet.cells.map((row, r) =>
      row.map((cell, c) => (cell?.format === "@" ? { ...cell, value: twin.cells[r]?.[c]?.value } : cell)),
    ),
  };
}
