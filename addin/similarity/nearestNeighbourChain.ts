import type { Condensed } from "./condensed.ts";
import type { LinkageMethod } from "./linkage.ts";

/** Two groups become one. */
export interface Join {
  /** The lowest item of one group, from 0. */
  readonly first: number;
  /** The lowest item of the other group; greater than `first`. */
  readonly second: number;
  readonly height: number;
}

/**
 * The joins of a hierarchical clustering by the nearest-neighbour chain (Benzécri 1982; Murtagh 1983), in an order that
 * puts parts before wholes, but not by height.
 *
 * From any group, step to its nearest group, then to that one’s nearest, until two are each other’s nearest: those are
 * joined. None of the four methods ever brings a third group nearer by a join, so this finds the same joins as
 * searching for the nearest pair of all each time, in time that grows with the square of the size instead of its cube.
 *
 * A pair that is not known counts as infinitely far, and stays so for any group that holds one of the two. A group with
 * nothing but infinite distances left is finished.
 *
 * Equal distances: `complete` takes the group with the lowest item, so that the pair with the lowest items is joined first
 * and the result is that of the search through all pairs. By the other methods a join can give a pair at the same
 * distance a lower item, and the chain could run in a circle; there its previous group goes first.
 */
export function nearestNeighbourChain(distances: Condensed, method: LinkageMethod): readonly Join[] {
  const state = start(distances, method);
  const joins: Join[] = [];
  const chain: number[] = [];
  while (state.count > 1) {
    if (chain.length === 0) chain.push(state.groups[0]!);
    const tip = chain.at(-1)!;
    const previous = chain.at(-2);
    const nearest = nearestTo(tip, previous, state);
    if (nearest === undefined) {
      remove(chain.pop()!, state);
    } else if (nearest === previous) {
      chain.length -= 2;
      joins.push(join(Math.min(tip, nearest), Math.max(tip, nearest), state));
    } else {
      chain.push(nearest);
    }
  }
  return joins;
}

interface State {
  readonly method: LinkageMethod;
  /** Distances between groups, squared for Ward’s method; a group stands at its lowest item. */
  readonly far: Float64Array;
  /** far[rowAt[i] + j] is the distance of i < j. */
  readonly rowAt: Int32Array;
  /** The groups that can still be joined, in order: the first `count` of these. */
  readonly groups: Int32Array;
  count: number;
  /** Number of items in each group. */
  readonly sizes: Int32Array;
  /** The distance at which each group was joined. */
  readonly joinedAt: Float64Array;
}

function start({ size, values }: Condensed, method: LinkageMethod): State {
  return {
    method,
    far: workingCopy(values, method === "ward"),
    rowAt: Int32Array.from({ length: size }, (_, i) => i * size - (i * (i + 1)) / 2 - i - 1),
    groups: Int32Array.from({ length: size }, (_, i) => i),
    count: size,
    sizes: new Int32Array(size).fill(1),
    joinedAt: new Float64Array(size),
  };
}

function workingCopy(values: Float64Array, isSquared: boolean): Float64Array {
  const far = new Float64Array(values.length);
  for (let at = 0; at < far.length; at++) {
    const distance = values[at]!;
    if (Number.isNaN(distance)) far[at] = Infinity;
    else far[at] = isSquared ? distance * distance : distance;
  }
  return far;
}

/** The nearest other group, or `undefined` when all are infinitely far. */
function nearestTo(tip: number, previous: number | undefined, state: State): number | undefined {
  const { method, far, rowAt, groups, count } = state;
  let nearest = method === "complete" ? undefined : previous;
  let least = nearest === undefined ? Infinity : distanceBetween(tip, nearest, state);
  let g = 0;
  for (; groups[g]! < tip; g++) {
    const distance = far[rowAt[groups[g]!]! + tip]!;
    if (distance < least) {
      least = distance;
      nearest = groups[g]!;
    }
  }
  const row = rowAt[tip]!;
  for (g++; g < count; g++) {
    const distance = far[row + groups[g]!]!;
    if (distance < least) {
      least = distance;
      nearest = groups[g]!;
    }
  }
  return nearest;
}

function join(low: number, high: number, state: State): Join {
  const { method, sizes, joinedAt } = state;
  const distance = distanceBetween(low, high, state);
  // Rounding could put a whole a hair below its parts.
  const height = Math.max(distance, joinedAt[low]!, joinedAt[high]!);
  remove(high, state);
  update(low, high, distance, state);
  sizes[low]! += sizes[high]!;
  joinedAt[low] = height;
  return { first: low, second: high, height: method === "ward" ? Math.sqrt(height) : height };
}

function remove(group: number, state: State): void {
  const at = state.groups.subarray(0, state.count).indexOf(group);
  state.groups.copyWithin(at, at + 1, state.count);
  state.count--;
}

/**
 * The distances of the group that `low` and `high` become, written over those of `low` (Lance & Williams 1967). They are
 * never less than those of both parts, not even by rounding, since the chain relies on that.
 */
function update(low: number, high: number, between: number, state: State): void {
  const { method, far, rowAt, groups, count, sizes } = state;
  const nLow = sizes[low]!;
  const nHigh = sizes[high]!;
  for (let g = 0; g < count; g++) {
    const other = groups[g]!;
    if (other === low) continue;
    const atLow = other < low ? rowAt[other]! + low : rowAt[low]! + other;
    const a = far[atLow]!;
    const b = far[other < high ? rowAt[other]! + high : rowAt[high]! + other]!;
    switch (method) {
      case "complete":
        far[atLow] = a > b ? a : b;
        break;
      case "average":
        far[atLow] = Math.max((nLow * a + nHigh * b) / (nLow + nHigh), Math.min(a, b));
        break;
      case "single":
        // Infinite is “not known”, which the nearer of two must not hide.
        far[atLow] = a === Infinity || b === Infinity ? Infinity : Math.min(a, b);
        break;
      case "ward": {
        const n = sizes[other]!;
        far[atLow] = Math.max(
          ((nLow + n) * a + (nHigh + n) * b - n * between) / (nLow + nHigh + n),
          Math.min(a, b),
        );
        break;
      }
    }
  }
}

function distanceBetween(i: number, j: number, { far, rowAt }: State): number {
  return far[i < j ? rowAt[i]! + j : rowAt[j]! + i]!;
}
