import { likeBuild } from "./likeBuild.ts";
import { medianOf } from "./medianOf.ts";
import { medianPolish, type MedianPolish } from "./medianPolish.ts";

/** Proportions say something only in a chart with at least this many figures and measures … */
export const fewestFigures = 5;
export const fewestMeasures = 5;
/** … counting only figures and measures with at least this many readings. */
export const fewestReadings = 4;

/** What is usual in a chart: the size of each figure and the proportion of each measure. */
export interface Proportions {
  /** ln of the size of each figure; NaN where too little is known. */
  readonly sizes: readonly number[];
  /** ln of the proportion of each measure beside its start; NaN where too little is known. */
  readonly columns: readonly number[];
  /** ln(reading) − size − proportion; NaN where missing or left out. */
  readonly residuals: readonly (readonly number[])[];
  /** ln of the reading by size and proportion alone. */
  usual(figure: number, column: number): number;
  /** The figures of most similar build, closest first; with a column, those with a reading in it, which itself takes no part. */
  mates(figure: number, column?: number): readonly number[];
  /** To begin another fit of nearly the same readings with. */
  readonly polish: MedianPolish;
}

/**
 * Two-way median polish of ln(reading) over figures × measures. What else there is to be expected of a figure is added by
 * `chartModel`.
 *
 * Source of the polish: Tukey, Exploratory Data Analysis (1977).
 *
 * @param logs ln(mm), figure by figure; NaN is missing or left out
 * @param start a rough ln of each proportion, taken out beforehand, so that figures on which different measures were
 *   taken can be sized at all; NaN where nothing is known
 * @param before a fit of nearly the same readings, to begin with: another one with fewer steps
 * @returns `undefined` when the chart is too small to speak of proportions
 */
export function proportions(
  logs: readonly (readonly number[])[],
  start: readonly number[],
  before?: Proportions,
): Proportions | undefined {
  const kept = largeEnough(logs);
  if (!kept) return undefined;
  const guess = filledIn(start, kept);
  const table = kept.map((row) => row.map((ln, j) => ln - guess[j]!));
  const polish = medianPolish(table, {
    eps: 1e-6,
    maxIterations: 50,
    ...(before && { from: before.polish }),
  });
  const { overall, rows, columns, residuals } = polish;
  const alike = likeBuild(residuals, fewestReadings);
  return {
    sizes: rows.map((size) => overall + size),
    columns,
    residuals,
    usual: (figure, column) => overall + rows[figure]! + columns[column]! + guess[column]!,
    mates: alike.mates,
    polish,
  };
}

/** The table without rows and columns that hold too few readings; `undefined` when too little is left. */
function largeEnough(logs: readonly (readonly number[])[]): number[][] | undefined {
  const enough = (list: readonly number[]) => list.filter((ln) => !Number.isNaN(ln)).length >= fewestReadings;
  const width = logs[0]?.length ?? 0;
  const keptColumns = Array.from({ length: width }, (_, j) => enough(logs.map((row) => row[j]!)));
  const trimmed = logs.map((row) => row.map((ln, j) => (keptColumns[j] ? ln : Number.NaN)));
  const keptRows = trimmed.map(enough);
  const figures = keptRows.filter(Boolean).length;
  const measures = keptColumns.filter(Boolean).length;
  if (figures < fewestFigures || measures < fewestMeasures) return undefined;
  return trimmed.map((row, i) => (keptRows[i] ? row : row.map(() => Number.NaN)));
}

/** A rough proportion for measures without one: from the figures on which they were taken, beside the known measures. */
function filledIn(start: readonly number[], logs: readonly (readonly number[])[]): readonly number[] {
  const sizes = logs.map((row) => medianOf(row.map((ln, j) => ln - start[j]!)));
  return start.map((ln, j) =>
    Number.isNaN(ln) ? medianOf(logs.map((row, i) => row[j]! - (sizes[i]! || 0))) || 0 : ln,
  );
}
