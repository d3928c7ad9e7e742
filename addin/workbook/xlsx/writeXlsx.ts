import { writeXlsx as writeStored } from "hucre/xlsx";
import type { WorkbookContent } from "../content.ts";
import { checkContent } from "./checkContent.ts";
import { finishParts } from "./finishParts.ts";
import { plainFont } from "./looks.ts";
import { storedSheet } from "./storedSheet.ts";

export interface WriteOptions {
  /**
   * `false` writes the last calculated values in place of formulas, for programs that do not know our functions.
   * Default `true`.
   */
  readonly formulas?: boolean;
}

/**
 * A workbook as an `.xlsx` file.
 *
 * Formulas are written with their last calculated values. Those that call our functions are written so that
 * their result fills as many cells as it needs. Headings of tables are written as text, and made distinct
 * where two are the same, since the file format allows nothing else; a table of headings only gets one empty row.
 *
 * @throws {InputError} for what an `.xlsx` file cannot hold: no sheet at all, a sheet or table name with
 * characters that are not allowed or that is taken twice, text or a formula that is too long, too many rows or
 * columns
 */
export async function writeXlsx(content: WorkbookContent, options: WriteOptions = {}): Promise<Uint8Array> {
  checkContent(content);
  const { formulas = true } = options;
  const sheets = content.sheets.map((sheet) => storedSheet(sheet, formulas, content.sheets));
  const bytes = await writeStored({ sheets, defaultFont: plainFont });
  return finishParts(bytes, { calculated: !formulas || isCalculated(content) });
}

/** True when every formula comes with its last value. */
function isCalculated(content: WorkbookContent): boolean {
  return content.sheets.every((sheet) =>
    sheet.cells.every((row) => row.every((cell) => cell?.formula === undefined || cell.value !== undefined)),
  );
}
