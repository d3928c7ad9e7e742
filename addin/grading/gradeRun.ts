import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import type { PrintScale } from "./printScale.ts";
import { printScale } from "./printScale.ts";
import type { Step } from "./steps.ts";
import { steps } from "./steps.ts";

/** One step of a run of figures or sizes, with what it is. */
export interface RunStep extends Step {
  readonly scale: PrintScale;
  /**
   * `"grade"` where one size follows from the other; `"draft anew"` where the two have another shape: what the best print
   * scale leaves is beyond tolerance, even with girths and lengths scaled apart; `"not known"` where too little is measured to say.
   */
  readonly advice: "grade" | "draft anew" | "not known";
}

/** Smallest and largest step of one measure in a run. */
export interface UnevenMeasure {
  readonly column: MeasureColumn;
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The steps of a run of figures, in the order of the chart, and whether each is a grade at all.
 *
 * @param columns the measures that count
 * @param tolerances the user’s tolerances; the dictionary’s own where a measure is not in them
 */
export function gradeRun(
  chart: Chart,
  columns: readonly MeasureColumn[],
  tolerances?: ToleranceTable,
): readonly RunStep[] {
  return steps(chart, columns).map((step, i) => {
    const scale = printScale(i, i + 1, columns, tolerances);
    return { ...step, scale, advice: adviceOf(scale) };
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

function adviceOf({ verdict }: PrintScale): RunStep["advice"] {
  return verdict === "one scale" || verdict === "two scales" ? "grade" : verdict;
}
