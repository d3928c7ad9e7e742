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
 */
export function steps(chart: Chart, columns: readonly MeasureColumn[] = chart.measures): readonly Step[] {
  return chart.figures.slice(1).map((to, i) => ({
    from: chart.figures[i] ?? "",
    to,
    deltasMm: columns.map(({ mm }) => (mm[i + 1] ?? Number.NaN) - (mm[i] ?? Number.NaN)),
  }));
}
