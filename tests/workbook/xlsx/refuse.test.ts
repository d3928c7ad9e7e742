import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { writeXlsx as writeStored } from "hucre/xlsx";
import { InputError } from "../../../addin/measures/inputError.ts";
import type { SheetContent } from "../../../addin/workbook/content.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";

const { bytes: workbook } = await writeXlsx({ sheets: [{ name: "S", cells: [[{ value: 1 }]] }] });
const locked = await writeStored({
  sheets: [{ name: "S", rows: [[1]] }],
  encryption: { password: "a", spinCount: 1000 },
});
const zip = (files: Record<string, string>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));

/** A file of the older Office: its header, then a directory entry of the name that tells what it is. */
function container(name: string): Uint8Array {
  const bytes = new Uint8Array(4096);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...name].forEach((letter, i) => bytes.set([letter.charCodeAt(0), 0], 1024 + 128 + i * 2));
  return bytes;
}

describe("opening what is no .xlsx workbook", () => {
  test.each([
    ["nothing", new Uint8Array(), /empty/],
    ["a locked workbook", locked, /protected with a password.*save a copy without the password/],
    [".xls", container("Workbook"), /\.xls\).*save it as \.xlsx/],
    ["an old document", container("WordDocument"), /older Office program/],
    [
      ".ods",
      zip({ mimetype: "application/vnd.oasis.opendocument.spreadsheet" }),
      /\.ods\).*save it as \.xlsx/,
    ],
    [".xlsb", zip({ "xl/workbook.bin": "" }), /\.xlsb\)/],
    [".docx", zip({ "[Content_Types].xml": "", "word/document.xml": "" }), /Word document/],
    ["a folder", zip({ "a.txt": "a" }), /compressed folder/],
    ["a PNG", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), /picture \(PNG\)/],
    ["a PDF", strToU8("%PDF-1.7"), /PDF/],
    ["CSV", strToU8("Figure;Waist\nAda;80"), /plain text.*Import/],
    ["noise", new Uint8Array([0, 1, 2, 3]), /not text at all, not like a workbook/],
    ["half a workbook", workbook.subarray(0, workbook.length / 2), /damaged or cut short/],
    [
      "a workbook without sheets",
      zip({ "[Content_Types].xml": "<Types/>", "xl/workbook.xml": "<workbook/>" }),
      /damaged/,
    ],
  ])("says what %s is and what to do", async (_, bytes, message) => {
    const refused = await readXlsx(bytes).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(InputError);
    expect(String(refused)).toMatch(message);
  });

  test("does not read half a workbook as a whole one when bytes inside are wrong", async () => {
    const broken = workbook.slice();
    broken.fill(0xff, 200, 600);
    await expect(readXlsx(broken)).rejects.toBeInstanceOf(InputError);
  });
});

describe("saving what no .xlsx file can hold", () => {
  const sheet = (change: Partial<SheetContent>): SheetContent => ({ name: "S", cells: [], ...change });
  const table = (name: string) => ({ name, row: 0, column: 0, rows: 2, columns: 1 });

  test.each([
    ["no sheet", [], /no sheet/],
    ["a sheet name with a slash", [sheet({ name: "a/b" })], /“a\/b” contains “\/”.*Rename/],
    ["a long sheet name", [sheet({ name: "x".repeat(32) })], /32 characters/],
    ["the same sheet name twice", [sheet({}), sheet({ name: "s" })], /Two sheets are called “s”/],
    ["a table name with a space", [sheet({ tables: [table("My chart")] })], /table name “My chart”/],
    ["a table name like a cell", [sheet({ tables: [table("AB12")] })], /table name “AB12”/],
    ["the same table name twice", [sheet({ tables: [table("T1_"), table("t1_")] })], /Two tables/],
    [
      "long text",
      [sheet({ cells: [[], [undefined, { value: "x".repeat(32_768) }]] })],
      /in cell B2 of sheet “S”.*Shorten/,
    ],
    ["a long formula", [sheet({ cells: [[{ formula: `=${"1+".repeat(5000)}1` }]] })], /formula in cell A1/],
  ])("says so: %s", async (_, sheets, message) => {
    const refused = await writeXlsx({ sheets }).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(InputError);
    expect(String(refused)).toMatch(message);
  });
});
