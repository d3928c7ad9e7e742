import { vi } from "vitest";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { createExcelWorkbook } from "../../../addin/workbook/excel/excelWorkbook.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import type { ContractHooks } from "../contract.ts";
import { createExcelDouble, type ExcelDouble } from "../excelDouble/excelDouble.ts";

/** The adapter on a strict double that stands in for Excel until `close`. */
export function openExcel(
  content: WorkbookContent,
  version = 20,
): { readonly double: ExcelDouble; readonly workbook: Workbook & ContractHooks } {
  const double = createExcelDouble(content, version);
  vi.stubGlobal("Excel", double.Excel);
  vi.stubGlobal("Office", double.Office);
  const port = createExcelWorkbook({ settleMs: 0 });
  const typeInto: ContractHooks["typeInto"] = async (at, text) => {
    const told = new Promise<void>((resolve) => {
      const leave = port.subscribe(() => {
        leave();
        resolve();
      });
    });
    await vi.waitFor(() => {
      if (double.events.changed.size === 0) throw new Error("Excel is not asked to report yet.");
    });
    // No user types before what the port has just written is settled.
    await new Promise((resolve) => setTimeout(resolve));
    double.type(at, text);
    await told;
  };
  const sort: ContractHooks["sort"] = (table, column) => {
    double.sort(table, column);
    return Promise.resolve();
  };
  const close = () => {
    vi.unstubAllGlobals();
    return Promise.resolve();
  };
  return { double, workbook: { ...port, typeInto, sort, content: double.content, close } };
}
