import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { createExcelDouble, type ExcelDouble } from "../../workbook/excelDouble/excelDouble.ts";
import { createOffice, type StandIn, type StandInSettings } from "./office.ts";

declare global {
  interface Window {
    /** Set before the page’s own scripts run. */
    standInSettings?: StandInSettings;
    standIn: StandIn;
    excelDouble: ExcelDouble;
  }
}

/**
 * Puts our stand-ins in the place of what Office.js brings: `Office`, `CustomFunctions`, and `Excel` as the strict
 * double on a workbook. To be called by a script that is served instead of Office.js (see `excelPage.ts`).
 */
export function standInForOffice(content: WorkbookContent): void {
  const settings = window.standInSettings ?? {};
  const { Office, CustomFunctions, standIn } = createOffice(settings);
  const double = createExcelDouble(content, settings.excelApi);
  const { isSetSupported } = Office.context.requirements;
  Office.context.requirements.isSetSupported = (set, version) =>
    isSetSupported(set, version) || double.Office.context.requirements.isSetSupported(set, version ?? "1.1");
  Object.assign(window, { Office, CustomFunctions, Excel: double.Excel, standIn, excelDouble: double });
}
