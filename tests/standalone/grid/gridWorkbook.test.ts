import { SetRangeValuesCommand } from "@univerjs/sheets";
import type { CellAddress, Workbook } from "../../../addin/workbook/port.ts";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
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
  return {
    ...workbook,
    typeInto,
    close: () => {
      close();
      return Promise.resolve();
    },
  };
}

workbookContract("the grid", (content) => Promise.resolve(forContract(content)));
