import fc from "fast-check";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { chartOf } from "./chartOf.ts";

const headings = ["bustGirth", "waistGirth", "Tail", "Crest"];

/** Few different readings, so that distances are often equal; some missing. */
const rows = fc.array(
  fc.tuple(
    ...headings.map(() =>
      fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 100, max: 108 }) }, fc.constant(Number.NaN)),
    ),
  ),
  { minLength: 2, maxLength: 14 },
);

/** A chart and the same chart with its rows in another order. */
export const anyShuffledChart: fc.Arbitrary<{ readonly chart: Chart; readonly shuffled: Chart }> = rows.chain(
  (readings) => {
    const places = readings.map((_, i) => i);
    const inOrder = (order: readonly number[]) =>
      chartOf(
        headings,
        order.map((i) => [`Figure ${String(i)}`, readings[i]!] as const),
      );
    return fc
      .shuffledSubarray(places, { minLength: places.length })
      .map((order) => ({ chart: inOrder(places), shuffled: inOrder(order) }));
  },
);

/** Its columns, of which the first is required, with tolerances in mm and in percent. */
export function percentColumns(chart: Chart): readonly ComparedColumn[] {
  return chart.measures.map((column, c) => ({
    column,
    tolerance: c % 2 === 0 ? { floorMm: 2, percent: 0 } : { floorMm: 1, percent: 2 },
    required: c === 0,
  }));
}
