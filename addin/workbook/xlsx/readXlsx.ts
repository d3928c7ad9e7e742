import { readXlsx as readStored, type Workbook } from "hucre/xlsx";
import type { WorkbookContent } from "../content.ts";
import { leftOut } from "./leftOut.ts";
import { damaged, packageParts } from "./packageParts.ts";
import { readPickLists } from "./pickLists.ts";
import { readSheet } from "./readSheet.ts";
import { requireWorkbook } from "./requireWorkbook.ts";
import { sheetsWithoutCells } from "./sheetsWithoutCells.ts";

/** A workbook read from a file. */
export interface ReadWorkbook extends WorkbookContent {
  /** What the file held that could not be kept, in short phrases to be shown as a list; empty when all was kept. */
  readonly leftOut: readonly string[];
}

/**
 * Reads an `.xlsx` file: values, formulas, tables, notes, lists to choose from, number formats, our cell styles, column widths and
 * frozen rows and columns of every sheet, hidden ones too. Dates stay numbers, counted from 1900, with their
 * number format; a date and time keeps its thousandth of a second.
 *
 * @throws {InputError} when the bytes are not an `.xlsx` workbook, are protected with a password, or damaged:
 * saying what they look like and what to do
 */
export async function readXlsx(bytes: Uint8Array): Promise<ReadWorkbook> {
  requireWorkbook(bytes);
  const parts = packageParts(bytes);
  const cellless = sheetsWithoutCells(parts);
  const workbook = await stored(bytes, (index) => !cellless.has(index));
  const from1904 = /\bdate1904\s*=\s*["'](1|true|on)["']/.test(parts.workbook);
  const sheets = workbook.sheets.map((sheet) => readSheet(sheet, from1904));
  const lists = workbook.sheets.map((sheet) => readPickLists(sheet.dataValidations ?? [], sheets));
  return {
    sheets: sheets.map((sheet, i) => {
      const { pickLists = [] } = lists[i] ?? {};
      return pickLists.length > 0 ? { ...sheet, pickLists } : sheet;
    }),
    leftOut: [
      ...leftOut(
        workbook,
        parts.names,
        lists.map(({ leftOver }) => leftOver),
      ),
      ...[...cellless].map(() => "a sheet that holds only a chart or a dialogue"),
    ],
  };
}

async function stored(bytes: Uint8Array, wanted: (index: number) => boolean): Promise<Workbook> {
  try {
    // With dates counted from 1904 the reader keeps the number behind every date: from 1900 it would mend the
    // day that Excel counts too many, and 60 and 59 would become one date. `readSheet` counts back.
    return await readStored(bytes, {
      readStyles: true,
      dateSystem: "1904",
      sheets: (info) => wanted(info.index),
    });
  } catch {
    throw damaged();
  }
}
