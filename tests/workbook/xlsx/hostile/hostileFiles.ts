import { deflateRawSync } from "node:zlib";
import { crc32 } from "../../../../addin/workbook/crc32.ts";
import { handMade } from "../handMade.ts";
import { rawPart, rawZip, type RawPart } from "./rawZip.ts";

/** A workbook file made to harm whoever opens it. */
export interface HostileFile {
  readonly name: string;
  make(): Uint8Array;
  /** What is said when it is refused; absent where it opens. */
  readonly refused?: RegExp;
  /** What is said to be left out where it opens. */
  readonly leftOut?: RegExp;
  /** True for those that are also opened on the page. */
  readonly onPage?: boolean;
  /** True where its formulas take seconds. */
  readonly isHeavy?: boolean;
}

const rows = (cells: string) => `<sheetData>${cells}</sheetData>`;
const text = (ref: string, value: string) => `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`;
const formula = (ref: string, code: string) => `<c r="${ref}"><f>${code}</f></c>`;
const row = (number: number, cells: string) => `<row r="${String(number)}">${cells}</row>`;
const sheet =
  (cells: string, more = "") =>
  () =>
    handMade({ sheet: rows(cells) + more });
const oneFormula = (code: string) => sheet(row(1, formula("A1", code)));
const many = (count: number, each: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => each(i)).join("");

/** A workbook whose table states this area. */
function withTable(ref: string): () => Uint8Array {
  return () =>
    handMade({
      sheet: `${rows(row(1, text("A1", "Name") + text("B1", "Bust (mm)")))}<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`,
      related: { table: "../tables/table1.xml" },
      parts: {
        "xl/tables/table1.xml": `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="T" displayName="T" ref="${ref}"><tableColumns count="2"><tableColumn id="1" name="Name"/><tableColumn id="2" name="Bust (mm)"/></tableColumns></table>`,
      },
    });
}

const megabyte = 1024 * 1024;

/** The parts of a workbook with sheets that are each this part. */
function withSheets(count: number, part: Omit<RawPart, "name">): RawPart[] {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const packages = "http://schemas.openxmlformats.org/package/2006";
  const relationship = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${office}/${kind}" Target="${target}"/>`;
  const number = (i: number) => String(i + 1);
  return [
    rawPart(
      "[Content_Types].xml",
      `<Types xmlns="${packages}/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    ),
    rawPart(
      "_rels/.rels",
      `<Relationships xmlns="${packages}/relationships">${relationship("rId1", "officeDocument", "xl/workbook.xml")}</Relationships>`,
    ),
    rawPart(
      "xl/workbook.xml",
      `<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${many(count, (i) => `<sheet name="S${number(i)}" sheetId="${number(i)}" r:id="rId${number(i)}"/>`)}</sheets></workbook>`,
    ),
    rawPart(
      "xl/_rels/workbook.xml.rels",
      `<Relationships xmlns="${packages}/relationships">${many(count, (i) => relationship(`rId${number(i)}`, "worksheet", `worksheets/sheet${number(i)}.xml`))}</Relationships>`,
    ),
    ...Array.from({ length: count }, (_, i) => ({ ...part, name: `xl/worksheets/sheet${number(i)}.xml` })),
  ];
}

/** A sheet of one cell, and so many spaces behind it. */
function paddedSheet(bytes: number): Omit<RawPart, "name"> {
  const whole = Buffer.alloc(bytes, " ");
  whole.write('<worksheet><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData></worksheet>');
  return { packed: deflateRawSync(whole), size: bytes, checksum: crc32(whole) };
}

const damagedWords = /damaged or cut short/;

/** Entities that would each become ten of the one before. */
const nestedEntities = `<!DOCTYPE x [<!ENTITY a0 "aaaaaaaaaa">${many(12, (i) => `<!ENTITY a${String(i + 1)} "${`&a${String(i)};`.repeat(10)}">`)}]>`;

export const hostileFiles: readonly HostileFile[] = [
  // Bombs.
  {
    name: "a sheet that says it is 2 GB",
    make: () => rawZip(withSheets(1, { ...paddedSheet(megabyte), size: 2 ** 31 })),
    refused: /2,049 MB when it is unpacked; at most 192 MB/,
  },
  {
    name: "a sheet of 256 MB",
    make: () => rawZip(withSheets(1, paddedSheet(256 * megabyte))),
    refused: /257 MB when it is unpacked; at most 192 MB/,
    onPage: true,
  },
  {
    name: "a sheet that says it is small and is 256 MB",
    make: () => rawZip(withSheets(1, { ...paddedSheet(256 * megabyte), size: 1000 })),
    refused: damagedWords,
    onPage: true,
  },
  {
    name: "300 sheets of 100 MB that are one part",
    make: () =>
      rawZip(
        withSheets(300, paddedSheet(100 * megabyte)).map((part, i) => ({ ...part, overlapsBefore: i > 4 })),
      ),
    refused: damagedWords,
    onPage: true,
  },
  {
    name: "300 sheets of 10 MB",
    make: () => rawZip(withSheets(300, paddedSheet(10 * megabyte))),
    refused: /3,001 MB when it is unpacked/,
  },
  {
    name: "two sheets that are one part by their relationships",
    make: () =>
      handMade({
        sheet: rows(row(1, text("A1", "x"))),
        moreSheets: [{ name: "Second" }],
        parts: {
          "xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${["rId1", "rId10"].map((id) => `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/>`).join("")}</Relationships>`,
        },
      }),
    refused: damagedWords,
  },
  {
    name: "10,000 parts",
    make: () =>
      rawZip([
        ...withSheets(1, paddedSheet(200)),
        ...Array.from({ length: 10_000 }, (_, i) => rawPart(`xl/p${String(i)}.xml`, "<a/>")),
      ]),
    refused: /more than 5,000 parts/,
  },
  {
    name: "1,000 sheets",
    make: () => rawZip(withSheets(1000, paddedSheet(200))),
    refused: /1,000 sheets; at most 250/,
  },
  // XML.
  {
    name: "nested entities",
    make: () => {
      const parts = withSheets(
        1,
        rawPart(
          "",
          `${nestedEntities}<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&a12;</t></is></c></row></sheetData></worksheet>`,
        ),
      );
      return rawZip(parts);
    },
    refused: damagedWords,
    onPage: true,
  },
  {
    name: "100,000 elements within one another",
    make: sheet("<a>".repeat(100_000)),
    refused: /elements 100,00\d deep/,
  },
  {
    name: "9,000,000 empty elements",
    make: sheet("<a/>".repeat(9_000_000)),
    refused: /more than 8,000,000 elements/,
  },
  {
    name: "600,000 elements in the styles",
    make: () => handMade({ sheet: rows(""), styles: "<font/>".repeat(600_000) }),
    refused: /more than 500,000 elements beside its cells/,
  },
  {
    name: "70,000 cell formats",
    make: () =>
      handMade({ sheet: rows(""), styles: `<cellXfs>${'<xf numFmtId="0"/>'.repeat(70_000)}</cellXfs>` }),
    refused: /70,000 cell formats; at most 65,490/,
  },
  {
    name: "a text with a declared external entity",
    make: () =>
      rawZip(
        withSheets(
          1,
          rawPart("", `<!DOCTYPE x SYSTEM "http://localhost:9/x.dtd"><worksheet><sheetData/></worksheet>`),
        ),
      ),
    refused: damagedWords,
  },
  // Cells and areas.
  {
    name: "a cell in XFD1000",
    make: sheet(row(1, text("A1", "x")) + row(1000, text("XFD1000", "x"))),
    refused: /16,384,000 cells, empty ones counted, up to cell XFD1000/,
    onPage: true,
  },
  {
    name: "a cell in XFD1048576",
    make: sheet(row(1_048_576, text("XFD1048576", "x"))),
    refused: /up to cell XFD1048576/,
  },
  {
    name: "a cell with a look alone in XFD1048576",
    make: sheet(row(1, text("A1", "x")) + row(1_048_576, '<c r="XFD1048576" s="0"/>')),
    onPage: true,
  },
  { name: "a cell in A1048576", make: sheet(row(1_048_576, text("A1048576", "x"))), onPage: true },
  { name: "a cell in XFD1", make: sheet(row(1, text("XFD1", "x"))), onPage: true },
  {
    name: "a cell beyond the last",
    make: sheet(row(1_048_577, text("ZZZZ1048577", "x"))),
    refused: damagedWords,
  },
  {
    name: "700,000 cells",
    make: sheet(many(7000, (r) => row(r + 1, "<c><v>1</v></c>".repeat(100)))),
    refused: /more than 600,000 cells/,
  },
  {
    name: "a table to XFD1048576",
    make: withTable("A1:XFD1048576"),
    refused: /the table “T” of 1,048,576 rows and 16,384 columns/,
    onPage: true,
  },
  { name: "a table of no area", make: withTable("B2:A1") },
  { name: "a table at no place", make: withTable("x:y") },
  {
    name: "1,000 wide merges",
    make: sheet(
      row(1, text("A1", "x")) + row(1000, text("B1000", "y")),
      `<mergeCells>${many(1000, (i) => `<mergeCell ref="A${String(i + 1)}:XFD${String(i + 1)}"/>`)}</mergeCells>`,
    ),
    leftOut: /merged cells/,
    onPage: true,
  },
  {
    name: "20,000 merges over one another",
    make: sheet(
      many(1000, (r) => row(r + 1, text(`CV${String(r + 1)}`, "x"))),
      `<mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(20_000)}</mergeCells>`,
    ),
    refused: /merged cells that lie over one another/,
    onPage: true,
  },
  {
    name: "30,000 merges",
    make: sheet("", `<mergeCells>${'<mergeCell ref="A1:B2"/>'.repeat(30_000)}</mergeCells>`),
    refused: /more than 20,000 merged cells/,
  },
  {
    name: "100,000 statements of all widths",
    make: () =>
      handMade({
        sheet: `<cols>${'<col min="1" max="16384" width="9"/>'.repeat(100_000)}</cols>${rows("")}`,
      }),
    refused: /more than 100,000 widths/,
  },
  {
    name: "widths and frozen panes without end",
    make: () =>
      handMade({
        sheet: `<sheetViews><sheetView><pane xSplit="1e9" ySplit="1e999" state="frozen"/></sheetView></sheetViews><cols><col min="1" max="3" width="1e9"/></cols>${rows(row(1, text("A1", "x")))}`,
      }),
    onPage: true,
  },
  {
    name: "20,000 array formulas over one another",
    make: sheet(
      many(2000, (r) =>
        row(
          r + 1,
          `<c r="A${String(r + 1)}"><f t="array" ref="A${String(r + 1)}:Z${String(r + 5000)}">ROW(1:5)</f><v>1</v></c>`,
        ),
      ),
    ),
    refused: /results of more than 2,500,000 cells/,
  },
  {
    name: "numbers that are none",
    make: sheet(
      row(
        1,
        '<c r="A1"><v>1e999</v></c><c r="B1"><v>-1e999</v></c><c r="C1"><v>0x10</v></c><c r="D1" t="b"><v>7</v></c><c r="E1" t="s"><v>-1</v></c>',
      ),
    ),
    onPage: true,
  },
  // Texts.
  {
    name: "a text of 40,000 characters",
    make: sheet(row(1, text("A1", "x".repeat(40_000)))),
    leftOut: /the end of a text of more than 32,767 characters, or 4,000 without a space, on sheet “First”/,
    onPage: true,
  },
  {
    name: "a text of 32,767 characters in words",
    make: sheet(row(1, text("A1", `${"x y ".repeat(8191)}xyz`))),
    onPage: true,
  },
  {
    name: "a shared text of 30,000 characters in 2,000 cells",
    make: () =>
      handMade({
        sheet: rows(many(2000, (r) => row(r + 1, `<c r="A${String(r + 1)}" t="s"><v>0</v></c>`))),
        parts: {
          "xl/sharedStrings.xml": `<sst><si><t>${"xy ".repeat(10_000)}</t></si></sst>`,
          "xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
        },
      }),
    refused: /texts of more than 30,000,000 characters/,
  },
  {
    name: "a number format of 10,000 brackets",
    make: () =>
      handMade({
        sheet: rows(row(1, '<c r="A1" s="0"><v>1</v></c>')),
        styles: `<numFmts><numFmt numFmtId="164" formatCode="${"[".repeat(10_000)}"/></numFmts><cellXfs><xf numFmtId="164" applyNumberFormat="1"/></cellXfs>`,
      }),
    onPage: true,
  },
  // Formulas.
  {
    name: "100,000 parentheses",
    make: oneFormula(`${"(".repeat(100_000)}1${")".repeat(100_000)}`),
    leftOut: /a formula that is longer than 8,192 characters or 1,000 operators, which is text now,/,
    onPage: true,
  },
  {
    name: "1,000 parentheses",
    make: oneFormula(`${"(".repeat(1000)}1${")".repeat(1000)}`),
    leftOut: /a formula that is nested more than 64 deep/,
    onPage: true,
  },
  { name: "64 parentheses", make: oneFormula(`${"(".repeat(64)}1${")".repeat(64)}`), onPage: true },
  { name: "8,000 minus signs", make: oneFormula(`${"-".repeat(8000)}1`), onPage: true },
  {
    name: "a sum of 4,000 terms",
    make: oneFormula(`1${"+1".repeat(4000)}`),
    leftOut: /a formula that is longer than/,
  },
  {
    name: "a sum of 999 terms",
    make: oneFormula(`1${"+1".repeat(998)}`),
    onPage: true,
  },
  {
    name: "MAKEARRAY of 10,000 × 10,000",
    make: oneFormula("_xlfn.MAKEARRAY(10000,10000,_xlfn.LAMBDA(_xlpm.r,_xlpm.c,_xlpm.r*_xlpm.c))"),
    onPage: true,
  },
  { name: "SEQUENCE of 1,048,576 × 16,384", make: oneFormula("_xlfn.SEQUENCE(1048576,16384)"), onPage: true },
  {
    name: "RANDARRAY of 1,048,576 × 16,384",
    make: oneFormula("_xlfn.RANDARRAY(1048576,16384)"),
    onPage: true,
  },
  { name: "MUNIT of 100,000", make: oneFormula("_xlfn.MUNIT(100000)"), onPage: true },
  { name: "EXPAND to 1,048,576 × 16,384", make: oneFormula("_xlfn.EXPAND(1,1048576,16384,0)"), onPage: true },
  { name: "REPT of 1,000,000,000", make: oneFormula('REPT("x",1000000000)'), onPage: true },
  {
    name: "a table of sums over every cell",
    make: sheet(
      many(300, (r) =>
        row(r + 1, formula(`A${String(r + 1)}`, `SUM(${["B", "C", "D"].map((c) => `${c}:XFD`).join(",")})`)),
      ),
    ),
    isHeavy: true,
    onPage: true,
  },
  {
    name: "texts that double 40 times",
    make: sheet(
      row(1, text("A1", "x")) +
        many(40, (i) => row(i + 2, formula(`A${String(i + 2)}`, `A${String(i + 1)}&amp;A${String(i + 1)}`))),
    ),
    onPage: true,
  },
  {
    name: "sums that double 40 times",
    make: sheet(
      row(1, '<c r="A1"><v>1</v></c>') +
        many(40, (i) => row(i + 2, formula(`A${String(i + 2)}`, `A${String(i + 1)}+A${String(i + 1)}`))),
    ),
    onPage: true,
  },
  {
    name: "arrays that double 40 times",
    make: oneFormula(
      `_xlfn.LET(${many(40, (i) => `_xlpm.a${String(i + 1)},_xlfn.VSTACK(${i === 0 ? "1,1" : `_xlpm.a${String(i)},_xlpm.a${String(i)}`}),`)}ROWS(_xlpm.a40))`,
    ),
    onPage: true,
  },
  {
    name: "lambdas within lambdas",
    make: oneFormula(
      "SUM(_xlfn.MAP(_xlfn.SEQUENCE(3000),_xlfn.LAMBDA(_xlpm.a,SUM(_xlfn.MAP(_xlfn.SEQUENCE(3000),_xlfn.LAMBDA(_xlpm.b,_xlpm.a*_xlpm.b))))))",
    ),
    onPage: true,
  },
  {
    name: "a chain of 20,000 formulas",
    make: sheet(
      row(1, '<c r="A1"><v>1</v></c>') +
        many(20_000, (i) => row(i + 2, formula(`A${String(i + 2)}`, `A${String(i + 1)}+1`))),
    ),
    isHeavy: true,
    onPage: true,
  },
  {
    name: "a chain of 20,000 formulas, last first",
    make: sheet(
      many(20_000, (i) => row(i + 1, formula(`A${String(i + 1)}`, `A${String(i + 2)}+1`))) +
        row(20_001, '<c r="A20001"><v>1</v></c>'),
    ),
    isHeavy: true,
    onPage: true,
  },
  {
    name: "formulas in a ring",
    make: sheet(
      many(100, (i) => row(i + 1, formula(`A${String(i + 1)}`, `A${String(((i + 1) % 100) + 1)}+1`))),
    ),
    onPage: true,
  },
  {
    name: "a filled-down formula of 8,000 characters in 10,000 cells",
    make: sheet(
      many(10_000, (i) =>
        row(
          i + 1,
          `<c r="A${String(i + 1)}"><f t="shared" si="0"${i === 0 ? ' ref="A1:A10000"' : ""}>${i === 0 ? `1${"+B1".repeat(2600)}` : ""}</f></c>`,
        ),
      ),
    ),
    refused: /texts of more than 30,000,000 characters/,
  },
  {
    name: "a formula that asks another computer",
    make: oneFormula('_xlfn.WEBSERVICE("http://localhost:9/?"&amp;A2)'),
    leftOut: /a formula that would ask another computer or program, which is text now,/,
    onPage: true,
  },
  {
    name: "a formula that starts a program",
    make: oneFormula("cmd|'/c calc'!A0"),
    leftOut: /would ask another computer or program/,
  },
];
