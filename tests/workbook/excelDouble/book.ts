import { areasMeet } from "../../../addin/workbook/address.ts";
import { sameName } from "../../../addin/workbook/names.ts";
import type { Area } from "../../../addin/workbook/port.ts";
import { evaluate, everyNode, FormulaError, parse, type Value } from "./formula.ts";

/** What Excel says when it refuses, with the codes that Office.js documents. */
export class ExcelRefusal extends Error {
  override readonly name = "RichApi.Error";

  /** Microsoft, reference of `OfficeExtension.DebugInfo`: `errorLocation` is such as “Range.formulas”. */
  readonly debugInfo: { readonly errorLocation?: string };

  constructor(
    readonly code: string,
    message: string,
    errorLocation?: string,
  ) {
    super(message);
    this.debugInfo = errorLocation === undefined ? {} : { errorLocation };
  }
}

export type Scalar = string | number | boolean;
export type ValueType = "Empty" | "String" | "Double" | "Boolean" | "Error";

export interface BookCell {
  formula?: string;
  /** The cell whose formula fills this one. */
  spilledFrom?: string;
  /** An error value is kept as Excel tells it, as text; `type` tells it from text. */
  value: Scalar;
  type: ValueType;
  format: string;
  font: { bold: boolean; color: string; size: number };
  wrapText: boolean;
  verticalAlignment: string;
  horizontalAlignment: string;
  conditional: BookRule[];
}

/** A conditional format; one that applies to several cells stands in each of them. */
export interface BookRule {
  id: string;
  type: "Custom" | "CellValue";
  /** In R1C1 notation, which reads the same in every cell. */
  formula: string;
  fill?: string;
  color?: string;
  bold?: boolean;
  numberFormat?: string;
}

export interface BookTable {
  name: string;
  sheet: BookSheet;
  row: number;
  column: number;
  rows: number;
  columns: number;
  style: string;
  showBandedRows: boolean;
  showHeaders: boolean;
  showTotals: boolean;
  /** A filter hides some of its rows. */
  filtered: boolean;
}

export interface BookSheet {
  readonly id: string;
  name: string;
  cells: Map<string, BookCell>;
  notes: Map<string, { text: string }>;
  frozen: { rows: number; columns: number };
  printed: {
    orientation: "Portrait" | "Landscape";
    paperSize: string | undefined;
    zoom: { horizontalFitToPages?: number; verticalFitToPages?: number; scale?: number };
    titleRows: string | undefined;
    titleColumns: string | undefined;
    leftFooter: string;
    rightFooter: string;
  };
  columnWidths: Map<number, number>;
  /** Lists to choose from, each with its area and its source as words or as the address of cells. */
  lists: { area: Omit<Area, "sheet">; source: string; refusesOthers: boolean }[];
  protected: boolean;
}

export interface Book {
  sheets: BookSheet[];
  tables: BookTable[];
  settings: Map<string, unknown>;
  structureProtected: boolean;
  calculationMode: "Automatic" | "Manual";
  habits: Habits;
  selected: { sheet: BookSheet; row: number; column: number; rows: number; columns: number };
  active: BookSheet;
}

/** What users set for Excel, and what our functions give. */
export interface Habits {
  /** AutoCorrect: “Include new rows and columns in table”. */
  expandsTables: boolean;
  /** AutoCorrect: “Fill formulas in tables to create calculated columns”. */
  fillsColumns: boolean;
  /** A comma before decimals in what is typed. */
  decimalComma: boolean;
  /** What a formula of an add-in’s function fills; without it #NAME?, as where the add-in is not loaded. */
  results: ((formula: string) => readonly (readonly Scalar[])[] | undefined) | undefined;
}

export const key = (row: number, column: number) => `${String(row)},${String(column)}`;
export const place = (of: string): [number, number] => {
  const [row, column] = of.split(",").map(Number);
  return [row ?? 0, column ?? 0];
};

export function emptyCell(): BookCell {
  return {
    value: "",
    type: "Empty",
    format: "General",
    font: { bold: false, color: "#000000", size: 11 },
    wrapText: false,
    verticalAlignment: "Bottom",
    horizontalAlignment: "General",
    conditional: [],
  };
}

export function cellIn(sheet: BookSheet, row: number, column: number): BookCell {
  const found = sheet.cells.get(key(row, column));
  if (found) return found;
  const fresh = emptyCell();
  sheet.cells.set(key(row, column), fresh);
  return fresh;
}

/** What somebody would see who only looks: an untouched cell is not made. */
export function peek(sheet: BookSheet, row: number, column: number): BookCell {
  return sheet.cells.get(key(row, column)) ?? emptyCell();
}

const errorValues = ["#N/A", "#VALUE!", "#REF!", "#DIV/0!", "#NAME?", "#NUM!", "#NULL!", "#SPILL!"];

/** A sheet that is protected takes nothing. `AccessDenied`: Microsoft, “Error handling with the application-specific APIs”. */
export function refuseProtected(sheet: BookSheet): void {
  if (sheet.protected) throw new ExcelRefusal("AccessDenied", "You cannot perform the requested operation.");
}

/**
 * Write one input as Excel takes it: text in a text cell as it is; otherwise formulas, numbers, dates, per
 * cents, times, truth values and error values are read from text, and a leading apostrophe keeps the rest as
 * text. Microsoft, reference of `Range.values`: what starts with +, - or = is taken for a formula. The rest from memory
 * of how Excel takes what is typed, in English.
 */
export function enter(book: Book, sheet: BookSheet, row: number, column: number, input: unknown): void {
  if (input === null || input === undefined) return;
  refuseProtected(sheet);
  const cell = cellIn(sheet, row, column);
  unspill(sheet, key(row, column));
  delete cell.formula;
  enterInto(book, sheet, row, column, cell, input);
  breakSpill(sheet, cell);
}

function enterInto(
  book: Book,
  sheet: BookSheet,
  row: number,
  column: number,
  cell: BookCell,
  input: unknown,
): void {
  if (input === "") return setValue(cell, "", "Empty");
  if (cell.format === "@") return setValue(cell, textOf(input), "String");
  if (typeof input === "number") return setValue(cell, input, "Double");
  if (typeof input === "boolean") return setValue(cell, input, "Boolean");
  if (typeof input !== "string") {
    throw new ExcelRefusal("InvalidArgument", `The argument is invalid: ${JSON.stringify(input)}`);
  }
  if (input.startsWith("'")) return setValue(cell, input.slice(1), "String");
  if (/^=.|^@/.test(input) || /^[+-].*[a-z(*/]/i.test(input)) {
    return enterFormula(book, sheet, row, column, cell, input);
  }
  if (errorValues.includes(input)) return setValue(cell, input, "Error");
  if (/^(true|false)$/i.test(input)) return setValue(cell, input.toLowerCase() === "true", "Boolean");
  if (/^\d{1,2}[/-]\d{1,2}$/.test(input)) return enterDate(cell, input);
  if (/^\d{1,2}:\d{2}$/.test(input)) {
    const [hours, minutes] = input.split(":").map(Number);
    cell.format = "h:mm";
    return setValue(cell, ((hours ?? 0) * 60 + (minutes ?? 0)) / 1440, "Double");
  }
  if (/^[+-]?[\d.]+%$/.test(input)) {
    cell.format = "0%";
    return setValue(cell, Number(input.slice(0, -1)) / 100, "Double");
  }
  const number = Number(input);
  if (input.trim() !== "" && Number.isFinite(number)) return setValue(cell, number, "Double");
  setValue(cell, input, "String");
}

function textOf(input: unknown): string {
  if (typeof input === "boolean") return input ? "TRUE" : "FALSE";
  return String(input);
}

function setValue(cell: BookCell, value: Scalar, type: ValueType): void {
  cell.value = value;
  cell.type = type;
}

/**
 * A formula that does not parse is refused. Microsoft, “Error handling with the application-specific APIs”:
 * `InvalidArgument`, “The argument is invalid or missing or has an incorrect format.” That a table, a column or a sheet
 * that is not there is refused as well, is from memory.
 */
function enterFormula(
  book: Book,
  sheet: BookSheet,
  row: number,
  column: number,
  cell: BookCell,
  input: string,
): void {
  const formula = input.startsWith("=") ? input : `=${input.replace(/^@/, "")}`;
  checkFormula(book, sheet, row, column, formula);
  cell.formula = formula;
  const results = book.habits.results?.(formula);
  if (results) return spill(sheet, row, column, cell, results);
  const value = evaluate(formula, (r, c) => valueIn(sheet, r, c));
  if (typeof value === "object") return setValue(cell, value.error, "Error");
  setInput(cell, value ?? 0);
}

function checkFormula(book: Book, sheet: BookSheet, row: number, column: number, formula: string): void {
  const refuse = (why: string) =>
    new ExcelRefusal("InvalidArgument", `The argument is invalid. ${why}`, "Range.formulas");
  try {
    for (const node of everyNode(parse(formula))) {
      if (node.kind === "reference" && node.text.includes("!")) {
        const name = node.text
          .slice(0, node.text.lastIndexOf("!"))
          .replace(/^'|'$/g, "")
          .replaceAll("''", "'");
        if (!book.sheets.some((other) => sameName(other.name, name))) throw refuse(`No sheet ${name}.`);
      }
      if (node.kind !== "structure") continue;
      const table = book.tables.find((other) =>
        node.table === ""
          ? other.sheet === sheet && areasMeet(other, { row, column, rows: 1, columns: 1 })
          : sameName(other.name, node.table),
      );
      if (!table) throw refuse(`No table ${node.table}.`);
      const headings = Array.from({ length: table.columns }, (_, j) =>
        String(peek(table.sheet, table.row, table.column + j).value),
      );
      for (const wanted of node.columns) {
        if (!headings.some((heading) => sameName(heading, wanted))) throw refuse(`No column ${wanted}.`);
      }
    }
  } catch (error) {
    throw error instanceof FormulaError ? refuse(error.message) : error;
  }
}

/** What a cell holds, as formulas see it. */
export function valueIn(sheet: BookSheet, row: number, column: number): Value {
  const { type, value } = peek(sheet, row, column);
  if (type === "Empty") return undefined;
  return type === "Error" ? { error: String(value) } : value;
}

function setInput(cell: BookCell, value: Scalar): void {
  setValue(
    cell,
    value,
    typeof value === "number" ? "Double" : typeof value === "boolean" ? "Boolean" : "String",
  );
}

/**
 * Results fill the cells below and to the right. Microsoft, “Return multiple results from your custom function”: where
 * neighbouring cells contain data, the formula displays #SPILL!.
 */
function spill(
  sheet: BookSheet,
  row: number,
  column: number,
  cell: BookCell,
  results: readonly (readonly Scalar[])[],
): void {
  const places = results.flatMap((line, i) =>
    line.flatMap((value, j) => (i === 0 && j === 0 ? [] : [{ value, row: row + i, column: column + j }])),
  );
  if (places.some((place) => peek(sheet, place.row, place.column).type !== "Empty")) {
    return setValue(cell, "#SPILL!", "Error");
  }
  setInput(cell, results[0]?.[0] ?? "");
  for (const each of places) {
    const filled = cellIn(sheet, each.row, each.column);
    setInput(filled, each.value);
    filled.spilledFrom = key(row, column);
  }
}

function unspill(sheet: BookSheet, from: string): void {
  for (const cell of sheet.cells.values()) {
    if (cell.spilledFrom !== from) continue;
    delete cell.spilledFrom;
    setValue(cell, "", "Empty");
  }
}

/** Something written into a cell that a formula fills blocks that formula. */
function breakSpill(sheet: BookSheet, cell: BookCell): void {
  const from = cell.spilledFrom;
  if (from === undefined) return;
  delete cell.spilledFrom;
  if (cell.type === "Empty") return;
  unspill(sheet, from);
  const anchor = sheet.cells.get(from);
  if (anchor) setValue(anchor, "#SPILL!", "Error");
}

/** A fraction that becomes a day of the year 2025 (month first), counted from 30 December 1899. */
function enterDate(cell: BookCell, input: string): void {
  const [month, day] = input.split(/[/-]/).map(Number);
  const days = (Date.UTC(2025, (month ?? 1) - 1, day ?? 1) - Date.UTC(1899, 11, 30)) / 86_400_000;
  cell.format = "d-mmm";
  setValue(cell, days, "Double");
}

/** Move cells of a block of columns down (or up, where `by` is negative) from a row on. */
export function shiftDown(
  book: Book,
  sheet: BookSheet,
  at: { row: number; column: number; columns: number },
  by: number,
): void {
  const moves = (row: number, column: number) =>
    row >= at.row && column >= at.column && column < at.column + at.columns;
  refuseSplit(
    book,
    sheet,
    (table) => table.row >= at.row && areasMeet({ ...table, row: 0, rows: 1 }, { ...at, row: 0, rows: 1 }),
    (table) => table.column >= at.column && table.column + table.columns <= at.column + at.columns,
    (table) => (table.row += by),
  );
  move(
    sheet,
    moves,
    (row, column) => [row + by, column],
    (row) => by >= 0 || row >= at.row - by,
  );
}

/** Move cells of a block of rows to the right (or left) from a column on. */
export function shiftRight(
  book: Book,
  sheet: BookSheet,
  at: { row: number; column: number; rows: number },
  by: number,
): void {
  const moves = (row: number, column: number) =>
    column >= at.column && row >= at.row && row < at.row + at.rows;
  refuseSplit(
    book,
    sheet,
    (table) =>
      table.column >= at.column &&
      areasMeet({ ...table, column: 0, columns: 1 }, { ...at, column: 0, columns: 1 }),
    (table) => table.row >= at.row && table.row + table.rows <= at.row + at.rows,
    (table) => (table.column += by),
  );
  move(
    sheet,
    moves,
    (row, column) => [row, column + by],
    (_, column) => by >= 0 || column >= at.column - by,
  );
}

function refuseSplit(
  book: Book,
  sheet: BookSheet,
  inTheWay: (table: BookTable) => boolean,
  movesWhole: (table: BookTable) => boolean,
  moveTable: (table: BookTable) => void,
): void {
  refuseProtected(sheet);
  const hit = book.tables.filter((table) => table.sheet === sheet && inTheWay(table));
  if (!hit.every(movesWhole)) {
    throw new ExcelRefusal("InsertDeleteConflict", "The operation would shift cells of a table.");
  }
  hit.forEach(moveTable);
}

function move(
  sheet: BookSheet,
  moves: (row: number, column: number) => boolean,
  to: (row: number, column: number) => [number, number],
  stays: (row: number, column: number) => boolean,
): void {
  const moved = <T>(items: Map<string, T>): Map<string, T> =>
    new Map(
      [...items].flatMap(([at, item]) => {
        const [row, column] = place(at);
        if (!moves(row, column)) return [[at, item]];
        return stays(row, column) ? [[key(...to(row, column)), item]] : [];
      }),
    );
  sheet.cells = moved(sheet.cells);
  sheet.notes = moved(sheet.notes);
}

/** The smallest rectangle around all cells with a value, or around those of an area. */
export function usedArea(sheet: BookSheet, within?: Omit<Area, "sheet">): Omit<Area, "sheet"> | undefined {
  const filled = [...sheet.cells]
    // A formula has a value in Excel, even where a workbook of ours was written without it.
    .filter(([, cell]) => cell.type !== "Empty" || cell.formula !== undefined)
    .map(([at]) => place(at))
    .filter(([row, column]) => !within || areasMeet(within, { row, column, rows: 1, columns: 1 }));
  if (filled.length === 0) return undefined;
  const rows = filled.map(([row]) => row);
  const columns = filled.map(([, column]) => column);
  const [top, left] = [rows.reduce((a, b) => Math.min(a, b)), columns.reduce((a, b) => Math.min(a, b))];
  return {
    row: top,
    column: left,
    rows: rows.reduce((a, b) => Math.max(a, b)) - top + 1,
    columns: columns.reduce((a, b) => Math.max(a, b)) - left + 1,
  };
}
