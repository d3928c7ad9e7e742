import { isCellError, type Cell } from "../../chart/cell.ts";
import type { CellContent } from "../content.ts";
import { bytesOf, inGroups, operation, type Operation } from "./requests.ts";

/** What Excel takes for one cell: `null` leaves the cell alone, "" empties it. */
export type Input = string | number | boolean | null;

/** What to write into a rectangle, row by row. */
export interface Inputs {
  readonly formulas: readonly (readonly Input[])[];
  /** Number formats to set first; `null` leaves one alone. */
  readonly formats: readonly (readonly (string | null)[])[];
}

/** Most bytes of one write, so that requests can be filled evenly. */
const writeLimit = 1_000_000;

/**
 * True for text that Excel could take for a formula, a number, a date or a truth value. Nearly all of them hold
 * a digit in every language; so does some harmless text, which keeping as text does not hurt.
 */
export function couldBeRead(text: string): boolean {
  return /^[=+\-@#']/.test(text) || /\p{Nd}/u.test(text) || /^(true|false)$/i.test(text.trim());
}

/**
 * What to write for cells, and the number formats that have to be set before, so that text stays text and
 * numbers become numbers even where text stood.
 *
 * @param formats the number formats that the cells have now; where there is none, General
 */
export function inputs(
  cells: readonly (readonly (CellContent | undefined)[])[],
  formats: readonly (readonly string[])[],
): Inputs {
  const width = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const each = <T>(of: (cell: CellContent | undefined, now: string) => T): T[][] =>
    cells.map((row, i) => Array.from({ length: width }, (_, j) => of(row[j], formats[i]?.[j] ?? "General")));
  return { formulas: each(inputOf), formats: each(formatOf) };
}

function inputOf(cell: CellContent | undefined): Input {
  // What another cell’s formula fills is never written.
  if (cell === undefined || cell.spilled) return null;
  return cell.formula ?? plainInput(cell.value);
}

function plainInput(value: Cell): Input {
  if (value === undefined) return "";
  return isCellError(value) ? value.error : value;
}

function formatOf(cell: CellContent | undefined, now: string): string | null {
  if (cell === undefined) return null;
  const { formula, value } = cell;
  if (formula === undefined && typeof value === "string" && couldBeRead(value)) return "@";
  const becomes = cell.format ?? now;
  const takenForText = formula !== undefined || (value !== undefined && typeof value !== "string");
  return becomes === "@" && takenForText ? "General" : (cell.format ?? null);
}

/** What brings a cell back: its formula, or its value such that Excel reads it as it was. */
export function savedInput(formula: unknown, value: unknown, type: string, format: string): Input {
  if (type === "Empty") return "";
  if (typeof formula === "string" && formula.startsWith("=") && formula !== value) return formula;
  // Text that was kept as text by an apostrophe, which is not told: put one before it again.
  if (typeof value === "string" && type === "String" && format !== "@" && couldBeRead(value)) {
    return `'${value}`;
  }
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : null;
}

/** The rows of a rectangle from `row` (0 is its first one) on. */
export type RangeAt = (
  context: Excel.RequestContext,
  row: number,
  rows: number,
  columns: number,
) => Excel.Range;

/** Operations that write into a rectangle, number formats first. */
export function writeOperations(rangeAt: RangeAt, { formulas, formats }: Inputs): Operation[] {
  const rows = formulas.map((row, i) => ({ row, i, bytes: bytesOf(row) + bytesOf(formats[i]) }));
  return inGroups(rows, writeLimit).map((group) => {
    const first = group[0]?.i ?? 0;
    const block = group.map(({ row }) => [...row]);
    const blockFormats = group.map(({ i }) => [...(formats[i] ?? [])]);
    return operation(
      (context) => {
        const range = rangeAt(context, first, block.length, block[0]?.length ?? 0);
        if (blockFormats.some((row) => row.some((format) => format !== null)))
          range.numberFormat = blockFormats;
        if (block.some((row) => row.some((input) => input !== null))) range.formulas = block;
      },
      group.reduce((sum, { bytes }) => sum + bytes, 0),
    );
  });
}
