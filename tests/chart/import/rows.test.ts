import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { detectDecimalMark } from "../../../addin/chart/import/decimalMark.ts";
import { detectDelimiter } from "../../../addin/chart/import/delimiter.ts";
import type { Delimiter } from "../../../addin/chart/import/rows.ts";
import { delimiters, readRows } from "../../../addin/chart/import/rows.ts";

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

describe("reading rows", () => {
  // RFC 4180, section 2: quoted fields may hold line breaks, delimiters and doubled quotation marks.
  test("quotes, line breaks and doubled quotation marks", async () => {
    const { rows } = await readRows('Figure,Waist\r\n"Mira, first","5 3/8"""\r\n"two\r\nlines",8', {
      delimiter: ",",
    });
    expect(rows).toEqual([
      ["Figure", "Waist"],
      ["Mira, first", '5 3/8"'],
      ["two\nlines", "8"],
    ]);
  });

  test("inch marks without quotes stay as they are", async () => {
    const { rows } = await readRows('Mira;5 3/8";6"\n', { delimiter: ";" });
    expect(rows).toEqual([["Mira", '5 3/8"', '6"']]);
  });

  test("formulas arrive as text", async () => {
    const { rows } = await readRows("=1+1,+2,-3,@SUM(A1)\n", { delimiter: "," });
    expect(rows).toEqual([["=1+1", "+2", "-3", "@SUM(A1)"]]);
  });

  test("mixed line breaks and blank rows; row numbers are the file’s", async () => {
    const { rows, numbers } = await readRows("a,b\r\n\n , \r1,2\n", { delimiter: "," });
    expect(rows).toEqual([
      ["a", "b"],
      ["1", "2"],
    ]);
    expect(numbers).toEqual([1, 4]);
  });

  test("a quotation mark that is never closed is told", async () => {
    const { openQuote } = await readRows('a,b\n1,"2\n3,4\n', { delimiter: "," });
    expect(openQuote).toBe(2);
  });

  test("a row or a file that is too large is refused with the row when a text is longer than a cell holds, or there are too many cells", async () => {
    const most = { cells: 10, text: 20 };
    await expect(readRows(`a,b\n1,"${"x".repeat(21)}"\n`, { delimiter: ",", most })).rejects.toThrow(
      /^Row 2 holds a text of 21 characters; a cell holds 20\./,
    );
    await expect(readRows("1,2,3\n".repeat(4), { delimiter: ",", most })).rejects.toThrow(
      /^The file holds more than 10 cells/,
    );
    expect((await readRows("1,2,3\n".repeat(3), { delimiter: ",", most })).rows).toHaveLength(3);
  });

  test("any rectangle of cells written with any delimiter is read back", async () => {
    const cell = fc.string({ unit: fc.constantFrom(...'ab1 ,;\t|"\n=½'.split("")) });
    const rectangle = fc
      .integer({ min: 2, max: 5 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 8 }),
      );
    await fc.assert(
      fc.asyncProperty(
        rectangle,
        // Spaces stand within cells too: they part a printed list by what it means, and lose nothing but themselves.
        fc.constantFrom<Delimiter>(...delimiters.filter((each) => each !== " ")),
        fc.constantFrom("\n", "\r\n"),
        fc.integer({ min: 8, max: 64 }),
        async (cells, delimiter, lineBreak, chunkSize) => {
          const text = cells.map((row) => row.map(quoted).join(delimiter)).join(lineBreak);
          const read = await readRows(text, { delimiter, chunkSize, pause: () => Promise.resolve() });
          expect(read.rows).toEqual(cells.filter((row) => row.some((c) => c.trim() !== "")));
        },
      ),
    );
  });

  test("pauses say how far reading is, and cancelling stops it", async () => {
    const text = "a,b\n".repeat(1000);
    const shares: number[] = [];
    const all = await readRows(text, {
      delimiter: ",",
      chunkSize: 400,
      pause: (share) => {
        shares.push(share);
        return Promise.resolve();
      },
    });
    expect(all.rows.length).toBe(1000);
    expect(shares.length).toBe(9);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));

    const control = new AbortController();
    const stopped = readRows(text, {
      delimiter: ",",
      chunkSize: 400,
      signal: control.signal,
      pause: () => {
        control.abort(new Error("stopped"));
        return Promise.resolve();
      },
    });
    await expect(stopped).rejects.toThrow("stopped");
  });
});

describe("the delimiter", () => {
  test.each([
    ["comma", "Figure,Bust,Waist\nMira,78.5,60\nTola,80,61.5\n", ","],
    ["semicolon beside decimal commas", "Figure;Bust;Waist\nMira;13,5;10,2\nTola;14,1;11,0\n", ";"],
    ["semicolon beside commas in headings", "Figure;Bust, cm;Waist, cm\nMira;13,5;10,2\n", ";"],
    ["tab, as pasted from a spreadsheet", "Figure\tBust\tWaist\nMira\t78.5\t60\n", "\t"],
    ["upright bar", "Figure|Bust|Waist\nMira|78.5|60\n", "|"],
    ["comma with quoted decimal commas", 'Figure,Bust,Waist\nMira,"13,5","10,2"\n', ","],
    ["a title row above", "Spring figures\nFigure;Bust;Waist\nMira;13,5;10,2\nTola;14;11\n", ";"],
    ["headings only", "Figure;Bust;Waist", ";"],
    ["one column", "Figure\nMira\n", ","],
    ["nothing", "", ","],
  ])("%s", (_, text, delimiter) => {
    expect(detectDelimiter(text)).toBe(delimiter);
  });
});

describe("the decimal mark", () => {
  test.each([
    [["13,65", "8,2"], ","],
    [["13.65", "8.2"], "."],
    [["1.250,5"], ","],
    [["1,250.5"], "."],
    [["0,125"], ","],
    [["13,125", "8,250"], ","],
    [["1,250", "78.5"], "."],
    [["136", "5 3/8"], "."],
    [[], "."],
    // Each can be two numbers: 1250 or 1.25, 8250 or 8.25.
    [["1,250", "8.250"], undefined],
    [["1.250"], undefined],
    // One who writes 19,4 and 7.6 means decimals with both; a date or a price list beside commas is no reading.
    [["19,4", "7,6 cm", "7.6", "5,4"], undefined],
    [["19,4", "12.5.2023", "12.5 wide at most"], ","],
  ] as const)("%j", (texts, mark) => {
    expect(detectDecimalMark(texts)).toBe(mark);
  });
});
