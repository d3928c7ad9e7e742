import type { MeasureColumn } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import { toleranceOf } from "../chart/tolerances.ts";
import { isSewable } from "../measures/sewable.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { bestScale } from "./bestScale.ts";
import type { Aim } from "./mostInside.ts";
import { mostInside, scalesWithin } from "./mostInside.ts";
import { isPrintable, printPercent } from "./printSetting.ts";

/** One measure of a pattern that is printed at another scale. Lengths in mm; NaN where a reading is missing. */
export interface ScaledMeasure {
  readonly column: MeasureColumn;
  readonly baseMm: number;
  readonly targetMm: number;
  /** target / base, the scale that this measure alone would ask for */
  readonly factor: number;
  /** What the base becomes. */
  readonly printedMm: number;
  /** target − printed: what the print leaves to add, or below 0 to take away. */
  readonly residualMm: number;
  /** |residual| / tolerance; NaN where either is missing. */
  readonly ofTolerance: number;
}

/** What can be done to take a pattern from one figure to another by printing it larger or smaller. */
export type ScaleVerdict =
  /** Every measure comes within tolerance at one scale. */
  | "one scale"
  /** It does with girths and widths at one scale, lengths and heights at another. */
  | "two scales"
  /** Most measures do; the others can be let out or taken in by hand. */
  | "print and alter"
  | "draft anew"
  | "not known";

/** A scale, and the setting of the printer for it. */
export interface PrintSetting {
  /** NaN where no such measure is known of both figures. */
  readonly factor: number;
  /** See `printPercent`. */
  readonly percent: number;
}

/** A print of a pattern: at one scale, or at one for its width and one for its height. */
export interface Print {
  /** Of what runs across, and of what runs along: the same for one scale. */
  readonly across: PrintSetting;
  readonly along: PrintSetting;
  /** As they come out of the printer, at the percent that is set. */
  readonly measures: readonly ScaledMeasure[];
  /** The measures beyond tolerance, worst first. */
  readonly out: readonly ScaledMeasure[];
  /** The measure that is furthest off in tolerances; absent where none can be judged. */
  readonly worst: ScaledMeasure | undefined;
}

export interface PrintScale {
  readonly verdict: ScaleVerdict;
  /** The scale that keeps most measures within tolerance; NaN when no measure is known of both figures. */
  readonly factor: number;
  readonly one: Print;
  readonly two: Print;
  /** The one of the two that the verdict is about. */
  readonly best: Print;
  /** True where that is the print at two scales. */
  readonly isApart: boolean;
}

/**
 * The print scale that takes a pattern for one figure closest to another, what it leaves, and what that means: the one verdict
 * that functions and pane give. See `mostInside` for what is closest.
 *
 * Altering is left to the hand where at most as many measures are out as are within tolerance, and each by no more than can be
 * sewn (`isSewable`). The project’s own starting values.
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
  const pairs = columns.map((column): Pair => {
    const baseMm = column.mm[base] ?? Number.NaN;
    const targetMm = column.mm[target] ?? Number.NaN;
    const tolerance = toleranceOf(column, tolerances);
    const isKnown = baseMm > 0 && targetMm > 0 && tolerance !== undefined;
    return { column, baseMm, targetMm, aim: isKnown ? { baseMm, targetMm, tolerance } : undefined };
  });
  const whole = settingOf(pairs);
  const one = print(pairs, whole, whole);
  const two = print(
    pairs,
    settingOf(pairs.filter(({ column }) => isAcross(column))),
    settingOf(pairs.filter(({ column }) => !isAcross(column))),
  );
  const isApart = two.out.length < one.out.length && isWorthPrinting(two);
  const best = isApart ? two : one;
  return { verdict: verdictOf(best, isApart), factor: whole.factor, one, two, best, isApart };
}

/** True for what runs across a pattern: girths and widths. A measure that nobody knows counts as a length. */
export function isAcross({ kind }: MeasureColumn): boolean {
  return kind === "girth" || kind === "width";
}

/** True when a measure was printed within its tolerance. */
export function isInside({ ofTolerance }: ScaledMeasure): boolean {
  return ofTolerance <= 1 + 1e-9;
}

interface Pair {
  readonly column: MeasureColumn;
  readonly baseMm: number;
  readonly targetMm: number;
  /** Absent where a reading or the tolerance is missing. */
  readonly aim: Aim | undefined;
}

/** Without a tolerance there is nothing to keep to, but a mean all the same. */
function settingOf(pairs: readonly Pair[]): PrintSetting {
  const aims = pairs.flatMap(({ aim }) => aim ?? []);
  const factor =
    aims.length > 0
      ? mostInside(aims)
      : bestScale(
          pairs.map(({ baseMm }) => baseMm),
          pairs.map(({ targetMm }) => targetMm),
        );
  return {
    factor,
    percent: printPercent(
      factor,
      aims.map((aim) => scalesWithin(aim)),
    ),
  };
}

function print(pairs: readonly Pair[], across: PrintSetting, along: PrintSetting): Print {
  const measures = pairs.map((pair) => scaled(pair, isAcross(pair.column) ? across : along));
  const judged = measures
    .filter(({ ofTolerance }) => !Number.isNaN(ofTolerance))
    .sort((a, b) => b.ofTolerance - a.ofTolerance);
  return {
    ...{ across, along, measures },
    out: judged.filter((measure) => !isInside(measure)),
    worst: judged[0],
  };
}

function scaled({ column, baseMm, targetMm, aim }: Pair, { percent }: PrintSetting): ScaledMeasure {
  const printedMm = (baseMm * percent) / 100;
  const residualMm = withoutDust(targetMm - printedMm, targetMm);
  return {
    ...{ column, baseMm, targetMm, printedMm, residualMm },
    factor: targetMm / baseMm,
    ofTolerance: aim ? Math.abs(residualMm) / toleranceMm(aim.tolerance, printedMm, targetMm) : Number.NaN,
  };
}

/** A copy scaled by whole percents leaves nothing, though readings in inches round in the last digits. */
function withoutDust(residualMm: number, ofMm: number): number {
  return Math.abs(residualMm) < 1e-12 * ofMm ? 0 : residualMm;
}

function isWorthPrinting({ across, along }: Print): boolean {
  return [across.factor, along.factor].every((factor) => Number.isNaN(factor) || isPrintable(factor));
}

function verdictOf(best: Print, isApart: boolean): ScaleVerdict {
  if (!best.worst) return "not known";
  if (!isWorthPrinting(best)) return "draft anew";
  if (best.out.length === 0) return isApart ? "two scales" : "one scale";
  const within = best.measures.filter(isInside).length;
  const isAlterable =
    best.out.length <= within && best.out.every((each) => isSewable(each.residualMm, each.printedMm));
  return isAlterable ? "print and alter" : "draft anew";
}
