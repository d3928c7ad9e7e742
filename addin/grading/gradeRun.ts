import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import type { PrintScale } from "./printScale.ts";
import { printScale } from "./printScale.ts";
import type { Step } from "./steps.ts";
import { neighbours, steps } from "./steps.ts";

/** One step of a run of figures or sizes, with what a print can do for it. */
export interface RunStep extends Step {
  readonly scale: PrintScale;
}

/** Smallest and largest step of one measure in a run. */
export interface UnevenMeasure {
  readonly column: MeasureColumn;
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The steps of a run of figures, and whether a print will do for each.
 *
 * @param columns the measures that count
 * @param tolerances the user’s tolerances; the dictionary’s own where a measure is not in them
 * @param rows the figures of the run, as rows of `chart.figures` in the order wanted; all of them when left out
 */
export function gradeRun(
  chart: Chart,
  columns: readonly MeasureColumn[],
  tolerances?: ToleranceTable,
  rows: readonly number[] = [...chart.figures.keys()],
): readonly RunStep[] {
  const scales = neighbours(rows).map(([from, to]) => printScale(from, to, columns, tolerances));
  return steps(chart, columns, rows).flatMap((step, i) => {
    const scale = scales[i];
    return scale ? [{ ...step, scale }] : [];
  });
}

/**
 * The measures whose steps differ within a run, as where a size chart changes from 1 in to 1 1/2 in. Missing steps are left
 * out; figures of another shape belong in another run.
 */
export function unevenMeasures(
  run: readonly Step[],
  columns: readonly MeasureColumn[],
): readonly UnevenMeasure[] {
  return columns.flatMap((column, c) => {
    const known = run.map(({ deltasMm }) => deltasMm[c] ?? Number.NaN).filter((mm) => !Number.isNaN(mm));
    const leastMm = Math.min(...known);
    const mostMm = Math.max(...known);
    // Readings in inches arrive with binary dust.
    return mostMm - leastMm > 1e-6 ? [{ column, leastMm, mostMm }] : [];
  });
}
