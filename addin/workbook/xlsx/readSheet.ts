import { cellRef, parseCellRef, type Cell as StoredCell, type CellValue, type Sheet } from "hucre/xlsx";
import type { Cell } from "../../chart/cell.ts";
import { groupedBy } from "../../chart/groupedBy.ts";
import { sheetLimit } from "../address.ts";
import { cutText } from "../cutText.ts";
import type { CellContent, NoteContent, SheetContent, TableContent } from "../content.ts";
import { notCalculated, notCalculatedWords, type NotCalculated } from "../keptFormula.ts";
import { limits } from "../limits.ts";
import { pixelWidth } from "./columnWidth.ts";
import { recognisedStyle } from "./looks.ts";
import { counted, tooLarge } from "../tooLarge.ts";
import { shiftFormula } from "./shiftFormula.ts";
import { typedFormula } from "./storedFormula.ts";
import { plainText } from "./storedText.ts";
import { withVerdicts } from "./verdictRules.ts";

type Grid = readonly (readonly (CellContent | undefined)[])[];

/** What goes on over all sheets of a file while it is read. */
export interface Reading {
  /** Whether the file counts dates from 1904. */
  readonly from1904: boolean;
  /** Counts characters and cells that are about to be kept. @throws {InputError} when they are too many */
  spend(what: "text" | "area", amount: number, words: () => string): void;
  /** Notes what cannot be kept as it is. */
  leaveOut(phrase: string): void;
}

/** @param leftOut gets a short phrase for all that cannot be kept as it is */
export function createReading(from1904: boolean, leftOut: string[]): Reading {
  const spent = { text: 0, area: 0 };
  const most = { text: limits.totalText, area: limits.area };
  return {
    from1904,
    spend: (what, amount, words) => {
      spent[what] += amount;
      if (!(spent[what] <= most[what])) throw tooLarge(words());
    },
    leaveOut: (phrase) => leftOut.push(phrase),
  };
}

/** One sheet of a file as workbook content. */
export function readSheet(sheet: Sheet, reading: Reading): SheetContent {
  const cells = withVerdicts(
    trimmed(spillsMarked(readCells(sheet, reading), reading)),
    sheet.conditionalRules,
  );
  const widths = readWidths(sheet.columns ?? [], cells);
  const tables = (sheet.tables ?? []).flatMap((table) => readTable(table, cells, reading));
  const notes = readNotes(sheet, reading);
  const { frozenRows, frozenColumns } = frozen(sheet);
  return {
    name: sheet.name,
    cells,
    ...(frozenRows > 0 && { frozenRows }),
    ...(frozenColumns > 0 && { frozenColumns }),
    ...(widths.length > 0 && { columnWidths: widths }),
    ...paperOf(sheet),
    ...(tables.length > 0 && { tables }),
    ...(notes.length > 0 && { notes }),
  };
}

/** A pane of hundreds of rows leaves no room to scroll, on any screen. */
const mostFrozen = 100;

function frozen({ freezePane }: Sheet): { readonly frozenRows: number; readonly frozenColumns: number } {
  const kept = (count = 0) => (count > 0 && count <= mostFrozen ? Math.floor(count) : 0);
  return { frozenRows: kept(freezePane?.rows), frozenColumns: kept(freezePane?.columns) };
}

function paperOf({ pageSetup }: Sheet): Pick<SheetContent, "paper"> {
  switch (pageSetup?.paperSize) {
    case "a4":
      return { paper: "A4" };
    case "letter":
      return { paper: "Letter" };
    default:
      return {};
  }
}

/** Source: Microsoft, “Excel specifications and limits”: a column is at most 255 characters wide. */
const widest = 255;

/** In pixels. Some programs state a width for the whole rest of the sheet: that is no choice of anybody. */
function readWidths(columns: NonNullable<Sheet["columns"]>, cells: Grid): readonly (number | undefined)[] {
  const used = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const stated = columns.length > 1000 ? columns.slice(0, used) : columns;
  return withoutTail(
    stated.map(({ width = 0 }) => (width > 0 && width <= widest ? pixelWidth(width) : undefined)),
  );
}

function readCells(sheet: Sheet, reading: Reading): Grid {
  const covered = coveredByMerges(sheet);
  const shared = sharedFormulas(sheet);
  const changed = new Changed();
  const cells = sheet.rows.map((row, r) =>
    row.map((value, c) => {
      if (covered(r, c)) return undefined;
      const stored = sheet.cells?.get(`${String(r)},${String(c)}`);
      const content = readCell(value, stored, stored && formulaOf(stored, r, c, shared), reading.from1904);
      return content && bounded(content, changed, reading);
    }),
  );
  for (const phrase of changed.phrases(sheet.name)) reading.leaveOut(phrase);
  return cells;
}

/** Counts what of the cells of a sheet is not kept as it is. */
class Changed {
  readonly #counts = new Map<NotCalculated | "cut", number>();

  add(what: NotCalculated | "cut"): void {
    this.#counts.set(what, (this.#counts.get(what) ?? 0) + 1);
  }

  phrases(sheet: string): readonly string[] {
    return [...this.#counts].map(([what, count]) => {
      const how =
        what === "cut"
          ? `the end of ${count === 1 ? "a text" : `${String(count)} texts`} of more than ${counted(limits.text)} characters, or ${counted(limits.word)} without a space,`
          : `${count === 1 ? "a formula" : `${String(count)} formulas`} that ${what === "asks" ? "" : "is "}${notCalculatedWords[what]}, which is text now,`;
      return `${how} on sheet “${sheet}”`;
    });
  }
}

/** The cell with what is too long cut, and with a formula that must not be calculated as text. */
function bounded(cell: CellContent, changed: Changed, reading: Reading): CellContent {
  const { formula, format, style } = cell;
  const why = formula === undefined ? undefined : notCalculated(formula);
  if (why !== undefined) changed.add(why);
  const whole: CellContent =
    why === undefined
      ? cell
      : { value: formula, ...(format !== undefined && { format }), ...(style && { style }) };
  const text = typeof whole.value === "string" ? cutText(whole.value) : undefined;
  const isCut = text !== undefined && text !== whole.value;
  if (isCut && why === undefined) changed.add("cut");
  const kept = isCut ? { ...whole, value: text } : whole;
  const length = (typeof kept.value === "string" ? kept.value.length : 0) + (kept.formula?.length ?? 0);
  reading.spend(
    "text",
    length,
    () => `texts of more than ${counted(limits.totalText)} characters in its cells`,
  );
  return kept;
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
  if (value instanceof Date) return finite(dateNumber(value, from1904));
  if (typeof value === "number") return finite(value);
  return stored?.type === "error" ? { error: String(value) } : value;
}

/** A file may state a number that none can be. */
function finite(number: number): Cell {
  return Number.isFinite(number) ? number : { error: "#NUM!" };
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
  if (stored.formula) return typedOrCut(stored.formula);
  const first = stored.formulaSharedIndex === undefined ? undefined : shared.get(stored.formulaSharedIndex);
  if (!first || isFarTooLong(first.formula)) return first && typedOrCut(first.formula);
  return typedFormula(shiftFormula(first.formula, row - first.row, column - first.column));
}

/** What is far too long to be a formula is not looked into. */
function typedOrCut(formula: string): string {
  return isFarTooLong(formula) ? `=${formula.slice(0, limits.text - 1)}` : typedFormula(formula);
}

/** Stored formulas are longer than typed ones by the prefixes of functions. */
function isFarTooLong(formula: string): boolean {
  return formula.length > 2 * limits.formula;
}

function spillOf(stored: StoredCell | undefined): CellContent["spill"] {
  if (stored?.formulaType !== "array" || stored.formulaRef === undefined) return undefined;
  const { rows, columns } = area(stored.formulaRef);
  return rows * columns > 1 ? { rows, columns } : undefined;
}

/** Cells inside the area of an array formula show its results, not input. */
function spillsMarked(cells: Grid, reading: Reading): Grid {
  const spilled = new Set<CellContent>();
  cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (!cell?.spill) return;
      const { rows, columns } = cell.spill;
      reading.spend("area", rows * columns, () => `results of more than ${counted(limits.area)} cells`);
      for (const below of cells.slice(r, r + rows))
        for (const each of below.slice(c, c + columns))
          if (each && each !== cell && each.formula === undefined) spilled.add(each);
    });
  });
  if (spilled.size === 0) return cells;
  return cells.map((row) =>
    row.map((cell) => (cell && spilled.has(cell) ? { ...cell, spilled: true } : cell)),
  );
}

/** Whether a cell lies in merged cells and is not the first of them. Merged cells that overlap cover no more than once. */
function coveredByMerges(sheet: Sheet): (row: number, column: number) => boolean {
  const { rows, merges = [] } = sheet;
  if (merges.length === 0) return () => false;
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const covered = new Uint8Array(rows.length * width);
  let marked = 0;
  for (const { startRow, startCol, endRow, endCol } of merges) {
    const end = Math.min(endCol + 1, width);
    if (!(startRow >= 0 && startCol >= 0 && startCol < end)) continue;
    for (let r = startRow; r <= Math.min(endRow, rows.length - 1); r++) {
      covered.fill(1, r * width + (r === startRow ? startCol + 1 : startCol), r * width + end);
      if ((marked += end - startCol) > 2 * limits.area)
        throw tooLarge(`merged cells that lie over one another on sheet “${sheet.name}”`);
    }
  }
  return (row, column) => covered[row * width + column] === 1;
}

/** Nothing for a table that hides its heading row: its first row is data, and it has no headings to go by. */
function readTable(
  table: NonNullable<Sheet["tables"]>[number],
  cells: Grid,
  reading: Reading,
): readonly TableContent[] {
  const { row, column, rows, columns } = area(table.range ?? "A1");
  if (!(row >= 0 && column >= 0 && rows > 0 && columns > 0)) return [];
  reading.spend(
    "area",
    rows * columns,
    () =>
      `the table “${table.name}” of ${counted(rows)} rows and ${counted(columns)} columns; at most ${counted(limits.area)} cells can be opened`,
  );
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

function readNotes(sheet: Sheet, reading: Reading): readonly NoteContent[] {
  const threads = groupedBy(sheet.threadedComments ?? [], ({ ref }) => ref);
  return [...(sheet.cells ?? [])]
    .flatMap(([key, { comment }]) => {
      if (!comment) return [];
      const [row = 0, column = 0] = key.split(",").map(Number);
      if (!(row < sheetLimit.rows && column < sheetLimit.columns)) return [];
      const thread = threads.get(cellRef(row, column)) ?? [];
      // Beside a conversation, the note itself only says that the program is too old to show it.
      const text =
        thread.length > 0 ? thread.map((said) => said.text ?? "").join("\n") : plainText(comment.text);
      reading.spend("text", text.length, () => `notes of more than ${counted(limits.totalText)} characters`);
      return [{ row, column, text: text.slice(0, limits.text) }];
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
