import { columnLetters } from "../columnLetters.ts";
import type { Cell, Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { readHeading } from "../../measures/heading.ts";
import { lengthIn } from "../../measures/parseReading.ts";
import { unitOfFraction } from "../unitsOfColumns.ts";
import type { TextReader } from "./texts.ts";
import { textReader } from "./texts.ts";

/** What is imported: the rows of a text file or of a worksheet, headings among them. Rows may differ in length. */
export interface SourceRows {
  readonly rows: Cells;
  /** Row in the file, from 1, of each of `rows`. */
  readonly numbers: readonly number[];
  /** Number formats of a worksheet’s cells, for finding fractions that became dates. */
  readonly formats?: readonly (readonly (string | undefined)[])[];
  /** Reads its texts, each once for all that ask. */
  readonly texts: TextReader;
}

/** A source laid out as a chart: which row holds the headings, and the rows of figures below it. */
export interface LaidOutSource {
  readonly headings: readonly string[];
  readonly source: SourceRows;
  /** Index into `source.rows` of the first row below the headings. */
  readonly firstRow: number;
}

/** Rows that may stand above the headings: a title, a date, a line of group headings. */
const searched = 12;

/**
 * Index of the row that holds the headings: the one with most headings that are measures, else with most
 * words; the first of equals. A row of group headings over merged cells has fewer words than the row below it.
 */
export function detectHeadingRow(rows: Cells, texts = textReader()): number {
  const scores = rows.slice(0, searched).map((row) => {
    const known = row.filter(isKnownHeading).length;
    const words = row.filter((cell) => !isBlank(cell) && !isReading(cell, texts)).length;
    return known * 100 + words;
  });
  return Math.max(0, scores.indexOf(Math.max(...scores)));
}

/** True when measures run down and figures run across, so that the source has to be turned. */
export function detectTurned(rows: Cells, texts = textReader()): boolean {
  const down = rows.slice(0, 100).filter((row) => isKnownHeading(row[0])).length;
  const across = (rows[detectHeadingRow(rows, texts)] ?? []).filter(isKnownHeading).length;
  return down >= 2 && down > across;
}

/** Rows become columns and columns become rows. */
export function turn(source: SourceRows): SourceRows {
  const width = source.rows.reduce((widest, row) => Math.max(widest, row.length), 0);
  const columns = Array.from({ length: width }, (_, c) => c);
  return {
    rows: columns.map((c) => source.rows.map((row) => row[c])),
    numbers: columns.map((c) => c + 1),
    texts: source.texts,
    ...(source.formats ? { formats: columns.map((c) => source.formats?.map((row) => row[c]) ?? []) } : {}),
  };
}

/**
 * The source under its headings. Cells beyond the last heading get the heading “Column F” after their letter,
 * so that nothing is lost; so do columns whose heading is blank.
 */
export function layOut(source: SourceRows, headingRow: number): LaidOutSource {
  const width = source.rows
    .slice(headingRow)
    .reduce((widest, row) => Math.max(widest, row.findLastIndex((cell) => !isBlank(cell)) + 1), 0);
  const headings = Array.from(
    { length: width },
    (_, c) => headingText(source.rows[headingRow]?.[c]) || `Column ${columnLetters(c)}`,
  );
  return { headings, source, firstRow: headingRow + 1 };
}

/** A heading in one line. */
function headingText(cell: Cell): string {
  return cellText(cell).replace(/\s+/g, " ");
}

function isKnownHeading(cell: Cell): boolean {
  return typeof cell === "string" && readHeading(cell, "mm").measure !== undefined;
}

function isReading(cell: Cell, texts: TextReader): boolean {
  return (
    typeof cell === "number" ||
    lengthIn(texts(cellText(cell)), { unit: "mm", fractionUnit: unitOfFraction }).kind !== "refused"
  );
}
