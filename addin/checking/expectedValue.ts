import type { Chart } from "../chart/chart.ts";
import { chartModel, normal95, type ChartModel } from "./chartModel.ts";
import { orderByReadings } from "./orderByReadings.ts";
import { proportions, type Proportions } from "./proportions.ts";
import { logReadings, usualLogs } from "./readings.ts";

/** What a reading may be expected to be: an estimate, never a reading. mm. */
export interface ExpectedValue {
  readonly mm: number;
  /** Nineteen in twenty readings lie from low to high, as readings of the chart do that are taken out for a trial. */
  readonly lowMm: number;
  readonly highMm: number;
}

/** One reading in so many is taken out at a time, to see how far it lies from what is then expected … */
const oneIn = 20;
/** … until so many were, in no more rounds than these. */
const enoughTried = 200;
const mostRounds = 6;

/**
 * The reading that would be in proportion for a figure, with an interval: from `chartModel`. The reading itself, if there is
 * one, takes no part. How wide the interval is, is measured on other readings of the chart, taken out in the same way (cross-validation).
 *
 * @param figure position in `chart.figures`
 * @param column position in `chart.measures`
 * @returns `undefined` when the chart, the figure or the measure has too few readings
 */
export function expectedValue(chart: Chart, figure: number, column: number): ExpectedValue | undefined {
  const start = usualLogs(chart);
  const inChart = logReadings(chart);
  inChart[figure]![column] = Number.NaN;
  const order = orderByReadings(inChart);
  const logs = order.map((i) => inChart[i]!);
  const row = order.indexOf(figure);
  const fit = proportions(logs, start);
  if (!fit) return undefined;
  const model = chartModel(fit);
  const expected = model.expected(row, column);
  if (Number.isNaN(expected)) return undefined;
  const reach = tried95(logs, start, fit, model.spread(row, column));
  return { mm: Math.exp(expected), lowMm: Math.exp(expected - reach), highMm: Math.exp(expected + reach) };
}

/**
 * How far from the expected value nineteen in twenty readings lie, in ln, where a reading has this spread: as many spreads as it was
 * with the readings that were taken out, but no farther than any of those.
 */
function tried95(
  logs: readonly (readonly number[])[],
  start: readonly number[],
  fit: Proportions,
  spread: number,
): number {
  const strays: number[] = [];
  let farthest = 0;
  for (let round = 0; round < mostRounds && strays.length < enoughTried; round++) {
    const isOut = (i: number, j: number) => (i * 7 + j * 13) % oneIn === round;
    const kept = logs.map((row, i) => row.map((ln, j) => (isOut(i, j) ? Number.NaN : ln)));
    const without = proportions(kept, start, fit);
    if (!without) continue;
    const model: ChartModel = chartModel(without);
    logs.forEach((row, i) => {
      row.forEach((ln, j) => {
        if (!isOut(i, j)) return;
        const off = Math.abs(ln - model.expected(i, j));
        const stray = off / model.spread(i, j);
        if (Number.isNaN(stray)) return;
        strays.push(stray);
        farthest = Math.max(farthest, off);
      });
    });
  }
  strays.sort((a, b) => a - b);
  const spreads = strays[Math.floor(0.95 * strays.length)] ?? normal95;
  return Math.max(normal95 * spread, Math.min(spreads * spread, farthest));
}
