import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { gradeRun, unevenMeasures } from "../../addin/grading/gradeRun.ts";
import type { ScaleVerdict } from "../../addin/grading/printScale.ts";
import { printScale } from "../../addin/grading/printScale.ts";
import { verdictWords } from "../../addin/grading/printWords.ts";
import { runOrder } from "../../addin/grading/runOrder.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";

/** What a print can do from one figure to another. */
export interface Reach {
  /** “Ardwen to Isolmay” */
  readonly way: string;
  readonly verdict: ScaleVerdict;
}

/** A run of figures from one base, in words. */
export interface RunView {
  /** From the base to each target, in the order in which they were named. */
  readonly fromBase: readonly (Reach & {
    /** The verdict in sentences. */
    readonly says: string;
  })[];
  /** From each figure to the next larger one. */
  readonly steps: readonly Reach[];
  /** One row a measure: its steps and whether they are even. */
  readonly rows: readonly {
    readonly measure: string;
    readonly steps: readonly string[];
    readonly isUneven: boolean;
  }[];
}

/** The steps of a run of figures, from the smallest to the largest, with those that are uneven or another shape. */
export function runView(
  chart: Chart,
  run: { readonly base: number; readonly targets: readonly number[] },
  columns: readonly MeasureColumn[],
  tolerances: ToleranceTable | undefined,
): RunView {
  const { base, targets } = run;
  const name = (row: number) => chart.figures[row] ?? "";
  const order = runOrder(base, targets, columns);
  const steps = gradeRun(chart, columns, tolerances, order);
  const uneven = new Set(unevenMeasures(steps, columns).map(({ column }) => column));
  return {
    fromBase: targets.map((target) => {
      const scale = printScale(base, target, columns, tolerances);
      return {
        way: `${name(base)} to ${name(target)}`,
        verdict: scale.verdict,
        says: verdictWords(scale),
      };
    }),
    steps: steps.map(({ from, to, scale }) => ({ way: `${from} to ${to}`, verdict: scale.verdict })),
    rows: columns.map((column, c) => ({
      measure: column.heading,
      steps: steps.map(({ deltasMm }) => signedWords(deltasMm[c] ?? Number.NaN, column)),
      isUneven: uneven.has(column),
    })),
  };
}

/** “+12.5 mm”, “−3 mm”, “0 mm” */
function signedWords(mm: number, { unit }: MeasureColumn): string {
  const words = lengthWords(mm, unit);
  return mm > 0 && words !== lengthWords(0, unit) ? `+${words}` : words;
}
