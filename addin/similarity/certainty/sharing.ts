import type { Chart } from "../../chart/chart.ts";
import type { ComparedColumn } from "../columns.ts";
import { nameOrder } from "../nameOrder.ts";
import { forEachNearPair } from "../neighbours.ts";
import { distanceBetween, isKnown, isWithin, readingsOf } from "../pair.ts";
import type { Uncertainty } from "./uncertainty.ts";

/*
 * How the pairs of a chart come about. Makers use one body for many heads, so that many pairs differ by nothing but the error of
 * reading, and the others by as much as bodies differ. What is seen of a pair is, in each measure, the difference of its
 * readings in standard deviations, z; 1 and less is nothing. Three things may have happened:
 *
 * - it is the same body: z is normal with variance 1 in every measure;
 * - it is another body throughout: z has a larger variance, the spread, in every measure, and a much larger one in one measure of
 *   ten, since bodies do not differ by as much everywhere;
 * - it is another body in some measures, as with another bust on one trunk: z has a larger variance in one measure of ten, and
 *   in one at least.
 *
 * How often each happens, at spreads of 2, 3, 5, 9 … up to a million, is learned from all pairs of the chart by expectation and
 * maximisation.
 *
 * Sources: a point at nothing and normal curves of a grid of widths, weights by expectation and maximisation with a penalty for
 * each weight: M. Stephens, False discovery rates: a new deal, Biostatistics 18 (2017), 275–294. That the chance that
 * nothing differs is calibrated when the mixture is learned from all cases: B. Efron, Microarrays, empirical Bayes and the
 * two-groups model, Statistical Science 23 (2008), 1–22.
 */

/** One way in which pairs come about. */
export interface SharingPart {
  readonly kind: "same body" | "another body" | "another in some measures";
  /**
   * Variance of the true differences in those of reading, where it is another body: the mean over the measures, each of which
   * differs in proportion to its length. 0 for the same body.
   */
  readonly spread: number;
  /** The share of pairs that come about so; all together 1. */
  readonly weight: number;
}

export type Sharing = readonly SharingPart[];

/** Where nothing is known of the bodies: any difference is as likely as any other, and no body is used twice. */
export const anyBody: Sharing = [{ kind: "another body", spread: Infinity, weight: 1 }];

/** From as much as reading errors to seven hundred times them. */
const spreads = Array.from({ length: 20 }, (_, k) => 2 ** k);

const parts: Sharing = [
  { kind: "same body", spread: 0, weight: 1 / 3 },
  ...spreads.map((spread) => ({
    ...{ kind: "another body" as const, spread, weight: 1 / (3 * spreads.length) },
  })),
  ...spreads.map((spread) => ({
    ...{ kind: "another in some measures" as const, spread, weight: 1 / (3 * spreads.length) },
  })),
];

/** The share of measures that are others where a body is another in some measures alone, or more so. The project’s own starting value. */
const someShare = 0.1;
/** In those measures another body differs so much more, as a variance: four times as far. The project’s own starting value. */
const moreSo = 16;

/**
 * Before any pair is seen each of the three is as likely, and that counts as much as so many pairs. The project’s own
 * starting value.
 */
const pairsBefore = 1;

/** What is seen of some figures: by measure that is known, Σ z² about their mean, and how many are free. */
export interface Seen {
  readonly squares: readonly number[];
  /** One less than the readings. */
  readonly free: readonly number[];
  /** How much more or less than the mean each measure differs from body to body: (length / error of reading)², together 1 on average. */
  readonly shares: readonly number[];
}

/** What probably happened, given what is seen. */
export interface Posterior {
  /** By part of the sharing; all together 1. */
  readonly weights: Float64Array;
  /**
   * By part and measure: given the part, the chance that the measure is one of the few that are others, or more so, see
   * {@link spreadsOf}; some may not have any so.
   */
  readonly isOther: (part: number, measure: number) => number;
}

/** The spreads of a part: in most measures, and in the few that are others or more so. */
export function spreadsOf({ kind, spread }: SharingPart): { readonly most: number; readonly few: number } {
  if (kind === "same body") return { most: 0, few: 0 };
  return kind === "another body" ? { most: spread, few: moreSo * spread } : { most: 0, few: spread };
}

/** Bayes’ rule over the parts of a mixture. */
export function posteriorOf(sharing: Sharing, seen: Seen): Posterior {
  const isOther = (part: number, measure: number): number => {
    const { most, few } = spreadsOf(sharing[part]!);
    if (few === most) return 0;
    const log = logLikelihood(few, seen, measure) - logLikelihood(most, seen, measure);
    return 1 / (1 + ((1 - someShare) / someShare) * Math.exp(-log));
  };
  if (sharing.length === 1) return { weights: Float64Array.of(1), isOther };
  const logs = logLikelihoods(sharing, seen);
  return { weights: normalised(logs.map((log, k) => log + Math.log(sharing[k]!.weight))), isOther };
}

/** Beside the same body: ln of N(z; 0, 1 + spread) / N(z; 0, 1) of a measure, for as many z as are free. */
function logLikelihood(spread: number, { squares, free, shares }: Seen, measure: number): number {
  const other = spread * shares[measure]!;
  return (-free[measure]! * Math.log1p(other) + squares[measure]! * (other / (1 + other))) / 2;
}

/** ln of the likelihood of each part beside that of the same body. */
function logLikelihoods(sharing: Sharing, seen: Seen): Float64Array {
  const bySpread = new Map<number, Float64Array>();
  const at = (spread: number): Float64Array => {
    let logs = bySpread.get(spread);
    if (!logs) {
      logs = new Float64Array(seen.squares.length);
      for (let c = 0; c < logs.length; c++) logs[c] = logLikelihood(spread, seen, c);
      bySpread.set(spread, logs);
    }
    return logs;
  };
  const likelihoods = new Float64Array(sharing.length);
  for (let k = 0; k < likelihoods.length; k++) {
    const part = sharing[k]!;
    const { most, few } = spreadsOf(part);
    if (few === 0) continue;
    const log = logOfMixture(at(most), at(few));
    likelihoods[k] = part.kind === "another body" ? log : logOfAny(log, seen.squares.length);
  }
  return likelihoods;
}

/** Where exp is still far from the end of a double. */
const largestLog = 300;
const largestProduct = 1e150;

/** Σ ln((1 − someShare) · most + someShare · few), with the logarithm taken of products as long as they are. */
function logOfMixture(most: Float64Array, few: Float64Array): number {
  let sum = 0;
  let product = 1;
  for (let c = 0; c < most.length; c++) {
    const beyond = few[c]! - most[c]!;
    sum += most[c]!;
    if (beyond > largestLog) {
      sum += beyond + Math.log(someShare);
      continue;
    }
    product *= 1 - someShare + someShare * Math.exp(beyond);
    if (product > largestProduct || product < 1 / largestProduct) {
      sum += Math.log(product);
      product = 1;
    }
  }
  return sum + Math.log(product);
}

/** The same given that one measure at least is another. */
function logOfAny(log: number, count: number): number {
  // Rounding must not make that none is more than the whole.
  const none = Math.min(count * Math.log1p(-someShare), log - Number.EPSILON);
  return log + Math.log1p(-Math.exp(none - log)) - Math.log1p(-((1 - someShare) ** count));
}

/** exp of each, together 1. */
function normalised(logs: Float64Array): Float64Array {
  let most = -Infinity;
  for (const log of logs) most = Math.max(most, log);
  const shares = new Float64Array(logs.length);
  let sum = 0;
  for (let k = 0; k < logs.length; k++) sum += shares[k] = Math.exp(logs[k]! - most);
  for (let k = 0; k < logs.length; k++) shares[k]! /= sum;
  return shares;
}

/** So many pairs of each kind, near and far, tell how a chart’s bodies are shared; more tell no more. */
const mostPairs = 4000;
/** Pairs that are farther apart in some measure than so many standard deviations are far. */
const nearErrors = 8;
const mostRounds = 300;
/** Weights that change by less have settled. */
const settled = 1e-6;

/**
 * How the pairs of a chart come about, learned from all of them, or in a large chart from as many as tell: then near pairs,
 * among which those that share are, and far ones are sampled apart and weighed by how many they stand for.
 *
 * The same whatever the order of rows, except where figures have the same name. Pairs of which too little is known take no
 * part.
 *
 * @param columns see `comparedColumns`
 * @param uncertainty standard deviation of a reading
 */
export function sharingOf(
  chart: Pick<Chart, "figures">,
  columns: readonly ComparedColumn[],
  uncertainty: Uncertainty,
): Sharing {
  const { order, columns: named } = nameOrder(chart, columns);
  const ofNamed: Uncertainty = (compared, mm, at = -1) => uncertainty(compared, mm, order[at]);
  const likelihoods: Float64Array[] = [];
  const counts: number[] = [];
  for (const { places, each } of sampledPairs(chart.figures.length, named, ofNamed)) {
    for (const [i, j] of places) {
      const seen = seenOfPair(named, i, j, ofNamed);
      if (!isKnown(seen.squares.length, named.length, lacksRequired(named, i, j))) continue;
      likelihoods.push(normalised(logLikelihoods(parts, seen)));
      counts.push(each);
    }
  }
  return learned(likelihoods, counts);
}

/** Expectation and maximisation of the weights; what is thought before counts as some pairs. */
function learned(likelihoods: readonly Float64Array[], counts: readonly number[]): Sharing {
  const before = parts.map(({ weight }) => weight * pairsBefore);
  const all = counts.reduce((sum, count) => sum + count, pairsBefore);
  let weights = Float64Array.from(parts, ({ weight }) => weight);
  for (let round = 0; round < mostRounds; round++) {
    const next = Float64Array.from(before);
    for (let pair = 0; pair < likelihoods.length; pair++)
      addProbable(next, weights, likelihoods[pair]!, counts[pair]!);
    const last = weights;
    weights = next.map((weight) => weight / all);
    if (weights.every((weight, k) => Math.abs(weight - last[k]!) < settled)) break;
  }
  return parts.map((part, k) => ({ ...part, weight: weights[k]! }));
}

/** Adds by part how many of some pairs probably came about so. */
function addProbable(to: Float64Array, weights: Float64Array, likelihood: Float64Array, count: number): void {
  let sum = 0;
  for (let k = 0; k < weights.length; k++) sum += weights[k]! * likelihood[k]!;
  const scale = count / sum;
  for (let k = 0; k < weights.length; k++) to[k]! += weights[k]! * likelihood[k]! * scale;
}

type Place = readonly [number, number];

interface Sample {
  readonly places: readonly Place[];
  /** How many pairs each stands for. */
  readonly each: number;
}

function sampledPairs(
  size: number,
  columns: readonly ComparedColumn[],
  uncertainty: Uncertainty,
): readonly Sample[] {
  const count = (size * (size - 1)) / 2;
  if (count <= mostPairs) return [{ places: everyPair(size, 1), each: 1 }];
  const near = readingsOf(
    columns.map((compared) => {
      const most = compared.column.mm.reduce(
        (u, mm, at) => (Number.isNaN(mm) ? u : Math.max(u, uncertainty(compared, mm, at))),
        0,
      );
      return { ...compared, tolerance: { floorMm: nearErrors * Math.SQRT2 * most, percent: 0 } };
    }),
    size,
  );
  let nearCount = 0;
  forEachNearPair(near, 1, () => nearCount++);
  const nearStep = Math.max(1, Math.ceil(nearCount / mostPairs));
  const nearPlaces: Place[] = [];
  let at = 0;
  forEachNearPair(near, 1, (i, j) => {
    if (at++ % nearStep === 0) nearPlaces.push([i, j]);
  });
  const some = everyPair(size, Math.ceil(count / mostPairs));
  const farPlaces = some.filter(([i, j]) => !isWithin(distanceBetween(near, i, j, 1), 1));
  return [
    { places: nearPlaces, each: nearCount / Math.max(1, nearPlaces.length) },
    { places: farPlaces, each: (count - nearCount) / Math.max(1, farPlaces.length) },
  ];
}

/** Every so manyth pair of figures. */
function everyPair(size: number, step: number): readonly Place[] {
  const places: Place[] = [];
  let at = 0;
  for (let i = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++) if (at++ % step === 0) places.push([i, j]);
  }
  return places;
}

function lacksRequired(columns: readonly ComparedColumn[], i: number, j: number): boolean {
  return columns.some(({ column, required }) => required && Number.isNaN(column.mm[i]! - column.mm[j]!));
}

/** z² in every measure that both figures have. */
export function seenOfPair(
  columns: readonly ComparedColumn[],
  i: number,
  j: number,
  uncertainty: Uncertainty,
): Seen {
  const squares: number[] = [];
  const shares: number[] = [];
  for (const compared of columns) {
    const a = compared.column.mm[i] ?? Number.NaN;
    const b = compared.column.mm[j] ?? Number.NaN;
    const difference = a - b;
    if (Number.isNaN(difference)) continue;
    const variance = uncertainty(compared, a, i) ** 2 + uncertainty(compared, b, j) ** 2;
    squares.push(difference === 0 ? 0 : Math.min(mostSquare, difference ** 2 / variance));
    shares.push(Math.min(mostSquare, (a + b) ** 2 / variance));
  }
  return { squares, free: squares.map(() => 1), shares: onAverageOne(shares) };
}

/** Each by their mean. */
export function onAverageOne(shares: readonly number[]): readonly number[] {
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return shares.map((share) => share / mean);
}

/** What of a difference as read is kept as a true one, where true ones have this spread. */
export function keptOf(spread: number, share: number): number {
  const other = spread * share;
  return other === Infinity ? 1 : other / (1 + other);
}

/** A difference of readings that are taken to be exact is beyond any spread, not infinite. */
export const mostSquare = 1e12;
