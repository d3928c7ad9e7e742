import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import { expect, it } from "vitest";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { openHeadless } from "./headless.ts";

const book: WorkbookContent = {
  sheets: [
    {
      name: "Chart",
      cells: [[{ value: "Bust" }], [{ value: 180 }], [{ value: 182 }]],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 1 }],
    },
  ],
};

// The editor asks the parser about the text after every key.
it.each([
  "=SUM(Figures[",
  "=SUM(Figures[[#This Row],[Bu",
  '=FIT.APART(Figures[#All],"Ard',
  "=SUM({1;2",
  "='Chart",
])("calculates well after “%s” was given up", async (halfTyped) => {
  const grid = openHeadless(book);
  const parser = grid.unit.injector.get(LexerTreeBuilder);
  for (let length = 1; length <= halfTyped.length; length++) {
    parser.sequenceNodesBuilder(halfTyped.slice(0, length));
    parser.getFunctionAndParameter(`${halfTyped.slice(0, length)}A`, length - 1);
    parser.checkIfAddBracket(halfTyped.slice(0, length));
  }
  const calculated = grid.calculated();
  await grid.command(SetRangeValuesCommand.id, {
    unitId: grid.unit.unitId,
    subUnitId: sheetOf(grid.unit, "Chart").getSheetId(),
    range: { startRow: 5, endRow: 6, startColumn: 0, endColumn: 0 },
    value: [[{ f: "=SUM(1,2)" }], [{ f: "=SUM(Figures[Bust])" }]],
  });
  await calculated;
  const cells = grid.workbook.content().sheets[0]?.cells;
  expect([cells?.[5]?.[0]?.value, cells?.[6]?.[0]?.value]).toEqual([3, 362]);
  grid.close();
});
