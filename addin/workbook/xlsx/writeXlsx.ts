import { writeXlsx as writeStored, type WriteSheet } from "hucre/xlsx";
import type { WorkbookContent } from "../content.ts";
import { checkContent } from "./checkContent.ts";
import { finishParts } from "./finishParts.ts";
import { plainFont } from "./looks.ts";
import { storedSheet, type Book } from "./storedSheet.ts";
import { tableHeadings } from "./tableHeadings.ts";

export interface WriteOptions {
  /**
   * `values` writes what formulas gave last in their place, for programs that do not know our functions. Default
   * `formulas`.
   */
  readonly cells?: "formulas" | "values";
  /** The page to print on; the printer’s own when left out. */
  readonly paper?: "a4" | "letter";
}

export interface WrittenXlsx {
  readonly bytes: Uint8Array;
  /** What is not in the file as it is in the workbook, in short phrases to be shown as a list (`changedWords`). */
  readonly changed: readonly string[];
}

/**
 * A workbook as an `.xlsx` file.
 *
 * Formulas are written with their last calculated values. Those that call our functions are written so that
 * their result fills as many cells as it needs. A formula that Excel cannot parse would make it call the whole file
 * damaged: it is written as text, and named in `changed`. Headings of tables are written as text, and made distinct
 * where two are the same, since the file format allows nothing else; a table of headings only gets one empty row.
 *
 * @throws {InputError} for what an `.xlsx` file cannot hold: no sheet at all, a sheet or table name with
 * characters that are not allowed or that is taken twice, text or a formula that is too long, too many rows or
 * columns
 */
export async function writeXlsx(content: WorkbookContent, options: WriteOptions = {}): Promise<WrittenXlsx> {
  checkContent(content);
  const formulas = options.cells !== "values";
  const book: Book = {
    formulas,
    content: content.sheets,
    sheets: content.sheets.map(({ name }) => name),
    tables: content.sheets.flatMap((sheet) =>
      (sheet.tables ?? []).map((table) => ({ name: table.name, headings: tableHeadings(table, sheet) })),
    ),
  };
  const stored = content.sheets.map((sheet) => storedSheet(sheet, book));
  const bytes = await writeStored({
    sheets: stored.map(({ sheet }) => onPaper(sheet, options.paper)),
    namedRanges: stored.flatMap(({ repeated }) => (repeated ? [repeated] : [])),
    defaultFont: plainFont,
  });
  return {
    bytes: finishParts(bytes, { calculated: !formulas || isCalculated(content) }),
    changed: stored.flatMap(({ changed }) => changed),
  };
}

function onPaper(sheet: WriteSheet, paperSize: WriteOptions["paper"]): WriteSheet {
  return paperSize === undefined ? sheet : { ...sheet, pageSetup: { ...sheet.pageSetup, paperSize } };
}

/** True when every formula comes with its last value. */
function isCalculated(content: WorkbookContent): boolean {
  return content.sheets.every((sheet) =>
    sheet.cells.every((row) => row.every((cell) => cell?.formula === undefined || cell.value !== undefined)),
  );
}
