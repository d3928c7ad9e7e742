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

/** What is expected of a figure (position in `chart.figures`) at a measure (in `chart.measures`), for readings that a chart lacks. */
export type Expectations = (figure: number, column: number) => ExpectedValue | undefined;

/** One model for all readings that a chart lacks, see `expectedValue`. */
export function expectations(chart: Chart): Expectations {
  return expectationsOf(logReadings(chart), usualLogs(chart));
}

/**
 * The reading that would be in proportion for a figure, with an interval: from `chartModel`. The reading itself, if there is
 * one, takes no part. How wide the interval is, is measured on other readings of the chart, taken out in the same way (cross-validation).
 *
 * @param figure position in `chart.figures`
 * @param column position in `chart.measures`
 * @param lacking gives the model for readings that the chart lacks; whoever asks for many keeps it
 * @returns `undefined` when the chart, the figure or the measure has too few readings
 */
export function expectedValue(
  chart: Chart,
  figure: number,
  column: number,
  lacking: (chart: Chart) => Expectations = expectations,
): ExpectedValue | undefined {
  const inChart = logReadings(chart);
  if (Number.isNaN(inChart[figure]![column])) return lacking(chart)(figure, column);
  inChart[figure]![column] = Number.NaN;
  return expectationsOf(inChart, usualLogs(chart))(figure, column);
}

function expectationsOf(inChart: readonly (readonly number[])[], start: readonly number[]): Expectations {
  const order = orderByReadings(inChart);
  const logs = order.map((i) => inChart[i]!);
  const fit = proportions(logs, start);
  if (!fit) return () => undefined;
  const model = chartModel(fit);
  let tried: Tried | undefined;
  return (figure, column) => {
    const row = order.indexOf(figure);
    const expected = model.expected(row, column);
    if (Number.isNaN(expected)) return undefined;
    const spread = model.spread(row, column);
    tried ??= tryOut(logs, start, fit);
    const reach = Math.max(normal95 * spread, Math.min(tried.spreads95 * spread, tried.farthest));
    return { mm: Math.exp(expected), lowMm: Math.exp(expected - reach), highMm: Math.exp(expected + reach) };
  };
}

/** How far readings that were taken out lie from what was then expected. */
interface Tried {
  /** So many spreads reach nineteen in twenty of them. */
  readonly spreads95: number;
  /** The farthest, in ln: nobody is believed to lie farther. */
  readonly farthest: number;
}

function tryOut(logs: readonly (readonly number[])[], start: readonly number[], fit: Proportions): Tried {
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
  return { spreads95: strays[Math.floor(0.95 * strays.length)] ?? normal95, farthest };
}
