import { readHeading } from "../../measures/heading.ts";
import type { Cell, Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { readCell } from "../readCell.ts";
import { detectHeadingRow, headingTexts, sums } from "./source.ts";
import { textReader } from "./texts.ts";

/** A chart as it stands among other cells: rows and columns from 0, the row of headings among them. */
export interface FoundChart {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly figures: number;
  readonly measures: number;
  /** What its headings have to be, where they stand over two rows or have a row of units below: to be written into `row`, the lower one. */
  readonly headings?: readonly string[];
  /** Rows further down that look like figures too, and are not in it. */
  readonly leftOut: number;
}

/** With one measure alone, a list of prices or of books could pass for a chart. */
const leastMeasures = 2;

/** Beside another sum, these are no names of figures. */
const sumsAmongOthers = /^(min|max|range|spread)\.?:?$/iu;

/**
 * Looks for a measurement chart that can be used where it stands: headings without gaps in one row, in two, or with
 * their units in the row below; names in its first column, at least two known measures beside them, and figures with readings below, with
 * blank rows between them or not. It ends at a sum, or where no more figures follow. Whatever stands above, below and beside
 * is left out.
 *
 * @returns `undefined` where there is none, or where it would have to be laid out anew: measures that run down, no column
 * of names
 */
export function findChart(cells: Cells): FoundChart | undefined {
  const headingRow = detectHeadingRow(cells);
  const width = cells[headingRow]?.length ?? 0;
  const { texts: headings, rows: over } = headingTexts(
    { rows: cells, texts: textReader() },
    headingRow,
    width,
  );
  const row = headingRow + over - 1;
  const first = headings.findIndex(isMeasure);
  if (first < 1) return undefined;
  const column = headings.lastIndexOf("", first) + 1;
  const gap = headings.indexOf("", first);
  const end = gap < 0 ? headings.length : gap;
  const measured = headings.flatMap((heading, c) =>
    c >= column && c < end && isMeasure(heading) ? [c] : [],
  );
  if (column === first || measured.length < leastMeasures) return undefined;

  const below = cells.slice(row + 1);
  const isFigure = (line: readonly Cell[]): boolean =>
    !isBlank(line[column]) && measured.some((c) => readCell(line[c], "mm").kind === "length");
  const stop = below.findIndex((_, at) => endsBefore(below, at, column, measured));
  const within = stop < 0 ? below : below.slice(0, stop);
  const last = within.findLastIndex((line, at) => isFigure(line) || isNamedRun(within, at, column));
  if (!within.some(isFigure)) return undefined;
  const own = headings.slice(column, end);
  const stand = Array.from(own, (_, c) => cellText(cells[row]?.[column + c]));
  return {
    ...{ row, column, rows: last + 2, columns: end - column },
    figures: within.slice(0, last + 1).filter((line) => !isBlank(line[column])).length,
    measures: measured.length,
    ...(own.some((text, c) => text !== stand[c]?.replace(/\s+/gu, " ")) && { headings: own }),
    leftOut: below
      .slice(last + 1)
      .filter((line, at) => isFigure(line) && !isSum(below, last + 1 + at, column)).length,
  };
}

/** A row without readings is a figure as well where it follows the others without a gap: one that is not measured yet. */
function isNamedRun(lines: Cells, at: number, column: number): boolean {
  return lines.slice(0, at + 1).every((line) => !isBlank(line[column]));
}

/** True for a sum, and below a gap for what is no figure: the headings of another list, a remark. */
function endsBefore(lines: Cells, at: number, column: number, measured: readonly number[]): boolean {
  const line = lines[at] ?? [];
  if (isBlank(line[column])) return false;
  if (isSum(lines, at, column)) return true;
  const readings = measured.map((c) => line[c]).filter((cell) => !isBlank(cell));
  const isBelowGap = lines.slice(0, at).some((above) => isBlank(above[column]));
  return isBelowGap && !readings.some((cell) => readCell(cell, "mm").kind === "length");
}

function isSum(lines: Cells, at: number, column: number): boolean {
  const name = (row: number): string => cellText(lines[row]?.[column]).trim();
  if (sums.test(name(at))) return true;
  const isOther = (row: number): boolean => sumsAmongOthers.test(name(row)) && name(row) !== name(at);
  return sumsAmongOthers.test(name(at)) && (sums.test(name(at - 1)) || isOther(at - 1) || isOther(at + 1));
}

function isMeasure(heading: string): boolean {
  return heading !== "" && readHeading(heading, "mm").measure !== undefined;
}
