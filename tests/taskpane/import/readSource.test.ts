import { describe, expect, test } from "vitest";
import { writeXlsx as writeForeign } from "hucre/xlsx";
import { leftOutWords } from "../../../addin/workbook/xlsx/leftOutWords.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { inSteps } from "../../../taskpane/import/inSteps.ts";
import { prepare } from "../../../taskpane/import/prepare.ts";
import { openFile, readSource } from "../../../taskpane/import/readSource.ts";
import { workbookParts } from "../../../taskpane/import/workbookParts.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { editsFor, valuesOf } from "./importing.ts";

/** A file of the older Office: its header, then a directory entry of the name that tells what it is. */
function container(name: string): Uint8Array {
  const bytes = new Uint8Array(4096);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...name].forEach((letter, i) => bytes.set([letter.charCodeAt(0), 0], 1024 + 128 + i * 2));
  return bytes;
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const noPause = (): Promise<void> => Promise.resolve();
const { signal } = new AbortController();

describe("a text file", () => {
  test("is read as detected, and as the user says", async () => {
    const source = await openFile("chart.csv", utf8("Figure;Waist\nMira;13,5\n"));
    const read = await readSource(source, {}, noPause, signal);
    expect(read).toMatchObject({ encoding: "utf-8", delimiter: ";" });
    expect(read.source.rows).toEqual([
      ["Figure", "Waist"],
      ["Mira", "13,5"],
    ]);
    const other = await readSource(source, { delimiter: "," }, noPause, signal);
    expect(other.source.rows).toEqual([["Figure;Waist"], ["Mira;13", "5"]]);
  });

  test("that is no text is refused with what it looks like", async () => {
    const source = await openFile("chart.csv", utf8("%PDF-1.7"));
    await expect(readSource(source, {}, noPause, signal)).rejects.toThrow("it looks like a PDF document");
  });

  test("that is empty is refused", async () => {
    const source = await openFile("chart.csv", new Uint8Array());
    await expect(readSource(source, {}, noPause, signal)).rejects.toThrow("“chart.csv” is empty.");
  });

  test("stops when cancelled", async () => {
    const control = new AbortController();
    const source = await openFile("chart.csv", utf8("Figure,Waist\n" + "Mira,60\n".repeat(100_000)));
    const stop = (): Promise<void> => {
      control.abort(new Error("cancelled"));
      return Promise.resolve();
    };
    await expect(readSource(source, {}, stop, control.signal)).rejects.toThrow("cancelled");
  });
});

describe("an .xlsx file", () => {
  const content = {
    sheets: [
      { name: "About", cells: [[{ value: "An invented maker" }]] },
      {
        name: "Chart",
        cells: [
          [{ value: "Title" }],
          [{ value: "Figure" }, { value: "Waist (in)" }],
          [{ value: "Mira" }, { value: 5.375 }],
          [{ value: "Tola" }, { value: 46150, format: "d-mmm" }],
        ],
        tables: [{ name: "Figures", row: 1, column: 0, rows: 3, columns: 2 }],
      },
    ],
  };

  test("whatever its name, is read as a workbook: tables first, then sheets", async () => {
    const source = await openFile("chart.csv", (await writeXlsx(content)).bytes);
    expect(source.kind).toBe("workbook");
    if (source.kind !== "workbook") return;
    expect(workbookParts(source.content).map((part) => part.label)).toEqual([
      "Table Figures on sheet Chart",
      "Sheet About",
      "Sheet Chart",
    ]);
    const [part] = workbookParts(source.content);
    const read = await readSource(source, { part }, noPause, signal);
    expect(read.source.rows).toEqual([
      ["Figure", "Waist (in)"],
      ["Mira", 5.375],
      ["Tola", 46150],
    ]);
    expect(read.source.numbers).toEqual([2, 3, 4]);
  });

  test("numbers arrive as readings; a fraction that became a date is refused with the fractions it may have been", async () => {
    const source = await openFile("chart.xlsx", (await writeXlsx(content)).bytes);
    if (source.kind !== "workbook") throw new Error("The file was not read as a workbook.");
    const part = workbookParts(source.content)[0];
    const read = await readSource(source, { part }, noPause, signal);
    const twins = { inChart: "skip", inFile: "keep both" } as const;
    const { plan } = prepare("The file", read, { columns: new Map(), twins, keepRefused: true }, undefined);
    expect(plan.cell(0, 1)).toEqual({ kind: "new", value: 5.375, as: "reading" });
    expect(plan.cell(1, 1)).toMatchObject({
      kind: "refused",
      reason: expect.stringContaining("changed: 5/8.") as string,
    });

    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    await workbook.apply("Import", await editsFor(workbook, source));
    expect(await valuesOf(workbook, "Figures")).toEqual([
      ["Figure", "Waist girth (in)"],
      ["Mira", 5.375],
      ["Tola", "8 May 2026"],
    ]);
  });
});

test("a workbook with a password, and one of the older kind, are refused with what to do", async () => {
  const locked = await writeForeign({
    sheets: [{ name: "Chart", rows: [["Figure"]] }],
    encryption: { password: "a", spinCount: 1000 },
  });
  await expect(openFile("chart.xlsx", locked)).rejects.toThrow(
    /protected with a password.*save a copy without the password/,
  );
  await expect(openFile("chart.csv", container("Workbook"))).rejects.toThrow(/older kind \(\.xls\)/);
});

test("what of a workbook is not kept is told", async () => {
  const chart = [
    ["Figure", "Waist (mm)"],
    ["Mira", 60],
  ];
  const bytes = await writeForeign({ sheets: [{ name: "Chart", rows: chart, hidden: true }] });
  const source = await openFile("chart.xlsx", bytes);
  if (source.kind !== "workbook") throw new Error("The file was not read as a workbook.");
  expect(leftOutWords(source.name, source.leftOut)).toMatch(/^Not taken over from “chart\.xlsx”: .*“Chart”/);
});

test("work in steps gives its result, or stops when cancelled", async () => {
  function* steps(): Generator<number, string> {
    yield 0.5;
    yield 1;
    return "done";
  }
  const shares: number[] = [];
  const note = (share: number): Promise<void> => {
    shares.push(share);
    return Promise.resolve();
  };
  expect(await inSteps(steps(), note, signal)).toBe("done");
  expect(shares).toEqual([0.5, 1]);
  const control = new AbortController();
  control.abort(new Error("cancelled"));
  await expect(inSteps(steps(), note, control.signal)).rejects.toThrow("cancelled");
});
