import type { Cells } from "../../../addin/chart/cell.ts";
import type { SheetContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Fitting } from "../../../addin/fit/match.ts";
import type { Fit } from "../../../taskpane/fit/readFit.ts";
import { readFit } from "../../../taskpane/fit/readFit.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

/** Invented figures; lengths in mm. */
export const figures: Cells = [
  ["Figure", "Head", "Bust", "Waist", "Hip", "Hand", "Wrist", "Shoulder girth", "Hands removable"],
  ["Ardmoor", 110, 135, 100, 140, 34, 22, 150, "yes"],
  ["Brae", 112, 136, 101, 142, 36, 24, 152, "no"],
  ["Corrie", 150, 190, 155, 200, 50, 33, undefined, "no"],
  ["Dell", undefined, 192, 154, 201, undefined, undefined, 210, undefined],
];

/** Invented patterns; lengths in mm. */
export const patterns: Cells = [
  [
    "Pattern",
    "Title",
    "Garment class",
    "Stretch %",
    "Opens",
    "Opening length",
    "Neck opening",
    "Bust",
    "Waist",
    "Hip",
  ],
  ["P1", "Moss skirt", "Flared skirt", undefined, "back", 30, undefined, undefined, 104, 200],
  ["P2", "Gravel skirt", "Fitted skirt", undefined, "none", undefined, undefined, undefined, 104, 149],
  ["P3", "Hearth gown", "Dress", undefined, "full length", undefined, undefined, 213, 165, 230],
  ["P4", "Burn dress", "Dress", "40%", "none", undefined, 90, 120, 95, 140],
];

export function sheetOf(table: string, cells: Cells): SheetContent {
  return {
    name: `${table} sheet`,
    cells: cells.map((row) => row.map((value) => ({ value }))),
    tables: [{ name: table, row: 0, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 }],
  };
}

export function wardrobe(...more: readonly SheetContent[]): WorkbookContent {
  return { sheets: [sheetOf("Figures", figures), sheetOf("Patterns", patterns), ...more] };
}

export async function ready(content = wardrobe()): Promise<Fit & { readonly fitting: Fitting }> {
  const fit = await readFit(openBook(createMemoryWorkbook(content))(), {});
  if (!fit.fitting) throw new Error(fit.failure ?? "There is nothing to judge.");
  return { ...fit, fitting: fit.fitting };
}
