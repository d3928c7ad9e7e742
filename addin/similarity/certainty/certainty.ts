import { errorFunction } from "simple-statistics";
import type { Tolerance } from "../../measures/measure.ts";
import { toleranceMm } from "../../measures/toleranceMm.ts";
import type { ComparedColumn } from "../columns.ts";
import { apart, isWithin } from "../pair.ts";
import type { Seen, Sharing } from "./sharing.ts";
import { anyBody, keptOf, mostSquare, onAverageOne, posteriorOf, seenOfPair, spreadsOf } from "./sharing.ts";
import type { Uncertainty } from "./uncertainty.ts";
import { usualUncertainty } from "./uncertainty.ts";

/** How sure it is that two figures are within tolerance at every measure, given that readings are not exact. */
export interface Certainty {
  /** From 0 to 1; NaN when the distance of the two is not known. */
  readonly probability: number;
  /** The measure that leaves most doubt: the one least likely to be within its tolerance. Absent when all are sure. */
  readonly doubt?: ComparedColumn;
}

/**
 * How probable it is that two figures share a body: that all true differences are within tolerance. Where it is the same body
 * they are nothing; where it is another one, with differences of the variance s in reading errors (see `spreadsOf`), that which was read
 * as δᵢ is normal about b·δᵢ with the variance b·(uₐ² + u_b²), where b = s / (1 + s). Measures are independent given what
 * happened, and readings are off independently and normally. Measures that either figure lacks are left out, as for the
 * distance.
 *
 *     P(share) = P(same body) + Σ P(another body at a spread) · Π P(|N(b·δᵢ, b·(uₐ² + u_b²))| ≤ tolᵢ)
 *
 * Source of the combined uncertainty: JCGM 100:2008 (GUM), 5.1.2; of the shrunken difference: the normal curve as its own
 * conjugate, A. Gelman and others, Bayesian Data Analysis (3rd ed. 2013), 2.5. The error function is that of
 * simple-statistics, exact to about 0.0000001.
 *
 * @param columns see `comparedColumns`
 * @param i where one figure stands in the chart, from 0
 * @param j where the other stands
 * @param sharing how the pairs of the chart come about, see `sharingOf`; nothing is known of that when left out
 */
export function certainty(
  columns: readonly ComparedColumn[],
  i: number,
  j: number,
  uncertainty: Uncertainty = usualUncertainty,
  sharing: Sharing = anyBody,
): Certainty {
  if (Number.isNaN(apart(columns, i, j).distance)) return { probability: Number.NaN };
  // A figure is certainly like itself, however it was read.
  if (i === j) return { probability: 1 };
  const known = columns.filter(({ column }) => !Number.isNaN(column.mm[i]! - column.mm[j]!));
  const { probability, ofMeasures } = overParts(
    sharing,
    seenOfPair(columns, i, j, uncertainty),
    (c, kept) => {
      const compared = known[c]!;
      const [a, b] = [compared.column.mm[i]!, compared.column.mm[j]!];
      const spread = Math.hypot(uncertainty(compared, a, i), uncertainty(compared, b, j));
      return withinProbability(
        kept * (b - a),
        Math.sqrt(kept) * spread,
        toleranceMm(compared.tolerance, a, b),
      );
    },
  );
  const least = ofMeasures.reduce((a, b) => Math.min(a, b), 1);
  const doubt = least < 1 ? known[ofMeasures.indexOf(least)] : undefined;
  return { probability, ...(doubt && { doubt }) };
}

/** Parts of a mixture that are less probable than this are passed over. */
const leastWeight = 1e-7;

/**
 * The probability that all measures are within tolerance, over all that may have happened; and that of each by itself.
 *
 * @param within the probability that one measure is, when so much of its differences is kept, see `keptOf`
 */
function overParts(
  sharing: Sharing,
  seen: Seen,
  within: (measure: number, kept: number) => number,
): { readonly probability: number; readonly ofMeasures: readonly number[] } {
  const { weights, isOther } = posteriorOf(sharing, seen);
  let probability = 0;
  const ofMeasures = seen.squares.map(() => 0);
  sharing.forEach((each, part) => {
    const weight = weights[part]!;
    if (weight < leastWeight) return;
    const others = ofMeasures.map((_, c) => isOther(part, c));
    // One measure at least is another where some are: that none is has been the same body.
    const none =
      each.kind === "another in some measures"
        ? others.reduce((product, other) => product * (1 - other), 1)
        : 0;
    if (none >= 1) return;
    const { most, few } = spreadsOf(each);
    let all = 1;
    others.forEach((other, c) => {
      const beyondAt = (spread: number) =>
        spread === 0 ? 0 : 1 - within(c, keptOf(spread, seen.shares[c]!));
      const beyond = (1 - other) * beyondAt(most) + (other === 0 ? 0 : other * beyondAt(few));
      all *= 1 - beyond;
      ofMeasures[c]! += weight * (1 - beyond / (1 - none));
    });
    probability += (weight * (all - none)) / (1 - none);
  });
  return { probability: Math.min(1, probability), ofMeasures };
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
 * (1942), for readings of their own mean each). What may have happened is weighed as for two figures, see `certainty`, by the
 * squares about the mean of the group; the group is never surer than its least sure pair, of those that stand farthest apart
 * in some measure.
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
  sharing: Sharing = anyBody,
): number {
  const measures = columns.flatMap((compared) => {
    const places = members.filter((item) => !Number.isNaN(compared.column.mm[item] ?? Number.NaN));
    if (places.length < 2) return [];
    const readings = places.map((item) => compared.column.mm[item]!);
    return [
      {
        compared,
        places,
        ...aboutTheMean(
          readings,
          readings.map((mm, at) => uncertainty(compared, mm, places[at]!)),
        ),
      },
    ];
  });
  if (measures.length === 0) return 1;
  const seen = {
    squares: measures.map(({ square }) => square),
    free: measures.map(({ places }) => places.length - 1),
    shares: onAverageOne(measures.map(({ share }) => share)),
  };
  const { probability } = overParts(sharing, seen, (c, kept) => {
    const { compared, mean, readings, spreads } = measures[c]!;
    return rangeProbability(
      readings.map((mm) => mean + kept * (mm - mean)),
      spreads.map((spread) => Math.sqrt(kept) * spread),
      compared.tolerance,
    );
  });
  if (members.length === 2) return probability;
  const pairs = measures.map(({ places, readings }) => {
    const [low, high] = [Math.min(...readings), Math.max(...readings)];
    return certainty(
      columns,
      places[readings.indexOf(low)]!,
      places[readings.indexOf(high)]!,
      uncertainty,
      sharing,
    ).probability;
  });
  return Math.min(probability, ...pairs.filter((each) => !Number.isNaN(each)));
}

/** The mean of some readings by their uncertainty, and Σ z² about it. */
function aboutTheMean(readings: readonly number[], spreads: readonly number[]) {
  const isExact = spreads.some((spread) => spread === 0);
  const weights = spreads.map((spread) => (isExact ? Number(spread === 0) : 1 / spread ** 2));
  const sum = weights.reduce((a, b) => a + b, 0);
  const mean = readings.reduce((total, mm, i) => total + weights[i]! * mm, 0) / sum;
  const square = readings.reduce(
    (total, mm, i) => total + (mm === mean ? 0 : ((mm - mean) / spreads[i]!) ** 2),
    0,
  );
  // Of two figures what `seenOfPair` has: the sum of both over the variance of their difference.
  const variance = spreads.reduce((total, spread) => total + spread ** 2, 0) / spreads.length;
  return {
    ...{ readings, spreads, mean, square: Math.min(square, mostSquare) },
    share: Math.min(
      mostSquare,
      (2 * readings.reduce((a, b) => a + b, 0) ** 2) / (readings.length ** 2 * variance),
    ),
  };
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
