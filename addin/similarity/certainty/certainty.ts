import { errorFunction } from "simple-statistics";
import type { Tolerance } from "../../measures/measure.ts";
import { toleranceMm } from "../../measures/toleranceMm.ts";
import type { ComparedColumn } from "../columns.ts";
import { apart, isWithin } from "../pair.ts";

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

/** So many standard uncertainties away a body certainly is not. */
const farthest = 8;
/** Steps of a third of an uncertainty make the sum below exact to far more digits than the error function has. */
const stepsPerUncertainty = 3;
/** A reading that is exact beside others that are not is taken to be uncertain by this share of the most uncertain one. */
const leastShare = 0.02;

/**
 * The probability that every two of a group of figures share a body: that in every measure the largest of the true
 * values is within tolerance of the smallest, when readings are off independently and normally.
 *
 * The pairs of a group are not independent of each other, since they share readings, so that their probabilities must not be
 * multiplied. For one measure this is the distribution of a range, P = ∫ Σᵢ fᵢ(x) Π(j≠i) [Fⱼ(y(x)) − Fⱼ(x)] dx, with y(x)
 * the largest value that is within tolerance of x (H. O. Hartley, The range in random samples, Biometrika 32
 * (1942), for readings of their own mean each). Measures are independent, as for two figures, see `certainty`.
 *
 * Figures that lack a measure are left out there. Time grows with measures × members.
 *
 * @param columns see `comparedColumns`
 * @param members where each stands in the columns, from 0
 * @returns from 0 to 1; 1 for a figure by itself
 */
export function groupCertainty(
  columns: readonly ComparedColumn[],
  members: readonly number[],
  uncertainty: Uncertainty = usualUncertainty,
): number {
  let probability = 1;
  for (const compared of columns) {
    const readings = members
      .map((item) => compared.column.mm[item] ?? Number.NaN)
      .filter((mm) => !Number.isNaN(mm));
    const spreads = readings.map((mm) => uncertainty(compared, mm));
    if (readings.length > 1) probability *= rangeProbability(readings, spreads, compared.tolerance);
    if (probability === 0) break;
  }
  return probability;
}

/**
 * The probability that all of some normal values are within tolerance of each other.
 *
 * @param means at least two, in mm
 * @param spreads their standard deviations
 */
export function rangeProbability(
  means: readonly number[],
  spreads: readonly number[],
  tolerance: Tolerance,
): number {
  const most = Math.max(...spreads);
  if (most === 0) return Math.max(...means) <= highestWithin(Math.min(...means), tolerance) ? 1 : 0;
  const u = spreads.map((spread) => Math.max(spread, leastShare * most));
  const from = Math.min(...means.map((mean, i) => mean - farthest * u[i]!));
  const to = Math.min(...means.map((mean, i) => mean + farthest * u[i]!));
  const step = Math.min(...u) / stepsPerUncertainty;
  const inside = new Float64Array(means.length);
  let sum = 0;
  for (let x = from; x <= to; x += step) {
    const y = highestWithin(x, tolerance);
    for (let j = 0; j < means.length; j++) {
      inside[j] = Math.max(0, below((y - means[j]!) / u[j]!) - below((x - means[j]!) / u[j]!));
    }
    sum += densityOfLowest(x, means, u, inside);
  }
  return Math.min(1, sum * step);
}

/** Σᵢ fᵢ(x) Π(j≠i) inside(j), built up value by value: one is x, all others lie within. */
function densityOfLowest(
  x: number,
  means: readonly number[],
  u: readonly number[],
  inside: Float64Array,
): number {
  let sum = 0;
  let left = 1;
  for (let i = 0; i < means.length; i++) {
    const z = (x - means[i]!) / u[i]!;
    const density = Math.exp(-0.5 * z * z) / (u[i]! * Math.sqrt(2 * Math.PI));
    sum = sum * inside[i]! + left * density;
    left *= inside[i]!;
  }
  return sum;
}

/** The largest value that is within tolerance of x: x + floor, or where the percentage is more x (1 + p/2) / (1 − p/2). */
function highestWithin(x: number, { floorMm, percent }: Tolerance): number {
  const half = percent / 200;
  return Math.max(x + floorMm, (x * (1 + half)) / (1 - half));
}

/** The normal distribution function. */
function below(z: number): number {
  return (1 + errorFunction(z / Math.SQRT2)) / 2;
}
