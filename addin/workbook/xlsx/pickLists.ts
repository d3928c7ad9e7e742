import { cellRef, parseCellRef, rangeRef, type DataValidation } from "hucre/xlsx";
import { cellText } from "../../chart/cell.ts";
import { sameName } from "../names.ts";
import type { PickListContent, SheetContent } from "../content.ts";

/** A column of a table keeps its list when the table grows by so many rows in a program that moves no references. */
const mostNames = 1000;

/** So many areas with a list are kept; a file may name any number of them. */
const mostAreas = 10_000;

/** The longest list of words that a file holds. Source: Microsoft, “Excel specifications and limits”. */
const longestWords = 255;

/** Lists to choose from in the file’s terms. Those of tables that are not in the workbook are left out. */
export function storedPickLists(sheet: SheetContent, sheets: readonly SheetContent[]): DataValidation[] {
  return (sheet.pickLists ?? []).flatMap(({ row, column, rows, columns, from }) => {
    const source = "table" in from ? columnFormula(from, sheets) : wordsFormula(from);
    if (source === undefined) return [];
    return [
      {
        type: "list" as const,
        range: rangeRef(row, column, row + rows - 1, column + columns - 1),
        formula1: source,
        allowBlank: true,
      },
    ];
  });
}

function wordsFormula(words: readonly string[]): string | undefined {
  const joined = words.join(",");
  const fits =
    words.length > 0 && joined.length <= longestWords && words.every((word) => !word.includes(","));
  return fits ? `"${joined.replaceAll('"', '""')}"` : undefined;
}

/** As much of the column as is filled: lists can name neither a table nor a range that grows. */
function columnFormula(
  { table, heading }: { readonly table: string; readonly heading: string },
  sheets: readonly SheetContent[],
): string | undefined {
  for (const sheet of sheets)
    for (const each of sheet.tables ?? []) {
      if (!sameName(each.name, table)) continue;
      const headings = (sheet.cells[each.row] ?? []).slice(each.column, each.column + each.columns);
      const at = headings.findIndex((cell) => sameName(cellText(cell?.value), heading));
      if (at < 0) return undefined;
      const absolute = (row: number) => cellRef(row, each.column + at).replace(/([A-Z]+)(\d+)/, "$$$1$$$2");
      const owner = sheetPrefix(sheet.name);
      const first = absolute(each.row + 1);
      return `OFFSET(${owner}${first},0,0,MAX(1,COUNTA(${owner}${first}:${absolute(each.row + mostNames)})),1)`;
    }
  return undefined;
}

/** A sheet’s name as it stands before a reference. */
export function sheetPrefix(name: string): string {
  return `'${name.replaceAll("'", "''")}'!`;
}

const cell = String.raw`\$?([A-Z]{1,3})\$?(\d+)`;
const owner = String.raw`(?:'((?:[^']|'')*)'|([\p{L}\w.]+))!`;
/** Our own form, and a plain range, whose first cell stands below the heading. */
const ofColumn = new RegExp(String.raw`^=?(?:OFFSET\()?${owner}${cell}(?::${cell}$|,0,0,MAX\()`, "iu");

/** Lists that can be kept. `leftOver` counts the lists and rules for input that cannot. */
export function readPickLists(
  stored: readonly DataValidation[],
  sheets: readonly SheetContent[],
): { readonly pickLists: readonly PickListContent[]; readonly leftOver: number } {
  const read = stored.map((each) => ({ areas: each.range.split(/\s+/), from: sourceOf(each, sheets) }));
  return {
    pickLists: read
      .flatMap(({ areas, from }) => (from ? areas.map((area) => ({ ...cells(area), from })) : []))
      .filter(({ row, column, rows, columns }) => row >= 0 && column >= 0 && rows > 0 && columns > 0)
      .slice(0, mostAreas),
    leftOver: read.filter(({ from }) => from === undefined).length,
  };
}

function sourceOf(
  { type, values, formula1 = "" }: DataValidation,
  sheets: readonly SheetContent[],
): PickListContent["from"] | undefined {
  if (type !== "list") return undefined;
  if (values) return values.map((word) => word.trim().replaceAll('""', '"'));
  const [, quoted, bare, letters = "", digits = ""] = ofColumn.exec(formula1) ?? [];
  const name = quoted?.replaceAll("''", "'") ?? bare;
  const sheet = name === undefined ? undefined : sheets.find((each) => sameName(each.name, name));
  if (!sheet) return undefined;
  const { row, col } = parseCellRef(`${letters}${digits}`);
  const table = sheet.tables?.find(
    (each) => each.row + 1 === row && col >= each.column && col < each.column + each.columns,
  );
  return table && { table: table.name, heading: cellText(sheet.cells[table.row]?.[col]?.value) };
}

function cells(area: string): Omit<PickListContent, "from"> {
  const [from = "A1", to = from] = area.replaceAll("$", "").split(":");
  const first = parseCellRef(from);
  const last = parseCellRef(to);
  return {
    row: first.row,
    column: first.col,
    rows: last.row - first.row + 1,
    columns: last.col - first.col + 1,
  };
}
