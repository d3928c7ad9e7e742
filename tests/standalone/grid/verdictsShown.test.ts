import { expect, it, onTestFinished } from "vitest";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import { showVerdicts } from "../../../addin/standalone/grid/verdictsShown.ts";
import { verdictCells, verdictInk } from "../../../addin/workbook/verdictCells.ts";
import { descriptors } from "../../../functions/all.ts";
import { openHeadless } from "./headless.ts";

it("shows verdicts with sign and colour, typed or filled by a formula, and holds the word alone", async () => {
  const words = verdictCells.map(({ word }) => word);
  const grid = openHeadless(
    {
      sheets: [
        {
          name: "Fit",
          cells: [
            ...words.map((value) => [{ value }, { value, style: "verdict" as const }]),
            [undefined, { value: "fits well", style: "verdict" }],
          ],
        },
        {
          name: "Follows",
          cells: [
            [{ formula: "=Fit!A1:A3" }],
            [{ spilled: true, style: "verdict" }],
            [{ spilled: true, style: "verdict" }],
          ],
        },
      ],
    },
    descriptors,
  );
  onTestFinished(() => {
    grid.close();
  });
  showVerdicts(grid.unit.injector);
  await grid.calculated();
  const sheet = sheetOf(grid.unit, "Fit");
  for (const [row, { word, sign, tone }] of verdictCells.entries()) {
    expect(sheet.getCell(row, 0)?.v).toBe(word);
    expect(sheet.getCell(row, 1)).toMatchObject({
      v: `${sign} ${word}`,
      s: { cl: { rgb: verdictInk[tone] } },
    });
  }
  expect(sheet.getCell(words.length, 1)?.v).toBe("fits well");
  const follows = sheetOf(grid.unit, "Follows");
  expect([0, 1, 2].map((row) => follows.getCell(row, 0)?.v)).toEqual(["fits", "◐ snug", "○ loose"]);
  const held = await grid.workbook.readArea({
    sheet: "Fit",
    row: 0,
    column: 1,
    rows: words.length,
    columns: 1,
  });
  expect(held.values.flat()).toEqual(words);
});
