import { cellRef, parseCellRef, type Cell as StoredCell, type CellValue, type Sheet } from "hucre/xlsx";
import type { Cell } from "../../chart/cell.ts";
import type { CellContent, NoteContent, SheetContent, TableContent } from "../content.ts";
import { pixelWidth } from "./columnWidth.ts";
import { recognisedStyle } from "./looks.ts";
import { shiftFormula } from "./shiftFormula.ts";
import { typedFormula } from "./storedFormula.ts";
import { plainText } from "./storedText.ts";

type Grid = readonly (readonly (CellContent | undefined)[])[];

/** One sheet of a file as workbook content. `from1904`: whether the file counts dates from 1904. */
export function readSheet(sheet: Sheet, from1904: boolean): SheetContent {
  const cells = trimmed(spillsMarked(readCells(sheet, from1904)));
  const widths = readWidths(sheet.columns ?? [], cells);
  const tables = (sheet.tables ?? []).flatMap((table) => readTable(table, cells));
  const notes = readNotes(sheet);
  return {
    name: sheet.name,
    cells,
    ...(sheet.freezePane?.rows && { frozenRows: sheet.freezePane.rows }),
    ...(sheet.freezePane?.columns && { frozenColumns: sheet.freezePane.columns }),
    ...(widths.length > 0 && { columnWidths: widths }),
    ...(tables.length > 0 && { tables }),
    ...(notes.length > 0 && { notes }),
  };
}

/** In pixels. Some programs state a width for the whole rest of the sheet: that is no choice of anybody. */
function readWidths(columns: NonNullable<Sheet["columns"]>, cells: Grid): readonly (number | undefined)[] {
  const used = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const stated = columns.length > 1000 ? columns.slice(0, used) : columns;
  return withoutTail(stated.map(({ width }) => (width === undefined ? undefined : pixelWidth(width))));
}

function readCells(sheet: Sheet, from1904: boolean): Grid {
  const covered = coveredByMerges(sheet);
  const shared = sharedFormulas(sheet);
  return sheet.rows.map((row, r) =>
    row.map((value, c) => {
      const key = `${String(r)},${String(c)}`;
      if (covered.has(key)) return undefined;
      const stored = sheet.cells?.get(key);
      return readCell(value, stored, stored && formulaOf(stored, r, c, shared), from1904);
    }),
  );
}

function readCell(
  value: CellValue,
  stored: StoredCell | undefined,
  formula: string | undefined,
  from1904: boolean,
): CellContent | undefined {
  const read = readValue(value, stored, from1904);
  const format = formatOf(value, stored);
  const style = stored?.style && recognisedStyle(stored.style);
  const spill = formula === undefined ? undefined : spillOf(stored);
  const content: CellContent = {
    ...(read !== undefined && { value: read }),
    ...(formula !== undefined && { formula }),
    ...(spill && { spill }),
    ...(format !== undefined && { format }),
    ...(style && { style }),
  };
  return Object.keys(content).length > 0 ? content : undefined;
}

function readValue(value: CellValue, stored: StoredCell | undefined, from1904: boolean): Cell {
  if (value === null) return undefined;
  if (value instanceof Date) return dateNumber(value, from1904);
  return stored?.type === "error" ? { error: String(value) } : value;
}

const day = 86_400_000;
/** The first of January 1904 is day 1462 when counting from 1900. */
const daysTo1904 = 1462;

/** The number behind a date that the reader took as counted from 1904, counted from 1900. */
function dateNumber(date: Date, from1904: boolean): number {
  const number = (date.getTime() - Date.UTC(1904, 0, 1)) / day;
  return from1904 ? number + daysTo1904 : number;
}

function formatOf(value: CellValue, stored: StoredCell | undefined): string | undefined {
  const format = stored?.style?.numFmt;
  if (format !== undefined && !/^general$/i.test(format)) return format;
  // Built-in formats that have a number only, and differ by country.
  return value instanceof Date ? "yyyy-mm-dd" : undefined;
}

interface SharedFormula {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

function sharedFormulas(sheet: Sheet): ReadonlyMap<number, SharedFormula> {
  return new Map(
    [...(sheet.cells ?? [])].flatMap(([key, { formula, formulaSharedIndex }]) => {
      if (!formula || formulaSharedIndex === undefined) return [];
      const [row = 0, column = 0] = key.split(",").map(Number);
      return [[formulaSharedIndex, { formula, row, column }] as const];
    }),
  );
}

function formulaOf(
  stored: StoredCell,
  row: number,
  column: number,
  shared: ReadonlyMap<number, SharedFormula>,
): string | undefined {
  if (stored.formula) return typedFormula(stored.formula);
  const first = stored.formulaSharedIndex === undefined ? undefined : shared.get(stored.formulaSharedIndex);
  return first && typedFormula(shiftFormula(first.formula, row - first.row, column - first.column));
}

function spillOf(stored: StoredCell | undefined): CellContent["spill"] {
  if (stored?.formulaType !== "array" || stored.formulaRef === undefined) return undefined;
  const { rows, columns } = area(stored.formulaRef);
  return rows * columns > 1 ? { rows, columns } : undefined;
}

/** Cells inside the area of an array formula show its results, not input. */
function spillsMarked(cells: Grid): Grid {
  const spilled = new Set<CellContent>();
  cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (!cell?.spill) return;
      for (const below of cells.slice(r, r + cell.spill.rows))
        for (const each of below.slice(c, c + cell.spill.columns))
          if (each && each !== cell && each.formula === undefined) spilled.add(each);
    });
  });
  if (spilled.size === 0) return cells;
  return cells.map((row) =>
    row.map((cell) => (cell && spilled.has(cell) ? { ...cell, spilled: true } : cell)),
  );
}

function coveredByMerges(sheet: Sheet): ReadonlySet<string> {
  const covered = new Set<string>();
  for (const { startRow, startCol, endRow, endCol } of sheet.merges ?? [])
    for (let r = startRow; r <= Math.min(endRow, sheet.rows.length - 1); r++)
      for (let c = startCol; c <= Math.min(endCol, (sheet.rows[r]?.length ?? 0) - 1); c++)
        if (r !== startRow || c !== startCol) covered.add(`${String(r)},${String(c)}`);
  return covered;
}

/** Nothing for a table that hides its heading row: its first row is data, and it has no headings to go by. */
function readTable(table: NonNullable<Sheet["tables"]>[number], cells: Grid): readonly TableContent[] {
  const { row, column, rows, columns } = area(table.range ?? "A1");
  const headings = new Set(table.columns.map(({ name }) => spaceless(plainText(name))));
  const first = (cells[row] ?? []).slice(column, column + columns);
  if (!first.some((cell) => cell?.value !== undefined && headings.has(spaceless(String(cell.value)))))
    return [];
  const name = table.displayName ?? table.name;
  return [{ name, row, column, rows: rows - (table.showTotalRow ? 1 : 0), columns }];
}

function spaceless(text: string): string {
  return text.replace(/\s+/g, "");
}

function readNotes(sheet: Sheet): readonly NoteContent[] {
  return [...(sheet.cells ?? [])]
    .flatMap(([key, { comment }]) => {
      if (!comment) return [];
      const [row = 0, column = 0] = key.split(",").map(Number);
      const thread = (sheet.threadedComments ?? []).filter(({ ref }) => ref === cellRef(row, column));
      // Beside a conversation, the note itself only says that the program is too old to show it.
      const text = thread.length > 0 ? thread.map((entry) => entry.text).join("\n") : plainText(comment.text);
      return [{ row, column, text }];
    })
    .sort((a, b) => a.row - b.row || a.column - b.column);
}

/** `B2:C9` as rows and columns from 0 and a size. */
function area(range: string): Omit<TableContent, "name"> {
  const [from = "A1", to = from] = range.split(":");
  const first = parseCellRef(from);
  const last = parseCellRef(to);
  return {
    row: first.row,
    column: first.col,
    rows: last.row - first.row + 1,
    columns: last.col - first.col + 1,
  };
}

/** Without empty rows at the end, nor empty cells at the end of a row. */
function trimmed(cells: Grid): Grid {
  const rows = cells.map(withoutTail);
  return rows.slice(0, rows.findLastIndex((row) => row.length > 0) + 1);
}

function withoutTail<T>(values: readonly (T | undefined)[]): readonly (T | undefined)[] {
  return values.slice(0, values.findLastIndex((value) => value !== undefined) + 1);
}
