import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import validate from "@ooxml-tools/validate";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import Papa from "papaparse";
import readExcelFile from "read-excel-file/universal";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../../addin/chart/cell.ts";
import { workbookFiles } from "../../../addin/standalone/workbooks/workbooks.ts";
import type { SheetContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { readFormula } from "../../../addin/workbook/xlsx/readFormula.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { tableHeadings } from "../../../addin/workbook/xlsx/tableHeadings.ts";
import { writeXlsx, type WriteOptions } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { allSheetsAsCsv, convert, libreOfficeTimeout } from "./libreOffice.ts";
import { everyKind } from "./everyKind.ts";
import { all, parse, partsOf } from "./xml.ts";

/** Files of every kind that is written: the workbooks that are handed out, and one with something of everything. */
const files: readonly { name: string; content: WorkbookContent; options: WriteOptions }[] = [
  ...workbookFiles(),
  { name: "every-kind.xlsx", content: everyKind, options: {} },
  { name: "every-kind-values.xlsx", content: everyKind, options: { cells: "values", paper: "letter" } },
];
const names = files.map(({ name }) => name);
const written = new Map(
  await Promise.all(
    files.map(
      async ({ name, content, options }) => [name, (await writeXlsx(content, options)).bytes] as const,
    ),
  ),
);
const bytesOf = (name: string) => written.get(name) ?? new Uint8Array();

/**
 * The schemas of ECMA-376 (transitional) as Microsoft’s Open XML SDK holds them, with what may be used only once and what
 * has to be there for what refers to it. The SDK takes the parts that Office added later, here the metadata of dynamic
 * arrays, by the schemas of [MS-XLSX]; drawings in VML, of which notes have their boxes, it passes over.
 */
const versions = ["Office2007", "Microsoft365"] as const;

describe("against the schemas", () => {
  test.each(names)("%s is valid", async (name) => {
    for (const version of versions) expect(await validate(bytesOf(name), "xlsx", version)).toEqual([]);
  });

  test.each([
    ["xl/worksheets/sheet1.xml", /<sheetViews>.*?<\/sheetViews>/, ""],
    ["xl/styles.xml", /<cellXfs/, "<nonsense/><cellXfs"],
    ["xl/tables/table1.xml", / id="1"/, ' id="x"'],
    ["xl/comments1.xml", / authorId="0"/, ""],
    ["xl/metadata.xml", /<metadataTypes/, "<metadataTypez"],
    ["xl/workbook.xml", /<sheets>/, "<sheets/><sheets>"],
  ])("a mistake in %s would be found", async (part, found, put) => {
    const parts = unzipSync(bytesOf("every-kind.xlsx"));
    const xml = strFromU8(parts[part] ?? new Uint8Array());
    // Where leaving out is allowed, twice is not.
    const spoilt =
      put === ""
        ? xml.replace(found, (once) => (part.includes("sheet1") ? once + once : put))
        : xml.replace(found, put);
    expect(spoilt).not.toBe(xml);
    const bytes = zipSync({ ...parts, [part]: strToU8(spoilt) });
    expect(await outcome(bytes)).not.toEqual([]);
  });
});

/** The SDK throws where it cannot even open a part. */
async function outcome(bytes: Uint8Array): Promise<unknown> {
  return validate(bytes, "xlsx", "Microsoft365").catch((error: unknown) => error);
}

describe("formulas, also those of lists and of what is printed on every page", () => {
  test.each(names)("of %s can be parsed as Excel does", async (name) => {
    const parts = partsOf(bytesOf(name));
    const workbook = parse(parts["xl/workbook.xml"] ?? "");
    const book = {
      sheets: all(workbook, "sheet").map(({ attributes }) => attributes.name ?? ""),
      tables: Object.entries(parts)
        .filter(([part]) => part.startsWith("xl/tables/"))
        .map(([, xml]) => {
          const table = parse(xml);
          const headings = all(table, "tableColumn").map(({ attributes }) => attributes.name ?? "");
          return { name: table.attributes.name ?? "", headings: headings.map(withLineBreaks) };
        }),
    };
    const sheets = Object.entries(parts).filter(([part]) => part.startsWith("xl/worksheets/sheet"));
    const formulas = [
      ...all(workbook, "definedName"),
      ...sheets.flatMap(([, xml]) => ["f", "formula1"].flatMap((element) => all(parse(xml), element))),
    ].map(({ text }) => text);
    expect(formulas.length).toBeGreaterThan(0);
    for (const formula of formulas)
      expect({ formula, read: readFormula(`(${formula})`, book) }).toEqual({
        formula,
        read: expect.any(Object),
      });
  });
});

function withLineBreaks(heading: string): string {
  return heading.replaceAll("_x000A_", "\n");
}

describe("read by another reader", () => {
  test.each(files)("$name has the values that were written", async ({ name, content }) => {
    // Errors come as empty cells.
    const read = await readExcelFile(new Blob([new Uint8Array(bytesOf(name))]));
    expect(read.map(({ sheet }) => sheet)).toEqual(content.sheets.map((sheet) => sheet.name));
    for (const [i, sheet] of content.sheets.entries())
      expect(tidy(read[i]?.data ?? [], withoutErrors)).toEqual(tidy(values(sheet), withoutErrors));
  });
});

describe("read by LibreOffice", () => {
  // It calculates again what may fill several cells, and does not know our functions: see the values there.
  const shown = files.filter(({ name }) => name !== "measure-book-demo.xlsx" && name !== "every-kind.xlsx");
  let folder = "";
  let sheets: ReadonlyMap<string, Uint8Array>;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(os.tmpdir(), "measure-book-written-"));
    for (const { name } of shown) await writeFile(path.join(folder, name), bytesOf(name));
    sheets = await convert(
      shown.map(({ name }) => path.join(folder, name)),
      allSheetsAsCsv,
    );
  }, libreOfficeTimeout);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  test.each(shown)("$name shows the values that were written", ({ name, content }) => {
    for (const sheet of content.sheets) {
      const csv = new TextDecoder().decode(sheets.get(`${path.parse(name).name}-${sheet.name}.csv`));
      expect(tidy(Papa.parse<string[]>(csv, { delimiter: "," }).data, asShown)).toEqual(
        tidy(values(sheet), asShown),
      );
    }
  });
});

describe("read by us", () => {
  test.each(files)("$name has the values that were written", async ({ name, content }) => {
    const { sheets, leftOut } = await readXlsx(bytesOf(name));
    expect(leftOut).toEqual([]);
    for (const [i, sheet] of content.sheets.entries())
      expect(tidy(values(sheets[i] ?? sheet), asRead)).toEqual(tidy(values(sheet), asRead));
  });
});

/** Headings of tables are text and distinct in files. */
function values(sheet: SheetContent): readonly (readonly Cell[])[] {
  const headings = new Map(
    (sheet.tables ?? []).flatMap((table) =>
      tableHeadings(table, sheet).map((heading, i) => [
        `${String(table.row)},${String(table.column + i)}`,
        heading,
      ]),
    ),
  );
  const height = Math.max(sheet.cells.length, ...(sheet.tables ?? []).map(({ row }) => row + 1));
  return Array.from({ length: height }, (_, r) => {
    const row = sheet.cells[r] ?? [];
    const ends = (sheet.tables ?? []).map((table) => (table.row === r ? table.column + table.columns : 0));
    return Array.from(
      { length: Math.max(row.length, ...ends) },
      (__, c) => headings.get(`${String(r)},${String(c)}`) ?? row[c]?.value,
    );
  });
}

/** Without empty cells at the ends of rows, nor empty rows at the end. */
function tidy<T>(rows: readonly (readonly T[])[], shown: (value: T) => unknown): unknown[][] {
  const cut = rows.map((row) => {
    const line = row.map(shown);
    return line.slice(0, line.findLastIndex((value) => value !== "") + 1);
  });
  return cut.slice(0, cut.findLastIndex((row) => row.length > 0) + 1);
}

function asRead(value: unknown): unknown {
  if (value === undefined || value === null) return "";
  if (value instanceof Date) return dayNumber(value);
  return typeof value === "object" && "error" in value ? value.error : value;
}

/** This reader gives nothing for error values, as text too. */
function withoutErrors(value: unknown): unknown {
  const read = asRead(value);
  return typeof read === "object" || (typeof read === "string" && /^#[A-Z/0]+[!?]?$/.test(read)) ? "" : read;
}

/** CSV has text only: numbers of up to 15 digits, percentages and dates as they are shown. */
function asShown(value: unknown): unknown {
  const read = asRead(value);
  if (typeof read === "boolean") return read ? "TRUE" : "FALSE";
  if (typeof read === "number") return Number(read.toPrecision(12));
  const [, percent] = /^(-?[\d.]+)%$/.exec(String(read)) ?? [];
  if (percent !== undefined) return Number((Number(percent) / 100).toPrecision(12));
  const [, month, day, year] = /^(\d\d)\/(\d\d)\/(\d{4})$/.exec(String(read)) ?? [];
  if (year !== undefined) return dayNumber(new Date(`${year}-${month ?? ""}-${day ?? ""}`));
  const number = String(read).trim() === "" ? Number.NaN : Number(read);
  return Number.isNaN(number) ? read : Number(number.toPrecision(12));
}

/** Days since the end of 1899. */
function dayNumber(date: Date): number {
  return (date.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;
}
