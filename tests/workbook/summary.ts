import type { CellContent, SheetContent, WorkbookContent } from "../../addin/workbook/content.ts";
import { areaName, cellName } from "../../addin/workbook/address.ts";

/**
 * What a workbook holds, in a form in which two hosts can be compared: filled cells by address, number formats
 * other than General, marks, tables, notes, frozen rows and columns. Column widths and the other looks are a
 * host’s own affair.
 */
export function summary(content: WorkbookContent) {
  return content.sheets.map((sheet) => ({
    sheet: sheet.name,
    cells: perCell(sheet, ({ formula, value }) => formula ?? value),
    formats: perCell(sheet, ({ format }) => (format === "General" ? undefined : format)),
    marks: perCell(sheet, ({ style }) => (style === "marked" ? true : undefined)),
    tables: [...(sheet.tables ?? [])].map((table) => `${table.name} ${areaName(table)}`).sort(),
    notes: Object.fromEntries(
      (sheet.notes ?? []).map((note) => [cellName(note.row, note.column), note.text]),
    ),
    frozen: [sheet.frozenRows ?? 0, sheet.frozenColumns ?? 0],
  }));
}

function perCell<T>(sheet: SheetContent, of: (cell: CellContent) => T): Record<string, T> {
  const found = sheet.cells.flatMap((row, i) =>
    row.flatMap((cell, j) => {
      const says = cell && !cell.spilled ? of(cell) : undefined;
      return says === undefined ? [] : [[cellName(i, j), says] as const];
    }),
  );
  return Object.fromEntries(found);
}
