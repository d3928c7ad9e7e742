import { strFromU8, unzipSync } from "fflate";
import { afterEach, describe, expect, test, vi } from "vitest";
import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import { verdictBlocks, verdictCells } from "../../addin/workbook/verdictCells.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { openExcel } from "./excel/openExcel.ts";

const v = (value?: string): CellContent => ({ ...(value !== undefined && { value }), style: "verdict" });
const sheet: SheetContent = {
  name: "Fit",
  cells: [
    [{ value: "Pattern", style: "heading" }, { value: "Ada" }, { value: "Bela" }],
    [{ value: "P1" }, v("fits"), v("too tight")],
    [{ value: "P2" }, v(), v()],
    [{ value: "P3" }, { value: "no verdict" }, v("snug")],
  ],
};

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("cells of verdicts", () => {
  test("are taken together in as few rectangles as their rows allow", () => {
    expect(verdictBlocks(sheet.cells)).toEqual([
      { row: 1, column: 1, rows: 2, columns: 2 },
      { row: 3, column: 2, rows: 1, columns: 1 },
    ]);
    expect(verdictBlocks([[undefined, v()], [], [undefined, v()]])).toHaveLength(2);
  });

  // ECMA-376 part 1, 18.3.1.10 (cfRule of the type expression) and 18.8.17 (dxf with a number format).
  test("have a rule for each verdict in a file, and come back as they were", async () => {
    const { bytes } = await writeXlsx({ sheets: [sheet] });
    const parts = unzipSync(bytes);
    const rules = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
    const looks = strFromU8(parts["xl/styles.xml"]!);
    expect(rules).toContain('<conditionalFormatting sqref="B2:C3">');
    expect(rules.match(/<cfRule /g)).toHaveLength(2 * verdictCells.length);
    for (const { word, sign } of verdictCells) {
      expect(rules).toMatch(new RegExp(`EXACT\\(B2,(&quot;|")${word}(&quot;|")\\)`));
      expect(looks).toMatch(new RegExp(`<numFmt [^>]*formatCode="&quot;\\${sign} &quot;@"`));
    }
    const { sheets, leftOut } = await readXlsx(bytes);
    expect(sheets[0]?.cells).toEqual(sheet.cells);
    expect(leftOut).toEqual([]);
  });

  test("have a rule for each verdict in Excel, written for the first cell of the range", async () => {
    const { double, workbook } = openExcel({ sheets: [{ name: "Start", cells: [] }] });
    await workbook.apply("Write the fit", [{ kind: "sheet", sheet }]);
    const cells = double.book.sheets.find(({ name }) => name === "Fit")!.cells;
    const rulesOf = (row: number, column: number) =>
      cells.get(`${String(row)},${String(column)}`)?.conditional ?? [];
    expect(rulesOf(1, 1).map(({ numberFormat }) => numberFormat)).toEqual(
      verdictCells.map(({ sign }) => `"${sign} "@`),
    );
    expect(rulesOf(1, 1)).toEqual(rulesOf(2, 2));
    expect(rulesOf(1, 0)).toEqual([]);
    expect(rulesOf(3, 2)).toHaveLength(verdictCells.length);
    await workbook.undo();
    expect(await workbook.sheets()).toEqual(["Start"]);
  });
});
