import { findMeasure } from "../measures/dictionary.ts";
import type { Heading } from "../measures/heading.ts";
import { readHeading } from "../measures/heading.ts";
import { InputError } from "../measures/inputError.ts";
import { cutShort, quote, someOf } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank, isCellError } from "./cell.ts";
import { isPercentFormat, toPercent } from "./numberFormat.ts";
import { readCell } from "./readCell.ts";
import { unitOfFraction, unitsOfColumns } from "./unitsOfColumns.ts";

/** How a table of the workbook is read, beside its cells. */
export interface TableOptions {
  /** The number format of every cell, in the shape of the cells. */
  readonly formats?: readonly (readonly string[])[];
  /** The unit of a heading that states none, where it is known. */
  readonly unit?: LengthUnit;
  /** True where the host hands over empty cells as 0, so that a 0 says nothing. */
  readonly zeroIsEmpty?: boolean;
}

/** A column of a table: its heading as written, taken apart. */
export interface TableColumn {
  readonly position: number;
  readonly written: string;
  readonly heading: Heading;
}

/** One row of a table, with what is needed to name a cell in a message. */
export interface TableRow {
  /** Row within the range, from 0 (row 0 is the headings). */
  readonly row: number;
  readonly table: string;
  readonly cells: readonly Cell[];
  readonly formats: readonly string[] | undefined;
}

/**
 * The columns of the first row that have a heading. A measure whose heading states no unit is in the one that `unitsOfColumns` finds.
 *
 * @param given the unit of headings that state none, where it is known
 * @throws {InputError} when that cannot be known
 */
export function tableColumns(cells: Cells, given?: LengthUnit): readonly TableColumn[] {
  const unit = given ?? "mm";
  const headings = (cells[0] ?? []).map((cell) => readHeading(cellText(cell), unit));
  const finished = headings.map(({ name }) =>
    /\bopening\b/iu.test(name) ? undefined : findMeasure(name.replace(/\bfinished\b/giu, " ")),
  );
  const units = unitsOfColumns(
    headings.map((heading, at) => ({
      stated: heading.unitStated ? heading.unit : given,
      measure: finished[at],
      cells: heading.unitStated || given || !finished[at] ? [] : cells.slice(1).map((row) => row[at]),
    })),
    undefined,
    unit,
  );
  return headings.flatMap((heading, position) => {
    const written = cellText(cells[0]?.[position]);
    const found = finished[position] && units[position];
    if (written === "") return [];
    if (found?.from === "nothing")
      throw new InputError(
        `${quote(written)} states no unit, and in ${unit} it would be too small or too large for any figure. Write the unit into the heading, such as ${heading.name} (${found.unit}).`,
      );
    return [{ position, written, heading: found ? { ...heading, unit: found.unit } : heading }];
  });
}

/** The column that one of the names heads, if there is one. A percent sign or word in the heading sets it apart. */
export function columnNamed(
  columns: readonly TableColumn[],
  names: readonly string[],
  isPercent?: boolean,
): TableColumn | undefined {
  const keys = names.map(nameKey);
  return columns.find(
    ({ written, heading }) =>
      keys.includes(nameKey(heading.name)) && (isPercent === undefined || isPercent === saysPercent(written)),
  );
}

/** @throws {InputError} naming the headings that were found */
export function neededColumn(
  columns: readonly TableColumn[],
  names: readonly string[],
  table: string,
): TableColumn {
  const column = columnNamed(columns, names);
  if (column) return column;
  const found = someOf(columns.map(({ written }) => quote(written)));
  throw new InputError(
    `The ${table} need the heading ${quote(names[0] ?? "")} in their first row; found ${found || "none"}.`,
  );
}

/** The rows below the headings that hold anything. */
export function tableRows(cells: Cells, table: string, options: TableOptions = {}): readonly TableRow[] {
  return cells.slice(1).flatMap((line, i) => {
    if (line.every((cell) => isBlank(cell) || (options.zeroIsEmpty && cell === 0))) return [];
    return [{ row: i + 1, table, cells: line, formats: options.formats?.[i + 1] }];
  });
}

/** The row with every number 0 taken for an empty cell, but in the columns to keep. */
export function withoutZeros(row: TableRow, keep: readonly TableColumn[] = []): TableRow {
  const kept = new Set(keep.map(({ position }) => position));
  return { ...row, cells: row.cells.map((cell, at) => (cell === 0 && !kept.has(at) ? undefined : cell)) };
}

/** “Row 4 of the patterns, Stretch %” */
export function placeIn({ row, table }: TableRow, column?: TableColumn): string {
  return `Row ${String(row + 1)} of the ${table}${column ? `, ${cutShort(column.written)}` : ""}`;
}

/** The text of a cell; "" where it is blank or the table has no such column. */
export function textAt(row: TableRow, column: TableColumn | undefined): string {
  const cell = column && row.cells[column.position];
  if (isCellError(cell)) throw errorCell(row, column, cell.error);
  return cellText(cell);
}

/**
 * A length above 0 in mm; undefined where it is blank or marked as not known.
 *
 * @throws {InputError} naming row and column
 */
export function lengthAt(
  row: TableRow,
  column: TableColumn | undefined,
  options: { readonly mayBeZero?: boolean; readonly what: string },
): number | undefined {
  if (!column) return undefined;
  const format = row.formats?.[column.position];
  const reading = readCell(row.cells[column.position], column.heading.unit, { format, ...fractions(column) });
  if (reading.kind === "missing") return undefined;
  if (reading.kind === "refused") throw new InputError(`${placeIn(row, column)}: ${reading.reason}`);
  if (reading.mm > 0 || (options.mayBeZero && reading.mm === 0)) return reading.mm;
  throw new InputError(
    `${placeIn(row, column)}: “0” is not ${options.what}. Type its length, or leave the cell empty if it is not known.`,
  );
}

/**
 * A length that may be below zero, such as an ease, in mm; undefined where it is blank.
 *
 * @throws {InputError} naming row and column
 */
export function signedLengthAt(row: TableRow, column: TableColumn | undefined): number | undefined {
  if (!column) return undefined;
  const cell = row.cells[column.position];
  const isNegative =
    typeof cell === "number" ? cell < 0 : typeof cell === "string" && /^\s*[-−]\s*[\d.,]/.test(cell);
  const size = !isNegative
    ? cell
    : typeof cell === "number"
      ? -cell
      : cellText(cell).replace(/^\s*[-−]\s*/u, "");
  const reading = readCell(size, column.heading.unit, {
    format: row.formats?.[column.position],
    ...fractions(column),
  });
  if (reading.kind === "missing") return undefined;
  if (reading.kind === "refused") throw new InputError(`${placeIn(row, column)}: ${reading.reason}`);
  return isNegative ? -reading.mm : reading.mm;
}

function fractions({ heading }: TableColumn): { readonly fractionUnit?: LengthUnit } {
  return heading.unitStated ? {} : { fractionUnit: unitOfFraction };
}

/** A number with, where it is said, whether it is written as a percentage. */
export interface PercentCell {
  readonly value: number;
  /** True for `25%` and a cell in percent format (value 25 in both cases); undefined when nothing tells. */
  readonly isPercent: boolean | undefined;
  readonly written: string;
}

/**
 * A percentage in a cell; undefined where it is blank.
 *
 * @throws {InputError} naming row and column, when it is not a number
 */
export function percentAt(row: TableRow, column: TableColumn | undefined): PercentCell | undefined {
  if (!column) return undefined;
  const cell = row.cells[column.position];
  if (isBlank(cell)) return undefined;
  const format = row.formats?.[column.position];
  if (typeof cell === "number" && Number.isFinite(cell)) {
    if (format !== undefined && isPercentFormat(format)) {
      return { value: toPercent(cell), isPercent: true, written: `${String(toPercent(cell))} %` };
    }
    const isPercent = format === undefined ? undefined : false;
    return { value: cell, isPercent, written: String(cell) };
  }
  const text = textAt(row, column);
  const [, digits = "", sign] = /^\s*([-−+]?\s*\d*[.,]?\d+)\s*([%％])?\s*$/u.exec(text) ?? [];
  const value = Number(digits.replace(/\s/gu, "").replace("−", "-").replace(",", "."));
  if (digits === "" || !Number.isFinite(value)) {
    throw new InputError(
      `${placeIn(row, column)}: ${quote(text)} is not a percentage. Write a number, such as 25%.`,
    );
  }
  return { value, isPercent: sign === undefined ? undefined : true, written: text };
}

/** Names in one cell, with commas, semicolons or line breaks between them. */
export function listAt(row: TableRow, column: TableColumn | undefined): readonly string[] {
  return textAt(row, column)
    .split(/[,;\n]/u)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

function errorCell(row: TableRow, column: TableColumn | undefined, error: string): InputError {
  return new InputError(
    `${placeIn(row, column)}: the cell shows the error ${error}. Mend its formula first.`,
  );
}

function saysPercent(written: string): boolean {
  return /[%％]|\bper ?cent\b/iu.test(written);
}

/** The form in which headings of tables are compared: case, punctuation and percent signs do not count. */
function nameKey(name: string): string {
  return name
    .toLowerCase()
    .replace(/\bper ?cent\b/gu, " ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}
