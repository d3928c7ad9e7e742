import { likeBuild } from "./likeBuild.ts";
import { medianOf } from "./medianOf.ts";
import { medianPolish, type MedianPolish } from "./medianPolish.ts";
import { robustSpread } from "./modifiedZ.ts";

/** Proportions say something only in a chart with at least this many figures and measures … */
export const fewestFigures = 5;
export const fewestMeasures = 5;
/** … counting only figures and measures with at least this many readings. */
export const fewestReadings = 4;

/** Beyond this many spreads a reading is out of proportion (Iglewicz & Hoaglin 1993). */
export const limit = 3.5;

/** From this many figures on, a figure is also compared with those of its own build. */
const fewestForBuild = 8;
/** Builds do not differ by more than a factor 2 in one measure: what is farther off, no figure of like build excuses. */
const mostByBuild = Math.log(2);
/** Bodies differ by 2.5 % and tapes are read to half a millimetre even where a chart happens to agree better. */
const leastSpread = 0.025;
const readingErrorMm = 0.5;

/** What is usual in a chart: size of the figure, proportion of the measure, and how far readings stray from both. */
export interface Proportions {
  /** ln of the size of each figure; NaN where too little is known. */
  readonly sizes: readonly number[];
  /** ln of the proportion of each measure beside its start; NaN where too little is known. */
  readonly columns: readonly number[];
  /** ln(reading) − size − proportion; NaN where missing or left out. */
  readonly residuals: readonly (readonly number[])[];
  /** ln of the reading that would be in proportion, for the build of the figure. */
  expected(figure: number, column: number): number;
  /**
   * How far ln(reading) is out of proportion, in spreads: the least of the deviations from the chart as a whole and from
   * each of the figures of most similar build; 0 when it lies between them. NaN where too little is known.
   */
  deviation(figure: number, column: number, ln: number): number;
  /** The typical stray of a reading in ln, at this cell. */
  spread(figure: number, column: number): number;
  /** The same from the chart as a whole alone: never nearer to 0. */
  deviationFromChart(figure: number, column: number, ln: number): number;
  /** The figures of most similar build, closest first. */
  mates(figure: number): readonly number[];
  /** To begin another fit of nearly the same readings with. */
  readonly polish: MedianPolish;
}

/**
 * Two-way median polish of ln(reading) over figures × measures, and a yardstick for what strays from it.
 *
 * A reading is judged against the larger of two spreads, of the whole chart and of its own measure, because hands and
 * feet vary more than girths; and against the whole chart as well as each of the three figures of most similar build,
 * because a chart may hold children and adults, and hardly anybody makes one slip twice. Only what is out of line with
 * all of them is out of proportion. This is more patient than the plain method (one spread, one expectation).
 *
 * Source of the polish: Tukey, Exploratory Data Analysis (1977). The rest is this project’s own choice.
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
  const common = robustSpread(residuals.flat());
  const own = columns.map((_, j) => robustSpread(residuals.map((row) => row[j]!)));
  const byBuild = rows.filter((size) => !Number.isNaN(size)).length >= fewestForBuild;

  const alike = likeBuild(residuals, fewestReadings);

  /** What the figures of most similar build have there beyond the usual, in ln. */
  const ofBuild = (figure: number, column: number): readonly number[] =>
    byBuild ? alike.mates(figure, column).map((mate) => residuals[mate]![column]!) : [];

  const usual = (figure: number, column: number) =>
    overall + rows[figure]! + columns[column]! + guess[column]!;
  const expected = (figure: number, column: number) =>
    usual(figure, column) + (medianOf(ofBuild(figure, column)) || 0);
  const spread = (figure: number, column: number) =>
    Math.max(common, own[column]!, leastSpread + readingErrorMm / Math.exp(usual(figure, column)));

  const deviationFromChart = (figure: number, column: number, ln: number) =>
    (ln - usual(figure, column)) / spread(figure, column);
  const deviation = (figure: number, column: number, ln: number) => {
    const fromChart = deviationFromChart(figure, column, ln);
    if (!(Math.abs(fromChart) > 1)) return fromChart;
    if (Math.abs(ln - usual(figure, column)) > mostByBuild) return fromChart;
    let least = fromChart;
    for (const residual of ofBuild(figure, column)) {
      const fromMate = fromChart - residual / spread(figure, column);
      if (fromChart * fromMate <= 0) return 0;
      if (Math.abs(fromMate) < Math.abs(least)) least = fromMate;
    }
    return least;
  };

  return {
    sizes: rows.map((size) => overall + size),
    columns,
    residuals,
    expected,
    spread,
    deviation,
    deviationFromChart,
    mates: (figure) => alike.mates(figure),
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
