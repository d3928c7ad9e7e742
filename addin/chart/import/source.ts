import { columnLetters } from "../columnLetters.ts";
import type { Cell, Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { readHeading } from "../../measures/heading.ts";
import { findUnit } from "../../measures/units.ts";
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
  /** Indices of columns whose heading the file does not have, so that they are named after their letter. */
  readonly unheaded: readonly number[];
  readonly source: SourceRows;
  /** Index into `source.rows` of the first row below the headings. */
  readonly firstRow: number;
  /** Rows below that are no figures: sums, notes, headings once more. As they begin, with their rows in the file. */
  readonly leftOut: readonly { readonly begins: string; readonly number: number }[];
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
 * The source under its headings, which may stand over two rows, or have a row of units below them. Cells beyond the last
 * heading get the heading “Column F” after their letter, so that nothing is lost; so do columns whose heading is blank. Rows
 * that sum up, explain or repeat the headings are left out.
 */
export function layOut(source: SourceRows, headingRow: number): LaidOutSource {
  const width = source.rows
    .slice(headingRow)
    .reduce((widest, row) => Math.max(widest, row.findLastIndex((cell) => !isBlank(cell)) + 1), 0);
  const { texts, rows } = headingTexts(source, headingRow, width);
  const headings = texts.map((text, c) => text || `Column ${columnLetters(c)}`);
  const firstRow = headingRow + rows;
  const below = linesBelow(source.rows, firstRow, headingRow);
  const keep = <T>(list: readonly T[]): readonly T[] => list.filter((_, i) => !below[i]);
  return {
    headings,
    unheaded: texts.flatMap((text, c) => (text === "" ? [c] : [])),
    source: {
      ...source,
      rows: keep(source.rows),
      numbers: keep(source.numbers),
      ...(source.formats && { formats: keep(source.formats) }),
    },
    firstRow,
    leftOut: source.rows.flatMap((row, i) =>
      below[i]
        ? [{ begins: headingText(row.find((cell) => !isBlank(cell))), number: source.numbers[i] ?? i + 1 }]
        : [],
    ),
  };
}

/** The headings, and over how many rows they stand. */
export function headingTexts(
  { rows, texts }: Pick<SourceRows, "rows" | "texts">,
  headingRow: number,
  width: number,
): { readonly texts: readonly string[]; readonly rows: number } {
  const line = (at: number): readonly string[] =>
    Array.from({ length: width }, (_, c) => headingText(rows[at]?.[c]));
  const above = spread(line(headingRow - 1));
  const own = line(headingRow);
  // “Arm” over “length” and “girth”: together they may say what neither says alone.
  const named = own.map((text, c) => {
    const both = `${above[c] ?? ""} ${text}`.trim();
    return isKnownHeading(text) || !isKnownHeading(both) ? text : both;
  });
  const next = rows[headingRow + 1] ?? [];
  const filled = next.flatMap((cell, c) => (isBlank(cell) ? [] : [{ text: headingText(cell), cell, c }]));
  const marks = filled.filter(({ c, text }) => c > 0 && !/^[-–—]$/u.test(text));
  const measured = named.flatMap((text, c) => (isKnownHeading(text) ? [c] : []));
  // What is no length is counted in something else: a price in €, a weight in g.
  const ofLengths = marks.some(({ c }) => measured.includes(c))
    ? marks.filter(({ c }) => measured.includes(c))
    : marks;
  const others = marks.filter((mark) => !ofLengths.includes(mark));
  if (
    ofLengths.length > 0 &&
    ofLengths.every(({ text }) => unitMark(text) !== undefined) &&
    others.every(({ text }) => isShortMark(text))
  ) {
    const markAt = (c: number): string | undefined => {
      const mark = marks.find((each) => each.c === c);
      return mark && (unitMark(mark.text) ?? mark.text.replace(/[()[\]]/gu, ""));
    };
    return {
      texts: named.map((text, c) => {
        const mark = markAt(c);
        return mark === undefined || text === "" || readHeading(text, "mm").unitStated
          ? text
          : `${text} (${mark})`;
      }),
      rows: 2,
    };
  }
  const covers = measured.filter((c) => !isBlank(next[c])).length * 2 >= measured.length;
  const together = spread(named).map((text, c) => `${text} ${headingText(next[c])}`.trim());
  const known = (all: readonly string[]): number => all.filter(isKnownHeading).length;
  const isSecond =
    filled.length > 1 &&
    filled.every(({ cell, text }) => !isReading(cell, texts) && !/\d/u.test(text)) &&
    (known(together) > known(named) || (measured.length > 0 && covers && known(together) >= known(named)));
  if (!isSecond) return { texts: named, rows: 1 };
  return { texts: together.map((both, c) => (isKnownHeading(both) ? both : named[c] || both)), rows: 2 };
}

/** What stands in a row of units: “mm”, “(in)”, “%”. */
function unitMark(text: string): string | undefined {
  const bare = text.replace(/[()[\]]/gu, "").trim();
  return bare === "%" ? bare : findUnit(bare);
}

/** What may stand in a row of units where there is no length: “€”, “g”, “pcs”. */
const isShortMark = (text: string): boolean => text.length <= 5 && !/\d/u.test(text);

/** A heading over merged cells stands in the first of them and holds for all. */
function spread(headings: readonly string[]): readonly string[] {
  let last = "";
  return headings.map((text) => {
    last = text || last;
    return last;
  });
}

/** What a row below the figures begins with when it sums them up, in English and German. Names such as Max are left alone. */
export const sums =
  /^(averages?|mean|median|totals?|sum|minimum|maximum|std\.? ?dev(iation)?\.?|standard deviation|summe|gesamt|mittel(wert)?|durchschnitt|standardabweichung)\s*:?$/iu;
/** Marks and words that a note begins with, in print and in lists. */
const notes =
  /^([*†‡§¹²³]|\(\d{1,2}\)\s|notes?\s*[:.]|sources?\s*[:.]|hinweise?\s*[:.]|anmerkung(en)?\s*[:.]|quellen?\s*[:.]|n\.b\.|ps\s*[:.]|page \d+)/iu;

/** Which rows are no figures: sums, notes, the headings once more, and what stands alone below the last figure and a sum or a note. */
function linesBelow(rows: Cells, firstRow: number, headingRow: number): readonly boolean[] {
  const known = rows.map(
    (row, i) => i >= firstRow && (isSumOrNote(row) || isHeadingsAgain(row, rows[headingRow] ?? [])),
  );
  const stands = (row: readonly Cell[]): number => row.filter((cell) => !isBlank(cell)).length;
  const last = rows.findLastIndex((row, i) => i >= firstRow && !known[i] && stands(row) > 1);
  const end = known.findIndex((isKnown, i) => isKnown && i > last);
  return known.map(
    (isKnown, i) => isKnown || (end >= 0 && last >= 0 && i > end && stands(rows[i] ?? []) === 1),
  );
}

function isSumOrNote(row: readonly Cell[]): boolean {
  const filled = row.filter((cell) => !isBlank(cell));
  const begins = cellText(filled[0]);
  return sums.test(begins) || (filled.length === 1 && notes.test(begins));
}

function isHeadingsAgain(row: readonly Cell[], headings: readonly Cell[]): boolean {
  return (
    row.some((cell, c) => c > 0 && !isBlank(cell)) &&
    row.every((cell, c) => cellText(cell) === cellText(headings[c]))
  );
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
