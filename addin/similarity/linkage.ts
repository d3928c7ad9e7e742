import type { Condensed } from "./matrix.ts";
import { createDisjointSets } from "./disjointSets.ts";

export const linkageMethods = ["complete", "average", "single", "ward"] as const;

/**
 * How far apart two groups are: the farthest pair (`complete`), the mean of all pairs (`average`), the nearest pair
 * (`single`), or the growth of the spread within (`ward`; Ward 1963, for Euclidean distances, with heights as
 * `ward.D2` of R and `ward` of SciPy give them).
 */
export type LinkageMethod = (typeof linkageMethods)[number];

/** One step of a clustering, by the convention of R’s `hclust`. */
export interface Merge {
  /** An item as −(its number from 1), or an earlier merge as its number from 1. Items before merges, lower first. */
  readonly left: number;
  readonly right: number;
  readonly height: number;
  /** Number of items in the new group. */
  readonly size: number;
}

/**
 * Hierarchical clustering of any distances: the two nearest groups are joined again and again. For the distances of figures and
 * complete linkage `completeJoins` needs no distances of all pairs.
 *
 * Sorted by height. Pairs that are not known (NaN) or infinite never join, whatever the method: no group holds such a
 * pair. There are then fewer merges than size − 1. Where distances are equal, items that come first are joined first.
 *
 * Time grows with size²; the memory is one copy of the distances.
 *
 * @example linkage({ size: 3, values: Float64Array.of(1, 5, 4) }, "complete")
 * // [{ left: -1, right: -2, height: 1, size: 2 }, { left: -3, right: 1, height: 5, size: 3 }]
 */
export function linkage({ size, values }: Condensed, method: LinkageMethod): readonly Merge[] {
  return linkageInPlace({ size, values: values.slice() }, method);
}

/** The same within the memory of the distances, which mean nothing afterwards: for thousands of items. */
export function linkageInPlace(distances: Condensed, method: LinkageMethod): readonly Merge[] {
  return labelMerges(nearestNeighbourChain(distances, method), distances.size);
}

/** Joins in any order that puts parts before wholes → merges by height, numbered by the convention of R’s `hclust`. */
export function labelMerges(joins: readonly Join[], size: number): readonly Merge[] {
  const groups = createDisjointSets(size);
  const labels = Int32Array.from({ length: size }, (_, item) => -(item + 1));
  const sizes = new Int32Array(size).fill(1);
  // The sort is stable, so that at equal heights parts stay before wholes.
  return [...joins]
    .sort((a, b) => a.height - b.height)
    .map(({ first, second, height }, index) => {
      const one = groups.find(first);
      const other = groups.find(second);
      const [left, right] = inMergeOrder(labels[one]!, labels[other]!);
      const joined = groups.join(one, other);
      labels[joined] = index + 1;
      sizes[joined] = sizes[one]! + sizes[other]!;
      return { left, right, height, size: sizes[joined] };
    });
}

/** Items (negative) before merges; the lower number first among either. */
function inMergeOrder(a: number, b: number): readonly [number, number] {
  if (a < 0 && b < 0) return a > b ? [a, b] : [b, a];
  return a < b ? [a, b] : [b, a];
}

/** Two groups become one. */
export interface Join {
  /** The lowest item of one group, from 0. */
  readonly first: number;
  /** The lowest item of the other group; greater than `first`. */
  readonly second: number;
  readonly height: number;
}

/**
 * The joins of a hierarchical clustering by the nearest-neighbour chain (Benzécri 1982; Murtagh 1983), parts before wholes.
 *
 * From any group, step to its nearest group, then to that one’s nearest, until two are each other’s nearest: those are
 * joined. None of the four methods ever brings a third group nearer by a join, so this finds the same joins as
 * searching for the nearest pair of all each time, in time that grows with the square of the size instead of its cube.
 *
 * A pair that is not known counts as infinitely far, and stays so for any group that holds one of the two. A group with
 * nothing but infinite distances left is finished.
 *
 * Works within the memory of the distances, which mean nothing afterwards.
 *
 * Equal distances: `complete` takes the group with the lowest item, so that the pair with the lowest items is joined first
 * and the result is that of the search through all pairs. By the other methods a join can give a pair at the same
 * distance a lower item, and the chain could run in a circle; there its previous group goes first.
 */
export function nearestNeighbourChain(distances: Condensed, method: LinkageMethod): readonly Join[] {
  const groups = start(distances, method);
  const joins: Join[] = [];
  const chain: number[] = [];
  while (groups.count > 1) {
    if (chain.length === 0) chain.push(groups.isGone.indexOf(0));
    const tip = chain.at(-1)!;
    const previous = chain.at(-2);
    const nearest = nearestTo(tip, previous, groups);
    if (nearest === undefined) {
      chain.pop();
      remove(tip, groups);
    } else if (nearest === previous) {
      chain.length -= 2;
      joins.push(join(Math.min(tip, nearest), Math.max(tip, nearest), groups));
    } else {
      chain.push(nearest);
    }
    if (groups.count < fullShare * groups.isGone.length) closeUp(groups, chain);
  }
  return method === "complete" ? joins.sort(inOrder) : joins;
}

/** By height, equally high ones by their lowest items: as the search through all pairs finds them. */
export function inOrder(a: Join, b: Join): number {
  return a.height - b.height || a.first - b.first || a.second - b.second;
}

/** When fewer slots than this are in use, the groups are moved together, so that less memory is walked through. */
const fullShare = 0.6;

/** The groups that can still be joined, each in a slot. A group goes by its lowest item, and slots are in that order. */
interface Groups {
  readonly method: LinkageMethod;
  /** Distances between slots, squared for Ward’s method; infinite where a slot is no longer in use. */
  far: Float64Array;
  /** far[rowAt[i] + j] is the distance of slots i < j. */
  rowAt: Int32Array;
  /** 1 for a slot that is no longer in use. */
  isGone: Uint8Array;
  /** Number of slots in use. */
  count: number;
  lowestItem: Int32Array;
  /** Number of items in each group. */
  sizes: Int32Array;
  /** The distance at which each group was joined. */
  joinedAt: Float64Array;
}

function start({ size, values }: Condensed, method: LinkageMethod): Groups {
  return {
    method,
    far: prepare(values, method === "ward"),
    rowAt: rowStarts(size),
    isGone: new Uint8Array(size),
    count: size,
    lowestItem: Int32Array.from({ length: size }, (_, item) => item),
    sizes: new Int32Array(size).fill(1),
    joinedAt: new Float64Array(size),
  };
}

function rowStarts(size: number): Int32Array {
  return Int32Array.from({ length: size }, (_, i) => i * size - (i * (i + 1)) / 2 - i - 1);
}

/** Not known becomes infinite; Ward’s method works on squares. */
function prepare(far: Float64Array, isSquared: boolean): Float64Array {
  for (let at = 0; at < far.length; at++) {
    if (Number.isNaN(far[at])) far[at] = Infinity;
    else if (isSquared) far[at]! *= far[at]!;
  }
  return far;
}

/** The nearest other group, or `undefined` when all are infinitely far. */
function nearestTo(tip: number, previous: number | undefined, groups: Groups): number | undefined {
  const { method, far, rowAt, isGone } = groups;
  let nearest = method === "complete" ? undefined : previous;
  let least = nearest === undefined ? Infinity : distanceBetween(tip, nearest, groups);
  const size = isGone.length;
  for (let slot = 0, at = tip - 1; slot < tip; at += size - slot - 2, slot++) {
    const distance = far[at]!;
    if (distance < least) {
      least = distance;
      nearest = slot;
    }
  }
  const row = rowAt[tip]!;
  for (let slot = tip + 1; slot < size; slot++) {
    const distance = far[row + slot]!;
    if (distance < least) {
      least = distance;
      nearest = slot;
    }
  }
  return nearest;
}

function join(low: number, high: number, groups: Groups): Join {
  const { method, lowestItem, sizes, joinedAt } = groups;
  const distance = distanceBetween(low, high, groups);
  // Rounding could put a whole a hair below its parts.
  const height = Math.max(distance, joinedAt[low]!, joinedAt[high]!);
  update(low, high, distance, groups);
  remove(high, groups);
  sizes[low]! += sizes[high]!;
  joinedAt[low] = height;
  return {
    first: lowestItem[low]!,
    second: lowestItem[high]!,
    height: method === "ward" ? Math.sqrt(height) : height,
  };
}

function remove(slot: number, groups: Groups): void {
  groups.isGone[slot] = 1;
  groups.count--;
}

/**
 * The distances of the group that `low` and `high` become, written over those of `low`; those of `high` become infinite.
 * None is less than both of its parts, not even by rounding, since the chain relies on that.
 */
function update(low: number, high: number, between: number, groups: Groups): void {
  if (groups.method === "complete") updateComplete(low, high, groups);
  else updateOther(low, high, between, groups);
  groups.far[groups.rowAt[low]! + high] = Infinity;
}

/** The farther of the two. Most of the time of a clustering is spent here, so there is a loop for each run of memory. */
function updateComplete(low: number, high: number, { far, rowAt, isGone }: Groups): void {
  const rowLow = rowAt[low]!;
  const rowHigh = rowAt[high]!;
  for (let slot = 0; slot < low; slot++) {
    const row = rowAt[slot]!;
    const a = far[row + low]!;
    const b = far[row + high]!;
    far[row + low] = a > b ? a : b;
    far[row + high] = Infinity;
  }
  for (let slot = low + 1; slot < high; slot++) {
    const row = rowAt[slot]!;
    const a = far[rowLow + slot]!;
    const b = far[row + high]!;
    far[rowLow + slot] = a > b ? a : b;
    far[row + high] = Infinity;
  }
  for (let slot = high + 1; slot < isGone.length; slot++) {
    const a = far[rowLow + slot]!;
    const b = far[rowHigh + slot]!;
    far[rowLow + slot] = a > b ? a : b;
    far[rowHigh + slot] = Infinity;
  }
}

/** By the formulas of Lance & Williams (1967). */
function updateOther(low: number, high: number, between: number, groups: Groups): void {
  const { method, far, rowAt, isGone, sizes } = groups;
  const nLow = sizes[low]!;
  const nHigh = sizes[high]!;
  for (let slot = 0; slot < isGone.length; slot++) {
    if (slot === low || slot === high) continue;
    const atLow = slot < low ? rowAt[slot]! + low : rowAt[low]! + slot;
    const atHigh = slot < high ? rowAt[slot]! + high : rowAt[high]! + slot;
    const a = far[atLow]!;
    const b = far[atHigh]!;
    const nearer = Math.min(a, b);
    far[atHigh] = Infinity;
    if (method === "average") {
      far[atLow] = Math.max((nLow * a + nHigh * b) / (nLow + nHigh), nearer);
    } else if (method === "ward") {
      const n = sizes[slot]!;
      const sum = (nLow + n) * a + (nHigh + n) * b - n * between;
      far[atLow] = Math.max(sum / (nLow + nHigh + n), nearer);
    } else {
      // Infinite is “not known”, which the nearer of two must not hide.
      far[atLow] = a === Infinity || b === Infinity ? Infinity : nearer;
    }
  }
}

/** Moves the slots in use to the front, within the same memory, and lets the chain follow. */
function closeUp(groups: Groups, chain: number[]): void {
  const { far, rowAt, isGone } = groups;
  const kept = Int32Array.from(isGone.keys()).filter((slot) => isGone[slot] === 0);
  let to = 0;
  for (let i = 0; i < kept.length; i++) {
    const row = rowAt[kept[i]!]!;
    for (let j = i + 1; j < kept.length; j++) far[to++] = far[row + kept[j]!]!;
  }
  groups.far = far.subarray(0, to);
  groups.rowAt = rowStarts(kept.length);
  groups.isGone = new Uint8Array(kept.length);
  groups.lowestItem = kept.map((slot) => groups.lowestItem[slot]!);
  groups.sizes = kept.map((slot) => groups.sizes[slot]!);
  groups.joinedAt = Float64Array.from(kept, (slot) => groups.joinedAt[slot]!);
  chain.forEach((slot, at) => (chain[at] = kept.indexOf(slot)));
}

function distanceBetween(i: number, j: number, { far, rowAt }: Groups): number {
  return far[i < j ? rowAt[i]! + j : rowAt[j]! + i]!;
}
