import type { Bits } from "./bits.ts";
import { common, itemsOf } from "./bits.ts";
import type { Graph } from "./graph.ts";

/** What it takes to alter for one item from another that is within reach, 0 for the same. */
export type Alteration = (i: number, j: number) => number;

/** By item of one set that hangs together: who could be its base, nearest first, itself before all. */
export interface ReachLists {
  readonly size: number;
  readonly bases: readonly Int32Array[];
  /** How far each of those is. */
  readonly far: readonly Float64Array[];
}

/**
 * @param items the set, as items of the whole
 * @param part its pairs within reach, numbered as in `items`
 * @param among the only items that may be bases of others; all when omitted
 */
export function reachLists(
  alteration: Alteration,
  items: readonly number[],
  part: Graph,
  among?: Bits,
): ReachLists {
  const between = (i: number, j: number) => alteration(items[i]!, items[j]!);
  const bases = part.near.map((row, item) =>
    Int32Array.from([
      item,
      ...[...itemsOf(among ? common(row, among) : row)].sort(
        (a, b) => between(item, a) - between(item, b) || a - b,
      ),
    ]),
  );
  return {
    size: items.length,
    bases,
    far: bases.map((each, item) => Float64Array.from(each, (base) => between(item, base))),
  };
}

/** By item its nearest base, of equal ones the first; a base is its own. −1 where none is within reach. */
export function nearestBases({ bases }: ReachLists, chosen: readonly number[]): Int32Array {
  const isBase = new Set(chosen);
  return Int32Array.from(bases, (each) => each.find((base) => isBase.has(base)) ?? -1);
}

/** The sum of the distances to the nearest base; infinite where none is within reach. */
export function alterationOf({ bases, far, size }: ReachLists, chosen: Iterable<number>): number {
  const isBase = new Uint8Array(size);
  for (const base of chosen) isBase[base] = 1;
  let sum = 0;
  for (let item = 0; item < size; item++) {
    const at = bases[item]!.findIndex((base) => isBase[base] === 1);
    if (at < 0) return Infinity;
    sum += far[item]![at]!;
  }
  return sum;
}
