import { errorFunction } from "simple-statistics";
import type { Tolerance } from "../measures/measure.ts";
import type { Uncertainty } from "./certainty.ts";
import { usualUncertainty } from "./certainty.ts";
import type { ComparedColumn } from "./comparedColumns.ts";

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
