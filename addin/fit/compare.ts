import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import { toleranceOf } from "../chart/tolerances.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { delta, percentOfBase } from "./delta.ts";

/** One measure of two figures. Lengths in mm; NaN where a reading or the tolerance is missing. */
export interface Comparison {
  readonly column: MeasureColumn;
  readonly baseMm: number;
  readonly targetMm: number;
  readonly deltaMm: number;
  /** Delta in percent of the base. */
  readonly percent: number;
  /** |delta| / tolerance; at most 1 is within tolerance. */
  readonly ofTolerance: number;
}

/**
 * Two figures of a chart, measure by measure, in the order of the chart.
 *
 * @param base row of the base figure in `chart.figures`
 * @param target row of the other figure
 * @param tolerances the user’s tolerances; the dictionary’s own where a measure is not in them
 */
export function compare(
  chart: Chart,
  base: number,
  target: number,
  tolerances?: ToleranceTable,
): readonly Comparison[] {
  return chart.measures.map((column) => {
    const baseMm = column.mm[base] ?? Number.NaN;
    const targetMm = column.mm[target] ?? Number.NaN;
    const deltaMm = delta(baseMm, targetMm);
    const tolerance = toleranceOf(column, tolerances);
    return {
      column,
      baseMm,
      targetMm,
      deltaMm,
      percent: percentOfBase(baseMm, targetMm),
      ofTolerance: tolerance ? shareOf(toleranceMm(tolerance, baseMm, targetMm), deltaMm) : Number.NaN,
    };
  });
}

/** No difference is within any tolerance, even one of 0. */
function shareOf(allowedMm: number, deltaMm: number): number {
  return deltaMm === 0 ? 0 : Math.abs(deltaMm) / allowedMm;
}
