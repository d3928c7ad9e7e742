import type { Sheet, Workbook } from "hucre/xlsx";
import { isDecorated, recognisedStyle } from "./looks.ts";
import { isVerdictRule } from "./verdictRules.ts";

/**
 * In short phrases, what a file holds that the workbook content cannot keep.
 *
 * @param names of the parts of the file
 * @param rules by sheet, how many lists and rules for input could not be kept
 */
export function leftOut(
  workbook: Workbook,
  names: readonly string[],
  rules: readonly number[],
): readonly string[] {
  const ofSheets = workbook.sheets.flatMap((sheet, i) =>
    fromSheet(sheet, rules[i] ?? 0).map((what) => `${what} on sheet “${sheet.name}”`),
  );
  const hidden = workbook.sheets
    .filter((sheet) => sheet.hidden || sheet.veryHidden)
    .map((sheet) => `that sheet “${sheet.name}” was hidden: it is shown now`);
  return [...ofSheets, ...hidden, ...fromWorkbook(workbook, names)];
}

function fromWorkbook(workbook: Workbook, names: readonly string[]): readonly string[] {
  const ranges = (workbook.namedRanges ?? []).map((range) => `“${range.name}”`);
  return chosen([
    [names.some((name) => name.endsWith("vbaProject.bin")), "the macros"],
    [ranges.length > 0, `the names of cell ranges: ${ranges.join(", ")}`],
    [(workbook.externalLinks ?? []).length > 0, "the links to other workbooks"],
    [
      workbook.sheets.some((sheet) =>
        [...(sheet.cells?.values() ?? [])].some((cell) => isForeign(cell.style)),
      ),
      "some colours, borders and letter styles",
    ],
  ]);
}

function isForeign(style: Parameters<typeof isDecorated>[0] | undefined): boolean {
  return style !== undefined && recognisedStyle(style) === undefined && isDecorated(style);
}

function fromSheet(sheet: Sheet, rules: number): readonly string[] {
  const cells = [...(sheet.cells?.values() ?? [])];
  return chosen([
    [some(sheet.charts), counted(sheet.charts, "chart")],
    [some(sheet.images), counted(sheet.images, "picture")],
    [some(sheet.textBoxes), counted(sheet.textBoxes, "text box", "text boxes")],
    [some(sheet.pivotTables), counted(sheet.pivotTables, "pivot table")],
    [some(sheet.sparklines), counted(sheet.sparklines, "small chart in a cell", "small charts in cells")],
    [some(sheet.merges), "merged cells, which are single cells now, with the text in the first,"],
    [rules > 0, "rules for input"],
    [(sheet.conditionalRules ?? []).some((rule) => !isVerdictRule(rule)), "colours that follow rules"],
    [cells.some((cell) => cell.hyperlink), "links, of which the text stays,"],
    [
      [...(sheet.rowDefs?.values() ?? []), ...(sheet.columns ?? [])].some((each) => each.hidden),
      "hidden rows or columns, which are shown now,",
    ],
    [sheet.protection?.sheet === true, "the protection against changes"],
  ]);
}

function some(things: readonly unknown[] | undefined): boolean {
  return (things ?? []).length > 0;
}

function counted(things: readonly unknown[] | undefined, one: string, many = `${one}s`): string {
  const count = (things ?? []).length;
  return count === 1 ? `1 ${one}` : `${String(count)} ${many}`;
}

function chosen(phrases: readonly (readonly [boolean, string])[]): readonly string[] {
  return phrases.filter(([holds]) => holds).map(([, phrase]) => phrase);
}
