import { readXlsx as readStored, type Workbook } from "hucre/xlsx";
import type { WorkbookContent } from "../content.ts";
import { leftOut } from "./leftOut.ts";
import { InputError } from "../../measures/inputError.ts";
import { checkFileSize } from "../tooLarge.ts";
import { checkParts } from "./checkParts.ts";
import { damaged, packaged, packageParts, type PackageParts } from "./packageParts.ts";
import { readPickLists } from "./pickLists.ts";
import { createReading, readSheet } from "./readSheet.ts";
import { requireWorkbook } from "./requireWorkbook.ts";
import { attributeOf, eachTag } from "./xmlTags.ts";

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
 * Formulas that would ask another computer, and those too long or too deep, come as text and are not calculated.
 *
 * Everything is counted as expanded before it is built, see `limits`: hostile files are refused within seconds and
 * little memory.
 *
 * @throws {InputError} when the bytes are not an `.xlsx` workbook, are protected with a password, damaged, or hold more
 * than can be opened: saying what they look like and what to do
 */
export async function readXlsx(bytes: Uint8Array): Promise<ReadWorkbook> {
  checkFileSize(bytes.length);
  try {
    requireWorkbook(bytes);
    return await read(bytes);
  } catch (error) {
    // Whatever a damaged file makes fall over, the user can only fetch it again.
    throw error instanceof InputError ? error : damaged();
  }
}

async function read(bytes: Uint8Array): Promise<ReadWorkbook> {
  const parts = checkParts(packageParts(bytes));
  const cellless = sheetsWithoutCells(parts);
  // What was checked is what is read, whatever else may lie in the file.
  const workbook = await stored(packaged(parts), (index) => !cellless.has(index));
  const from1904 = /\bdate1904\s*=\s*["'](1|true|on)["']/.test(parts.workbook);
  const leftOutOfSheets: string[] = [];
  const reading = createReading(from1904, leftOutOfSheets);
  const sheets = workbook.sheets.map((sheet) => readSheet(sheet, reading));
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
      ...leftOutOfSheets,
      ...[...cellless].map(() => "a sheet that holds only a chart or a dialogue"),
    ],
  };
}

function stored(bytes: Uint8Array, wanted: (index: number) => boolean): Promise<Workbook> {
  // With dates counted from 1904 the reader keeps the number behind every date: from 1900 it would mend the
  // day that Excel counts too many, and 60 and 59 would become one date. `readSheet` counts back.
  return readStored(bytes, {
    readStyles: true,
    dateSystem: "1904",
    sheets: (info) => wanted(info.index),
  });
}

/** Places, from 0, of the sheets that hold a chart or a dialogue and no cells. */
function sheetsWithoutCells(parts: PackageParts): ReadonlySet<number> {
  const ids = new Set<string | undefined>();
  eachTag(parts.relationships, (tag) => {
    const type = attributeOf(parts.relationships, tag, "Type") ?? "";
    if (/\/(chartsheet|dialogsheet)$/.test(type)) ids.add(attributeOf(parts.relationships, tag, "Id"));
  });
  const sheets: (string | undefined)[] = [];
  eachTag(parts.workbook, (tag) => {
    if (tag.name === "sheet") sheets.push(attributeOf(parts.workbook, tag, "r:id"));
  });
  return new Set([...sheets.keys()].filter((i) => sheets[i] !== undefined && ids.has(sheets[i])));
}
