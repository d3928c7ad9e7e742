import type { Chart, MeasureColumn } from "../chart/chart.ts";

/** The differences between two neighbouring rows of a chart. */
export interface Step {
  readonly from: string;
  readonly to: string;
  /** Later row − earlier row, one a column, in mm; NaN where a reading is missing. */
  readonly deltasMm: readonly number[];
}

/**
 * The steps from each row of a chart to the next, as between the sizes of a size chart. One row gives none.
 *
 * @param columns the measures wanted, in the order wanted
 * @param rows the figures of the run, as rows of `chart.figures` in the order wanted; all of them when left out
 */
export function steps(
  chart: Chart,
  columns: readonly MeasureColumn[] = chart.measures,
  rows: readonly number[] = [...chart.figures.keys()],
): readonly Step[] {
  return neighbours(rows).map(([from, to]) => ({
    from: chart.figures[from] ?? "",
    to: chart.figures[to] ?? "",
    deltasMm: columns.map(({ mm }) => (mm[to] ?? Number.NaN) - (mm[from] ?? Number.NaN)),
  }));
}

/** Each row of a run with the one after it. */
export function neighbours(rows: readonly number[]): readonly (readonly [from: number, to: number])[] {
  return rows.flatMap((from, i) => {
    const to = rows[i + 1];
    return to === undefined ? [] : [[from, to] as const];
  });
}
