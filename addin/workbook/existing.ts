import { InputError } from "../measures/inputError.ts";
import { sheetLimit } from "./address.ts";
import { sameName } from "./names.ts";
import type { Area, TableInfo } from "./port.ts";

/**
 * The table of that name, in any case.
 *
 * @throws {InputError} kind `"absent"` when there is none
 */
export function tableNamed(tables: readonly TableInfo[], name: string): TableInfo {
  const found = tables.find((table) => sameName(table.name, name));
  if (found) return found;
  const known = tables.map((table) => `“${table.name}”`).join(", ");
  throw new InputError(
    `There is no table “${name}” in this workbook. ${known ? `Its tables are ${known}.` : "It has no tables yet."}`,
    "absent",
  );
}

/**
 * The name of that sheet as the workbook writes it.
 *
 * @throws {InputError} kind `"absent"` when there is none
 */
export function sheetNamed(sheets: readonly string[], name: string): string {
  const found = sheets.find((sheet) => sameName(sheet, name));
  if (found !== undefined) return found;
  throw new InputError(
    `There is no sheet “${name}” in this workbook. Its sheets are ${sheets.map((sheet) => `“${sheet}”`).join(", ")}.`,
    "absent",
  );
}

/**
 * Check that an area lies on a sheet that is there.
 *
 * @throws {InputError} when the sheet is not there or the area is not on it
 */
export function checkArea(shape: { readonly sheets: readonly string[] }, area: Area): void {
  sheetNamed(shape.sheets, area.sheet);
  const { row, column, rows, columns } = area;
  const whole = [row, column, rows, columns].every((n) => Number.isInteger(n) && n >= 0);
  if (!whole || row + rows > sheetLimit.rows || column + columns > sheetLimit.columns) {
    throw new InputError(
      `${String(rows)} rows and ${String(columns)} columns from row ${String(row + 1)}, column ${String(column + 1)} do not fit on the sheet “${area.sheet}”.`,
    );
  }
}
