import { errorFunction } from "simple-statistics";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { apart } from "./apart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { isWithin } from "./within.ts";

/** How sure it is that two figures are within tolerance at every measure, given that readings are not exact. */
export interface Certainty {
  /** From 0 to 1; NaN when the distance of the two is not known. */
  readonly probability: number;
  /** The measure that leaves most doubt: the one least likely to be within its tolerance. Absent when all are sure. */
  readonly doubt?: ComparedColumn;
}

/**
 * Standard uncertainty of one reading of a measure, in mm.
 *
 * @param column the measure
 * @param mm the reading
 */
export type Uncertainty = (column: ComparedColumn, mm: number) => number;

/**
 * The error of a careful tape reading of a small figure: 0.5 mm, or 0.25 % where that is more. The project’s own starting
 * value.
 */
export function usualErrorMm(mm: number): number {
  return Math.max(0.5, 0.0025 * mm);
}

/** The usual error of a reading, whatever the measure. */
export const usualUncertainty: Uncertainty = (_, mm) => usualErrorMm(mm);

/**
 * Uncertainties from repeated readings where there are any, the usual ones elsewhere.
 *
 * @param technicalErrorMm by the key of the column: the technical error of measurement, which is the standard deviation
 *   of one reading
 */
export function repeatedUncertainty(technicalErrorMm: ReadonlyMap<string, number>): Uncertainty {
  return (compared, mm) => technicalErrorMm.get(compared.column.key) ?? usualUncertainty(compared, mm);
}

/**
 * P(share) = Π P(|N(δᵢ, √(uₐ² + u_b²))| ≤ tolᵢ): the probability that all true differences are within tolerance, when the
 * differences read are δᵢ and readings are off independently and normally. Measures that either figure lacks are left out,
 * as for the distance.
 *
 * Source of the combined uncertainty: JCGM 100:2008 (GUM), 5.1.2. The error function is that of simple-statistics, exact
 * to about 0.0000001.
 *
 * @param columns see `comparedColumns`
 * @param i where one figure stands in the chart, from 0
 * @param j where the other stands
 */
export function certainty(
  columns: readonly ComparedColumn[],
  i: number,
  j: number,
  uncertainty: Uncertainty = usualUncertainty,
): Certainty {
  if (Number.isNaN(apart(columns, i, j).distance)) return { probability: Number.NaN };
  let probability = 1;
  let least = 1;
  let doubt: ComparedColumn | undefined;
  for (const compared of columns) {
    const a = compared.column.mm[i] ?? Number.NaN;
    const b = compared.column.mm[j] ?? Number.NaN;
    if (Number.isNaN(a - b)) continue;
    // A figure is certainly like itself, however it was read.
    const spread = i === j ? 0 : Math.hypot(uncertainty(compared, a), uncertainty(compared, b));
    const within = withinProbability(b - a, spread, toleranceMm(compared.tolerance, a, b));
    probability *= within;
    if (within < least) {
      least = within;
      doubt = compared;
    }
  }
  return { probability, ...(doubt && { doubt }) };
}

/**
 * P(|X| ≤ tolerance) for X normal.
 *
 * @param mean of X
 * @param spread standard deviation of X; 0 makes it certain
 */
export function withinProbability(mean: number, spread: number, tolerance: number): number {
  if (spread === 0) return isWithin(Math.abs(mean), tolerance) ? 1 : 0;
  const scale = spread * Math.SQRT2;
  const upper = errorFunction((tolerance - mean) / scale);
  const lower = errorFunction((tolerance + mean) / scale);
  return Math.min(1, Math.max(0, (upper + lower) / 2));
}
