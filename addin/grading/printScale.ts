import type { MeasureColumn } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import { toleranceOf } from "../chart/tolerances.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { bestScale } from "./bestScale.ts";
import { isPrintable } from "./printSetting.ts";

/** One measure of a pattern that is printed at another scale. Lengths in mm; NaN where a reading is missing. */
export interface ScaledMeasure {
  readonly column: MeasureColumn;
  readonly baseMm: number;
  readonly targetMm: number;
  /** target / base, the scale that this measure alone would ask for */
  readonly factor: number;
  /** What the base becomes at the one scale. */
  readonly printedMm: number;
  /** target − printed: what one scale leaves to add, or below 0 to take away. */
  readonly residualMm: number;
  /** |residual| / tolerance; NaN where either is missing. */
  readonly ofTolerance: number;
}

/** What resizing says about a pair of figures. */
export type ScaleVerdict = "one scale" | "two scales" | "draft anew" | "not known";

export interface PrintScale {
  /** The best single scale; NaN when no measure is known of both figures. */
  readonly factor: number;
  /** The best scale of girths and widths alone, and of lengths and heights alone; NaN where there are none. */
  readonly acrossFactor: number;
  readonly alongFactor: number;
  readonly measures: readonly ScaledMeasure[];
  /** The same with girths and widths at the one and lengths at the other of the two scales. */
  readonly apart: readonly ScaledMeasure[];
  /** The measure that is furthest out of tolerance after printing at the one scale. */
  readonly worst: ScaledMeasure | undefined;
  /**
   * `"one scale"` when every measure comes within tolerance at `factor`; `"two scales"` when it does with girths and
   * lengths printed apart; `"draft anew"` when neither does, or the scale is outside 50–200 %.
   */
  readonly verdict: ScaleVerdict;
}

/**
 * The print scale that takes a pattern for one figure closest to another, and what it leaves.
 *
 * @param base row of the figure that the pattern was drafted for, in the chart
 * @param target row of the other figure
 * @param columns the measures that count
 * @param tolerances the user’s tolerances; the dictionary’s own where a measure is not in them
 */
export function printScale(
  base: number,
  target: number,
  columns: readonly MeasureColumn[],
  tolerances?: ToleranceTable,
): PrintScale {
  const pairs = columns.map((column) => ({
    column,
    baseMm: column.mm[base] ?? Number.NaN,
    targetMm: column.mm[target] ?? Number.NaN,
  }));
  const factor = scaleOf(pairs);
  const across = pairs.filter(({ column }) => isAcross(column));
  const along = pairs.filter(({ column }) => !isAcross(column));
  const measures = pairs.map((pair) => scaled(pair, factor, tolerances));
  const worst = worstOf(measures);
  const acrossFactor = scaleOf(across);
  const alongFactor = scaleOf(along);
  const apart = [
    ...across.map((pair) => scaled(pair, acrossFactor, tolerances)),
    ...along.map((pair) => scaled(pair, alongFactor, tolerances)),
  ];
  const verdict = verdictOf(
    { factor, worst },
    { factors: [acrossFactor, alongFactor], worst: worstOf(apart) },
  );
  return { factor, acrossFactor, alongFactor, measures, apart, worst, verdict };
}

/** True for what runs across a pattern: girths and widths. A measure that nobody knows counts as a length. */
export function isAcross({ kind }: MeasureColumn): boolean {
  return kind === "girth" || kind === "width";
}

interface Pair {
  readonly column: MeasureColumn;
  readonly baseMm: number;
  readonly targetMm: number;
}

function scaleOf(pairs: readonly Pair[]): number {
  return bestScale(
    pairs.map(({ baseMm }) => baseMm),
    pairs.map(({ targetMm }) => targetMm),
  );
}

function scaled(pair: Pair, factor: number, tolerances: ToleranceTable | undefined): ScaledMeasure {
  const { column, baseMm, targetMm } = pair;
  const printedMm = baseMm * factor;
  const residualMm = withoutDust(targetMm - printedMm, targetMm);
  const tolerance = toleranceOf(column, tolerances);
  return {
    ...{ column, baseMm, targetMm, printedMm, residualMm },
    factor: targetMm / baseMm,
    ofTolerance: tolerance ? Math.abs(residualMm) / toleranceMm(tolerance, printedMm, targetMm) : Number.NaN,
  };
}

/** A scaled copy leaves nothing, though exp and ln round in the last digits. */
function withoutDust(residualMm: number, ofMm: number): number {
  return Math.abs(residualMm) < 1e-12 * ofMm ? 0 : residualMm;
}

function worstOf(measures: readonly ScaledMeasure[]): ScaledMeasure | undefined {
  return measures.reduce<ScaledMeasure | undefined>(
    (worst, each) => (each.ofTolerance > (worst?.ofTolerance ?? -1) ? each : worst),
    undefined,
  );
}

function verdictOf(
  one: { readonly factor: number; readonly worst: ScaledMeasure | undefined },
  apart: { readonly factors: readonly number[]; readonly worst: ScaledMeasure | undefined },
): ScaleVerdict {
  if (!one.worst || !apart.worst) return "not known";
  if (!isPrintable(one.factor)) return "draft anew";
  if (isWithin(one.worst)) return "one scale";
  return isWithin(apart.worst) && apart.factors.every(isPrintable) ? "two scales" : "draft anew";
}

function isWithin({ ofTolerance }: ScaledMeasure): boolean {
  return ofTolerance <= 1 + 1e-9;
}
