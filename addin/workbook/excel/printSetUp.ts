import type { SheetContent } from "../content.ts";
import { footer, printed } from "../printed.ts";

/** Lays out how a new sheet is printed: everything that follows is in ExcelApi 1.9, less than the manifest asks for. */
export function putPrintSetUp(sheet: Excel.Worksheet, content: SheetContent): void {
  const { pagesAcross, rows, columns } = printed(content);
  const layout = sheet.pageLayout;
  layout.orientation = "Landscape";
  if (content.paper) layout.paperSize = content.paper;
  // Set as a whole: Excel takes no parts of it. As many pages below one another as there are rows.
  layout.zoom = { horizontalFitToPages: pagesAcross };
  if (rows !== undefined) layout.setPrintTitleRows(rows);
  if (columns !== undefined) layout.setPrintTitleColumns(columns);
  const below = layout.headersFooters.defaultForAllPages;
  below.leftFooter = footer.left;
  below.rightFooter = footer.right;
}
