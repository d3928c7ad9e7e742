import type { ICellData } from "@univerjs/core";
import type { SheetContent } from "../../workbook/content.ts";
import type { Rectangle } from "./gridSheets.ts";
import { toCellData } from "./values.ts";

type Matrix<T> = Record<number, Record<number, T>>;

/** What formulas last gave beyond their own cell, by sheet: the cells that they fill, and the area of each by its formula’s cell. */
export interface KeptResults {
  readonly cells: Record<string, Matrix<Pick<ICellData, "v" | "t">>>;
  readonly areas: Record<string, Matrix<Rectangle>>;
}

/** The name under which results are kept beside the cells. */
export const resultsName = "SHEET_MEASURE_BOOK_RESULTS_PLUGIN";

/** The results that content brings with it, as they are kept. */
export function contentResults(
  sheets: readonly { readonly id: string; readonly sheet: SheetContent }[],
): KeptResults {
  const kept: KeptResults = { cells: {}, areas: {} };
  for (const { id, sheet } of sheets)
    sheet.cells.forEach((row, i) => {
      row.forEach((cell, j) => {
        if (!cell?.spill && !cell?.spilled) return;
        put((kept.cells[id] ??= {}), i, j, toCellData(cell.value));
        if (!cell.spill) return;
        const { rows, columns } = cell.spill;
        const area = { startRow: i, endRow: i + rows - 1, startColumn: j, endColumn: j + columns - 1 };
        put((kept.areas[id] ??= {}), i, j, area);
      });
    });
  return kept;
}

function put<T>(matrix: Matrix<T>, row: number, column: number, value: T): void {
  (matrix[row] ??= {})[column] = value;
}
