import { readHeading } from "../../measures/heading.ts";
import type { Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { readCell } from "../readCell.ts";
import { detectHeadingRow } from "./source.ts";

/** A chart as it stands among other cells: rows and columns from 0, the row of headings among them. */
export interface FoundChart {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly figures: number;
  readonly measures: number;
}

/** With one measure alone, a list of prices or of books could pass for a chart. */
const leastMeasures = 2;

/** Rows of these names below the figures sum them up; they are no figures. */
const summaries =
  /^(average|averages|mean|median|total|sum|minimum|maximum|min|max|range|spread|std\.? ?dev\.?)$/i;

/**
 * Looks for a measurement chart that can be used where it stands: one row of headings without gaps, names in its first
 * column, at least two known measures beside them, and figures with readings below. It ends at the first row without a name
 * or with the name of a sum. Whatever stands above, below and beside is left out.
 *
 * @returns `undefined` where there is none, or where it would have to be laid out anew: headings over two rows, measures
 * that run down, no column of names
 */
export function findChart(cells: Cells): FoundChart | undefined {
  const row = detectHeadingRow(cells);
  const headings = (cells[row] ?? []).map(cellText);
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
  const stop = below.findIndex((line) => isBlank(line[column]) || summaries.test(cellText(line[column])));
  const figures = stop < 0 ? below : below.slice(0, stop);
  const hasReading = figures.some((line) => measured.some((c) => readCell(line[c], "mm").kind === "length"));
  if (!hasReading) return undefined;
  return {
    ...{ row, column, rows: figures.length + 1, columns: end - column },
    ...{ figures: figures.length, measures: measured.length },
  };
}

function isMeasure(heading: string): boolean {
  return heading !== "" && readHeading(heading, "mm").measure !== undefined;
}
