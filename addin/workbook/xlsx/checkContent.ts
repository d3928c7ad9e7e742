import { cellRef } from "hucre/xlsx";
import { InputError } from "../../measures/inputError.ts";
import type { SheetContent, WorkbookContent } from "../content.ts";

// Source: Microsoft, “Excel specifications and limits”.
const mostRows = 1_048_576;
const mostColumns = 16_384;
const longestText = 32_767;
const longestFormula = 8_192;
const longestSheetName = 31;

/**
 * Refuses content that no `.xlsx` file can hold, before anything is written.
 *
 * @throws {InputError} naming the sheet, table or cell and what to do
 */
export function checkContent(content: WorkbookContent): void {
  if (content.sheets.length === 0) throw new InputError("The workbook has no sheet. Add one and save again.");
  content.sheets.forEach(({ name }) => {
    checkSheetName(name);
  });
  checkDistinct(
    "sheets",
    content.sheets.map(({ name }) => name),
  );
  const tables = content.sheets.flatMap((sheet) => sheet.tables ?? []).map(({ name }) => name);
  tables.forEach(checkTableName);
  checkDistinct("tables", tables);
  content.sheets.forEach(checkCells);
}

function checkSheetName(name: string): void {
  const bad = /[[\]:*?/\\]/.exec(name)?.[0] ?? /^'|'$/.exec(name)?.[0];
  if (bad !== undefined)
    throw new InputError(
      `The sheet name “${name}” contains “${bad}”, which .xlsx files do not allow there. Rename the sheet and save again.`,
    );
  if (name === "" || name.length > longestSheetName)
    throw new InputError(
      `The sheet name “${name}” has ${String(name.length)} characters; .xlsx files allow 1 to ${String(longestSheetName)}. Rename the sheet and save again.`,
    );
  if (name.toLowerCase() === "history")
    throw new InputError(`Excel keeps the sheet name “${name}” for itself. Rename the sheet and save again.`);
}

function checkTableName(name: string): void {
  const isWord = /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u.test(name);
  const isCell = /^([a-z]{1,3}\d{1,7}|r\d*c\d*|[rc])$/i.test(name);
  if (!isWord || isCell)
    throw new InputError(
      `The table name “${name}” is not allowed in .xlsx files: it must start with a letter, hold only letters, digits, “_” and “.”, and not look like a cell. Rename the table and save again.`,
    );
}

function checkDistinct(what: string, names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name.toLowerCase()))
      throw new InputError(`Two ${what} are called “${name}”. Rename one of them and save again.`);
    seen.add(name.toLowerCase());
  }
}

function checkCells({ name, cells }: SheetContent): void {
  const columns = cells.reduce((most, row) => Math.max(most, row.length), 0);
  if (cells.length > mostRows || columns > mostColumns)
    throw new InputError(
      `The sheet “${name}” has ${String(cells.length)} rows and ${String(columns)} columns; .xlsx files hold ${String(mostRows)} and ${String(mostColumns)}. Divide it between sheets and save again.`,
    );
  cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      const where = () => `in cell ${cellRef(r, c)} of sheet “${name}”`;
      if (typeof cell?.value === "string" && cell.value.length > longestText)
        throw new InputError(
          `The text ${where()} has ${String(cell.value.length)} characters; a cell of an .xlsx file holds ${String(longestText)}. Shorten it and save again.`,
        );
      if (cell?.formula !== undefined && cell.formula.length > longestFormula)
        throw new InputError(
          `The formula ${where()} has ${String(cell.formula.length)} characters; an .xlsx file allows ${String(longestFormula)}. Divide it between cells and save again.`,
        );
    });
  });
}
