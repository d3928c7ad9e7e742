import type { Cell, Cells } from "../addin/chart/cell.ts";
import { cellText, equalCells, isBlank, isCellError, isEmpty } from "../addin/chart/cell.ts";
import type { Chart } from "../addin/chart/chart.ts";
import { readChart, requireUnits } from "../addin/chart/readChart.ts";
import type { GarmentTolerances, ToleranceTable } from "../addin/chart/tolerances.ts";
import { readGarmentTolerances, readTolerances } from "../addin/chart/tolerances.ts";
import { onceFor, workOnce } from "../addin/chart/workOnce.ts";
import { bodiesBy, groupsOf } from "../addin/similarity/groups.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { didYouMean } from "../addin/measures/nearNames.ts";
import { cutShort, quote } from "../addin/measures/quote.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { readUnit } from "../addin/measures/units.ts";
import type { Choices } from "./choices.ts";
import { unitChoices } from "./choices.ts";
import type { TapeReading } from "./tapeReading.ts";
import { readTape, readTapeDifference } from "./tapeReading.ts";
import { isMissingMark, readPlainNumber } from "./plainNumber.ts";

/** One argument of a worksheet function: how it is declared to hosts, and how its raw value is read. */
export interface Parameter<T> {
  readonly help: string;
  readonly optional: boolean;
  readonly shape: "scalar" | "range";
  /** `any` where our own message must reach the user: hosts turn other mismatches into a bare `#VALUE!`. */
  readonly type: "text" | "any";
  /** What an omitted argument stands for, as the reference says it. */
  readonly standsFor?: string;
  /** What its text names, where that stands in a table of the user’s: `figures` may be several, with commas. */
  readonly names?: "figure" | "figures" | "pattern";
  /** Words that hosts offer while the argument is typed. */
  readonly choices?: Choices;
  /** True when a required cell is empty, so that the result is blank too. Ranges decide cell by cell instead. */
  isBlank(raw: unknown): boolean;
  /** @throws {InputError} naming the parameter and what was read */
  read(raw: unknown, name: string): T;
}

/** A rectangle of plain numbers; `undefined` where the cell is blank. */
export type Numbers = readonly (readonly (number | undefined)[])[];

/**
 * What hosts pass → a rectangle of cells. A scalar becomes 1×1; `null`, `undefined` and `""` become an empty
 * cell; short rows are filled with empty cells; error objects become `{ error }`.
 */
export function toCells(raw: unknown): Cells {
  const rows: readonly unknown[] = Array.isArray(raw) && raw.length > 0 ? raw : [raw];
  const grid = rows.map((row) => (Array.isArray(row) ? row : [row]).map(toCell));
  const width = grid.reduce((widest, row) => Math.max(widest, row.length), 1);
  return grid.map((row) => [...row, ...Array<Cell>(width - row.length).fill(undefined)]);
}

/** One raw host value → a cell. */
export function toCell(raw: unknown): Cell {
  if (raw === null || raw === undefined || raw === "") return undefined;
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : { error: "#NUM!" };
  if (typeof raw === "string" || typeof raw === "boolean") return raw;
  if (typeof raw === "object") return objectToCell(raw);
  return undefined;
}

/** Hosts pass errors and rich values as objects: `{ error }`, or Office’s `{ type, basicValue }`. */
function objectToCell(raw: object): Cell {
  if (Array.isArray(raw)) return raw.length === 0 ? undefined : { error: "#VALUE!" };
  if ("error" in raw) return { error: errorCode(String(raw.error)) };
  if ("type" in raw && raw.type === "Empty") return undefined;
  if ("basicValue" in raw) {
    const basic = toCell(raw.basicValue);
    const isError = "type" in raw && raw.type === "Error";
    return isError && !isCellError(basic) ? { error: errorCode(cellText(basic)) } : basic;
  }
  return { error: "#VALUE!" };
}

/** Codes are short; anything else is not shown whole. */
function errorCode(text: string): string {
  return cutShort(text) || "#VALUE!";
}

/** A length: one cell, in whatever unit the other lengths of the call are in. 0 counts as empty. */
export function length(help: string): Parameter<number> {
  return {
    ...required(help, numberFromRequired),
    isBlank: (raw) => isSingleCell(raw, (given) => isEmpty(given) || isNotTaken(given)),
  };
}

/** A needed amount that may be nothing, for example a thickness: an empty cell is 0, a mark for “not taken” gives a blank. */
export function requiredAmount(help: string): Parameter<number> {
  return {
    ...required(help, (cell, name) => amountFrom(cell, name) ?? 0),
    isBlank: (raw) => isSingleCell(raw, (given) => !isBlank(given) && isNotTaken(given)),
  };
}

/** An amount of at least 0 (a thickness, a number of layers): where something else stands for 0, it is written “none”. */
export function amount(help: string, fallback: number): Parameter<number> {
  const none = fallback === 0 ? "" : ` Write none for 0.`;
  return optional(
    { help: help + none, standsFor: String(fallback) },
    (cell, name) => amountFrom(cell, name) ?? fallback,
    fallback,
  );
}

/** A number above 0, with what stands for an omitted one. */
export function aboveZero(help: string, fallback: number): Parameter<number> {
  return optional(
    { help, standsFor: String(fallback) },
    (cell, name) => {
      const value = numberFrom(cell, name) || fallback;
      if (value > 0) return value;
      throw new InputError(
        `${name}: ${quoteCell(cell)} is not above 0. Write a number above 0, or leave it out for ${String(fallback)}.`,
      );
    },
    fallback,
  );
}

/** A whole number of at least 1, with what stands for an omitted one. */
export function count(help: string, fallback: number): Parameter<number> {
  return optional(
    { help, standsFor: String(fallback) },
    (cell, name) => {
      const value = numberFrom(cell, name) || fallback;
      if (Number.isInteger(value) && value > 0) return value;
      throw new InputError(`${name}: ${quoteCell(cell)} is not a whole number. Write 1, 2, 3 or more.`);
    },
    fallback,
  );
}

/** How far a cloth stretches: 0.25 or 25 %, at most three times its length. */
export function stretch(help: string): Parameter<number> {
  return optional(
    { help, standsFor: "0" },
    (cell, name) => {
      const percent = typeof cell === "string" ? /^\s*(.+?)\s*%\s*$/.exec(cell)?.[1] : undefined;
      const value = percent === undefined ? amountFrom(cell, name) : (numberFrom(percent, name) ?? NaN) / 100;
      const fraction = notNegative(value ?? 0, name);
      if (fraction <= 2) return fraction;
      throw new InputError(
        `${name}: ${quoteCell(cell)} is more than a cloth stretches. Write 25 % as 25% or as 0.25.`,
      );
    },
    0,
  );
}

/** One tape reading in any common writing. 0 counts as empty. */
export function reading(help: string): Parameter<TapeReading> {
  return {
    ...required(help, readTape),
    isBlank: (raw) => isSingleCell(raw, isEmpty),
  };
}

/** One tape reading, or the difference of two, which may be below zero. 0 counts as empty. */
export function readingOrDifference(help: string): Parameter<TapeReading> {
  return { ...reading(help), read: (raw, name) => readTapeDifference(singleCell(raw, name), name) };
}

/** A tape reading that may be omitted, with what that means in words. */
export function optionalReading(help: string, standsFor: string): Parameter<TapeReading | undefined> {
  return optional({ help, standsFor }, readTape, undefined);
}

/** A name, such as that of a measure. A number is taken as the name that it spells. */
export function text(help: string): Parameter<string> {
  return { ...required(help, textFrom), type: "text" };
}

/** The name of a figure of the chart. */
export function figureName(help: string): Parameter<string> {
  return { ...text(help), names: "figure" };
}

/** The name of a figure of the chart, or none, with what that means in words. */
export function optionalFigureName(help: string, standsFor: string): Parameter<string | undefined> {
  return { ...optional({ help, standsFor }, textFrom, undefined), type: "text", names: "figure" };
}

/** The code of a pattern. */
export function patternCode(help: string): Parameter<string> {
  return { ...text(help), names: "pattern" };
}

/** A text with words that are offered; others may be known too. */
export function textOf(help: string, choices: Choices): Parameter<string> {
  return { ...text(help), choices };
}

/** One of a few words. */
export function choice<const T extends string>(
  help: string,
  choices: Choices<T>,
  fallback: NoInfer<T>,
): Parameter<T> {
  const words = choices.values.map(({ word }) => word);
  const parameter = optional(
    { help, standsFor: fallback },
    (given, name): T => {
      const said = textFrom(given, name);
      const found = words.find((each) => each === said.toLowerCase());
      if (found !== undefined) return found;
      throw new InputError(
        `${name}: ${quote(said)} is not known here. Write ${orList(words)}.${didYouMean(said, words)}`,
      );
    },
    fallback,
  );
  return { ...parameter, type: "text", choices };
}

/** A word that is looked up later, with what stands for an omitted one; words that are offered, others may be known too. */
export function word(help: string, choices: Choices, fallback: string): Parameter<string> {
  return { ...optional({ help, standsFor: fallback }, textFrom, fallback), type: "text", choices };
}

/** A unit of length, with what stands for an omitted one. */
export function unit(help: string, fallback: LengthUnit): Parameter<LengthUnit> {
  return { ...optional({ help, standsFor: fallback }, unitFrom, fallback), ...typedUnit };
}

/** A unit of length that may be left out, with what that means in words. */
export function optionalUnit(help: string, standsFor: string): Parameter<LengthUnit | undefined> {
  return { ...optional({ help, standsFor }, unitFrom, undefined), ...typedUnit };
}

const typedUnit = { type: "text", choices: unitChoices } as const;

/** A range of plain numbers, for example deltas; blank cells and marks for “not taken” are `undefined`. */
export function numbers(help: string): Parameter<Numbers> {
  return range(help, (cells, name) =>
    cells.map((row, r) => row.map((cell, c) => numberFrom(cell, place(name, cells, r, c)))),
  );
}

/** A range of lengths, all in one unit. Desktop hosts pass 0 for an empty cell, and no length is 0: 0 is blank. */
export function lengths(help: string): Parameter<Numbers> {
  return range(help, (cells, name) =>
    cells.map((row, r) =>
      row.map((cell, c) => {
        const where = place(name, cells, r, c);
        const value = numberFrom(cell, where);
        return value ? sizeOf(value, where) : undefined;
      }),
    ),
  );
}

/** A range, as it is or read in a way of its own. */
export function range<T>(help: string, read: (cells: Cells, name: string) => T): Parameter<T> {
  return {
    help,
    optional: false,
    shape: "range",
    type: "any",
    isBlank: () => false,
    read: (raw, name) => read(toCells(raw), name),
  };
}

/** A measurement chart: headings in the first row, figure names in the first column. */
export function chart(): Parameter<Chart> {
  return range(chartHelp, (cells) => requireUnits(chartOf(tableFrom(cells))));
}

/** The chart in a table, see {@link tableFrom}. */
export const chartOf = onceFor((cells: Cells) => readChart(cells));

/** Most workbooks have a chart, tolerances, patterns with their rules and classes, grade rules, and some of a kind twice. */
const tablesKept = 12;

/**
 * The rows of a table that hold something; the same object as long as they say the same. Many formulas name one table, and hosts
 * hand its cells over anew to each: what is read of it is kept by this object, and read once.
 */
export function tableFrom(cells: Cells): Cells {
  return sameTable(withoutBlankEnd(cells));
}

const sameTable = workOnce((cells: Cells) => cells, equalCells, tablesKept);

/** The cells of a chart, for a function that shows them. */
export function chartCells(): Parameter<Cells> {
  return range(chartHelp, withoutBlankEnd);
}

const chartHelp =
  "The measurement chart: headings in the first row, figure names in the first column, for example Figures[#All].";

/** A table of tolerances, still to be matched with the chart of the same call; `undefined` takes the usual ones. */
export function tolerances(): Parameter<(chart: Chart) => ToleranceTable | undefined> {
  return optionalRange(
    "A table with the headings Measure and Tolerance: how far two readings may differ and still count as the same.",
    "the usual tolerance of each measure",
    (cells) => (chart) => cells && tolerancesOf(tableFrom(cells), chart),
  );
}

/** For bodies in the place of figures: how each figure’s body is found; `undefined` for figures, each by itself. */
export function bodies(): Parameter<((chart: Chart) => readonly (readonly number[])[]) | undefined> {
  return optionalRange(
    "For bodies in the place of figures: the table of tolerances, for example Tolerances[#All]. Figures whose bodies are within them count as one, as GROUPS finds them.",
    "figures, each by itself",
    (cells, name) =>
      cells &&
      ((chart) => {
        try {
          const groups = groupsOf(chart, tolerancesOf(tableFrom(cells), chart));
          return bodiesBy(groups, [...chart.figures.keys()]);
        } catch (error) {
          if (error instanceof InputError) throw new InputError(`${name}: ${error.message}`, error.kind);
          throw error;
        }
      }),
  );
}

/** The same, with the columns of the table that hold for one class of garments each. */
export function garmentTolerances(): Parameter<
  (chart: Chart) => { tolerances?: ToleranceTable; garments?: readonly GarmentTolerances[] }
> {
  return optionalRange(
    "A table with the headings Measure and Tolerance, and if wanted a column of tolerances for each class of garments.",
    "the usual tolerance of each measure",
    (cells) => {
      if (!cells) return () => ({});
      const given = tableFrom(cells);
      return (chart) => ({ tolerances: tolerancesOf(given, chart), garments: garmentsOf(given, chart) });
    },
  );
}

const tolerancesOf = onceFor((cells: Cells, chart: Chart) => readTolerances(withoutZeros(cells), chart));
const garmentsOf = onceFor((cells: Cells, chart: Chart) => readGarmentTolerances(withoutZeros(cells), chart));

/** Names in a range, or in one cell with commas between them; `undefined` where nothing is given. */
export function names(help: string, standsFor: string): Parameter<readonly string[] | undefined> {
  return optionalRange(help, standsFor, (cells, name) =>
    cells
      ?.flat()
      .filter((cell) => !isEmpty(cell))
      .flatMap((cell) => textFrom(cell, name).split(/[,;]/))
      .map((part) => part.trim())
      .filter((part) => part !== ""),
  );
}

export function optionalRange<T>(
  help: string,
  standsFor: string,
  read: (cells: Cells | undefined, name: string) => T,
): Parameter<T> {
  return {
    help,
    optional: true,
    shape: "range",
    type: "any",
    standsFor,
    isBlank: () => false,
    read: (raw, name) => {
      const cells = toCells(raw);
      return read(cells.every((row) => row.every(isEmpty)) ? undefined : cells, name);
    },
  };
}

function required<T>(help: string, read: (given: Cell, name: string) => T): Parameter<T> {
  return {
    help,
    optional: false,
    shape: "scalar",
    type: "any",
    isBlank: (raw) => isSingleCell(raw, isBlank),
    read: (raw, name) => read(singleCell(raw, name), name),
  };
}

/**
 * One cell that may be left out. Excel hands over null for an omitted argument on the web and 0 on the desktop, and an empty
 * cell likewise, so that none of them can be told from the others: all mean that nothing is given.
 *
 * @param read gets a cell that is neither blank nor 0
 * @param leftOut what stands for one that is
 */
function optional<T, L>(
  options: { help: string; standsFor: string },
  read: (cell: Cell, name: string) => T,
  leftOut: L,
): Parameter<T | L> {
  return {
    ...options,
    optional: true,
    shape: "scalar",
    type: "any",
    isBlank: () => false,
    read: (raw, name) => {
      const given = singleCell(raw, name);
      return isEmpty(given) ? leftOut : read(given, name);
    },
  };
}

function unitFrom(given: Cell, name: string): LengthUnit {
  return readUnit(textFrom(given, name));
}

/** For a table in which 0 says nothing: some spreadsheets hand over an empty cell as 0. */
export function withoutZeros(cells: Cells): Cells {
  return cells.map((row) => row.map((cell) => (cell === 0 ? undefined : cell)));
}

/** Whole worksheet columns, as in A:F, come with a million blank rows. */
function withoutBlankEnd(cells: Cells): Cells {
  const last = cells.findLastIndex((row) => row.some((given) => !isEmpty(given)));
  return cells.slice(0, Math.max(1, last + 1));
}

function singleCell(raw: unknown, name: string): Cell {
  const cells = toCells(raw);
  if (isSingle(cells)) return cells[0]?.[0];
  throw new InputError(
    `${name} takes one cell, but was given ${sizeInWords(cells)}. Choose one cell of that range.`,
  );
}

function isSingle(cells: Cells): boolean {
  return cells.length === 1 && cells[0]?.length === 1;
}

function isSingleCell(raw: unknown, test: (given: Cell) => boolean): boolean {
  const cells = toCells(raw);
  return isSingle(cells) && test(cells[0]?.[0]);
}

/** True for an empty cell and for a mark such as `-` or `n/a`. */
function isNotTaken(given: Cell): boolean {
  return isBlank(given) || (typeof given === "string" && isMissingMark(given));
}

/** An amount of at least 0, with “none” for 0; `undefined` where nothing is given, or 0, which may be an empty cell. */
function amountFrom(cell: Cell, name: string): number | undefined {
  if (typeof cell === "string" && cell.trim().toLowerCase() === "none") return 0;
  return sizeOf(numberFrom(cell, name) ?? 0, name) || undefined;
}

/** A blank cell never gets here: the result is blank then. */
function numberFromRequired(given: Cell, name: string): number {
  return sizeOf(numberFrom(given, name) ?? Number.NaN, name);
}

function numberFrom(cell: Cell, where: string): number | undefined {
  if (cell === undefined || typeof cell === "number") return cell;
  if (isCellError(cell)) {
    throw new InputError(`${where}: the cell holds the error ${cell.error}. Mend that cell first.`);
  }
  if (typeof cell === "boolean") {
    throw new InputError(
      `${where}: ${quoteCell(cell)} is not a number. Write a number, or leave the cell empty.`,
    );
  }
  return readPlainNumber(cell, where);
}

function quoteCell(cell: Cell): string {
  return quote(cellText(cell));
}

function textFrom(cell: Cell, name: string): string {
  if (isCellError(cell)) {
    throw new InputError(`${name}: the cell holds the error ${cell.error}. Mend that cell first.`);
  }
  return cellText(cell);
}

/** Longer than any length in any unit: 1 km in mm. */
const largest = 1e6;

/** A length or an amount: from 0 up, and no larger than sums can be told of in words. */
function sizeOf(value: number, where: string): number {
  if (!(value > largest)) return notNegative(value, where);
  throw new InputError(`${where}: “${String(value)}” is too large. Check the number.`);
}

function notNegative(value: number, where: string): number {
  if (value >= 0) return value;
  throw new InputError(`${where}: “${String(value)}” is below zero. Write 0 or more.`);
}

/** Where in a range a cell stands, for messages. */
function place(name: string, cells: Cells, row: number, column: number): string {
  return isSingle(cells) ? name : `${name}, row ${String(row + 1)}, column ${String(column + 1)}`;
}

/** “3 rows by 1 column” */
export function sizeInWords(cells: readonly (readonly unknown[])[]): string {
  const columns = cells[0]?.length ?? 0;
  return `${plural(cells.length, "row")} by ${plural(columns, "column")}`;
}

function plural(number: number, noun: string): string {
  return `${String(number)} ${noun}${number === 1 ? "" : "s"}`;
}

function orList(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1) ?? ""}`;
}
