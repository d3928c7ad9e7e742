import { ReorderRangeCommand, SetRangeValuesCommand } from "@univerjs/sheets";
import type { CellAddress, Workbook } from "../../../addin/workbook/port.ts";
import { cellText } from "../../../addin/chart/cell.ts";
import { sheetOf, toRectangle } from "../../../addin/standalone/grid/gridSheets.ts";
import type { ContractHooks } from "../../workbook/contract.ts";
import { workbookContract } from "../../workbook/contract.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { openHeadless } from "./headless.ts";

/** The grid as the contract suite drives it. */
function forContract(content: WorkbookContent): Workbook & ContractHooks {
  const { workbook, unit, command, close } = openHeadless(content);
  const typeInto = async ({ sheet, row, column }: CellAddress, text: string): Promise<void> => {
    const heard = new Promise<void>((resolve) => {
      const leave = workbook.subscribe(() => {
        leave();
        // The other subscribers of the same change are told first.
        setTimeout(resolve);
      });
    });
    await command(SetRangeValuesCommand.id, {
      unitId: unit.unitId,
      subUnitId: sheetOf(unit, sheet).getSheetId(),
      range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
      value: text.startsWith("=") ? { f: text, v: null } : { v: text === "" ? null : text, f: null },
    });
    await heard;
  };
  const sort = async (name: string, column: number): Promise<void> => {
    const { area, values } = await workbook.readTable(name);
    const rows = values.slice(1).map((row, i) => ({ row: area.row + 1 + i, key: cellText(row[column]) }));
    const inOrder = rows.toSorted((a, b) => a.key.localeCompare(b.key, "en", { numeric: true }));
    await command(ReorderRangeCommand.id, {
      unitId: unit.unitId,
      subUnitId: sheetOf(unit, area.sheet).getSheetId(),
      range: toRectangle({ ...area, row: area.row + 1, rows: area.rows - 1 }),
      order: Object.fromEntries(inOrder.map(({ row }, i) => [area.row + 1 + i, row])),
    });
  };
  return {
    ...workbook,
    typeInto,
    sort,
    close: () => {
      close();
      return Promise.resolve();
    },
  };
}

workbookContract("the grid", (content) => Promise.resolve(forContract(content)));
