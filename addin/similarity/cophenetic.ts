import type { Condensed } from "./matrix.ts";
import { createCondensed, pairIndex } from "./matrix.ts";
import type { Merge } from "./linkage.ts";

/**
 * The height at which each pair of items comes into one group; NaN for a pair that never does.
 *
 * Source: R. R. Sokal & F. J. Rohlf, The comparison of dendrograms by objective methods, Taxon 11 (1962), 33–40.
 *
 * @param merges see `linkage`
 * @param size number of items
 * @throws {InputError} when there are too many items
 * @example copheneticDistances(linkage({ size: 3, values: Float64Array.of(1, 5, 4) }, "complete"), 3).values
 * // [1, 5, 5]
 */
export function copheneticDistances(merges: readonly Merge[], size: number): Condensed {
  const heights = createCondensed(size);
  heights.values.fill(Number.NaN);
  const { runs, next, heightAfter } = leafRuns(merges, size);
  for (const first of runs) {
    for (let one = first; one >= 0; one = next[one]!) {
      // Along the leaves of a tree two of them meet at the greatest height in between.
      let height = 0;
      for (let last = one, other = next[one]!; other >= 0; last = other, other = next[other]!) {
        height = Math.max(height, heightAfter[last]!);
        heights.values[pairIndex(size, one, other)] = height;
      }
    }
  }
  return heights;
}

/** The items in runs, one for each tree, in which the parts of every merge lie side by side. */
interface LeafRuns {
  /** The first item of each run. */
  readonly runs: readonly number[];
  /** The next item of the run, −1 behind the last. */
  readonly next: Int32Array;
  /** The height of the merge that put an item and the next side by side. */
  readonly heightAfter: Float64Array;
}

function leafRuns(merges: readonly Merge[], size: number): LeafRuns {
  const next = new Int32Array(size).fill(-1);
  const heightAfter = new Float64Array(size);
  const groups: (readonly [first: number, last: number])[] = [];
  const isFirst = new Uint8Array(size).fill(1);
  const endsOf = (label: number): readonly [number, number] =>
    label < 0 ? [-label - 1, -label - 1] : groups[label - 1]!;
  for (const { left, right, height } of merges) {
    const [first, lastOfLeft] = endsOf(left);
    const [firstOfRight, last] = endsOf(right);
    next[lastOfLeft] = firstOfRight;
    heightAfter[lastOfLeft] = height;
    isFirst[firstOfRight] = 0;
    groups.push([first, last]);
  }
  return { runs: [...isFirst.keys()].filter((item) => isFirst[item] === 1), next, heightAfter };
}

/**
 * How truly a tree of groups shows the distances that it was made from: the correlation of the distances with the heights
 * at which the pairs come together, at most 1. Pairs that are not known or never come together are left out.
 *
 * @param distances what was clustered
 * @param merges its clustering, see `linkage`
 * @returns NaN where nothing can be said: less than two pairs, or all distances or all heights the same
 * @throws {InputError} when there are too many items
 */
export function copheneticCorrelation(distances: Condensed, merges: readonly Merge[]): number {
  return correlation(distances.values, copheneticDistances(merges, distances.size).values);
}

/** Pearson’s correlation over the places where both are known, in two passes so that no digits are lost. */
function correlation(xs: Float64Array, ys: Float64Array): number {
  let count = 0;
  let sumX = 0;
  let sumY = 0;
  for (let at = 0; at < xs.length; at++) {
    if (Number.isNaN(xs[at]! + ys[at]!)) continue;
    count++;
    sumX += xs[at]!;
    sumY += ys[at]!;
  }
  let squaresX = 0;
  let squaresY = 0;
  let products = 0;
  for (let at = 0; at < xs.length; at++) {
    if (Number.isNaN(xs[at]! + ys[at]!)) continue;
    const x = xs[at]! - sumX / count;
    const y = ys[at]! - sumY / count;
    squaresX += x * x;
    squaresY += y * y;
    products += x * y;
  }
  const scale = Math.sqrt(squaresX) * Math.sqrt(squaresY);
  return scale > 0 ? products / scale : Number.NaN;
}
