import type { Chart } from "../chart/chart.ts";
import { proportions } from "./proportions.ts";
import { logReadings, usualLogs } from "./readings.ts";

/** What a reading may be expected to be: an estimate, never a reading. mm. */
export interface ExpectedValue {
  readonly mm: number;
  /** Nineteen in twenty readings lie from low to high, as far as the chart’s own strays are normal. */
  readonly lowMm: number;
  readonly highMm: number;
}

/** Two-sided 95 % point of the standard normal distribution. */
const normal95 = 1.96;

/**
 * The reading that would be in proportion for a figure: exp(size + proportion), after the figures of most similar
 * build, with an interval from the strays of the chart. The reading itself, if there is one, takes no part.
 *
 * @param figure position in `chart.figures`
 * @param column position in `chart.measures`
 * @returns `undefined` when the chart, the figure or the measure has too few readings
 */
export function expectedValue(chart: Chart, figure: number, column: number): ExpectedValue | undefined {
  const logs = logReadings(chart).map((row, i) =>
    i === figure ? row.map((ln, j) => (j === column ? Number.NaN : ln)) : row,
  );
  const fit = proportions(logs, usualLogs(chart));
  const expected = fit?.expected(figure, column) ?? Number.NaN;
  if (!fit || Number.isNaN(expected)) return undefined;
  const reach = normal95 * fit.spread(figure, column);
  return { mm: Math.exp(expected), lowMm: Math.exp(expected - reach), highMm: Math.exp(expected + reach) };
}
