import type { Bits } from "./bits.ts";
import { addBit, common, emptyBits, itemsOf } from "./bits.ts";
import type { Graph } from "./graph.ts";
import { partOf } from "./graph.ts";

/** Items of which every two are within reach, with the greatest sum of weights. */
export interface HeaviestClique {
  /** Absent when none is heavier than asked for. */
  readonly items?: readonly number[];
  /** No clique is heavier. */
  readonly atMost: number;
  /** False when the steps were used up. */
  readonly isProved: boolean;
}

/**
 * The heaviest clique, by branch and bound. What a set of candidates can add is bounded by sorting them into sets of items
 * that are all out of reach of one another, of which a clique takes one each (a colouring with weights, as in Babel 1994).
 *
 * @param weights whole numbers, one an item; items with weight 0 take no part
 * @param above only a clique heavier than this is of interest
 * @param mostSteps sets of candidates looked at
 */
export function heaviestClique(
  graph: Graph,
  weights: ArrayLike<number>,
  above: number,
  mostSteps: number,
): HeaviestClique {
  // Heavier items first, so that the first item of each set is its heaviest.
  const items = Array.from({ length: graph.size }, (_, item) => item)
    .filter((item) => weights[item]! > 0)
    .sort((a, b) => weights[b]! - weights[a]! || a - b);
  const { near, size } = partOf(graph, items);
  const weight = Float64Array.from(items, (item) => weights[item]!);
  const rest = new Float64Array(size);
  let best = { weight: above, members: undefined as readonly number[] | undefined };
  let steps = 0;
  const chosen: number[] = [];

  // Returns false when the steps are used up.
  const descend = (candidates: Bits, weightSoFar: number): boolean => {
    if (++steps > mostSteps) return false;
    if (weightSoFar > best.weight) best = { weight: weightSoFar, members: [...chosen] };
    const { order, bounds } = inSets(candidates, near, weight, rest);
    for (let at = order.length - 1; at >= 0; at--) {
      if (weightSoFar + bounds[at]! <= best.weight) return true;
      const item = order[at]!;
      chosen.push(item);
      const isDone = descend(common(candidates, near[item]!), weightSoFar + weight[item]!);
      chosen.pop();
      if (!isDone) return false;
      candidates[item >>> 5]! &= ~(1 << (item & 31));
    }
    return true;
  };

  const all = emptyBits(size);
  for (let item = 0; item < size; item++) addBit(all, item);
  const top = inSets(all, near, weight, rest).bounds.at(-1) ?? 0;
  const isProved = descend(all, 0);
  return {
    ...(best.members && { items: best.members.map((at) => items[at]!).sort((a, b) => a - b) }),
    atMost: isProved ? best.weight : Math.max(top, best.weight),
    isProved,
  };
}

/**
 * Candidates in sets of items out of reach of one another. Each set takes the weight of its lightest item off all of its
 * items; a clique can hold one of them, so it weighs at most the sum of what was taken. With each item, in the order in
 * which their weights are used up, comes the most that a clique of the items up to there can weigh.
 */
function inSets(
  candidates: Bits,
  near: readonly Bits[],
  weight: Float64Array,
  rest: Float64Array,
): { order: number[]; bounds: number[] } {
  const order: number[] = [];
  const bounds: number[] = [];
  const left = candidates.slice();
  const open = new Uint32Array(left.length);
  const set: number[] = [];
  for (const item of itemsOf(candidates)) rest[item] = weight[item]!;
  let taken = 0;
  for (let from = 0; from < left.length;) {
    if (left[from] === 0) {
      from++;
      continue;
    }
    open.set(left);
    set.length = 0;
    let lightest = Infinity;
    for (let word = from; word < open.length;) {
      const bits = open[word]!;
      if (bits === 0) {
        word++;
        continue;
      }
      const item = word * 32 + 31 - Math.clz32(bits & -bits);
      set.push(item);
      lightest = Math.min(lightest, rest[item]!);
      open[word]! &= ~(1 << (item & 31));
      const row = near[item]!;
      for (let each = word; each < open.length; each++) open[each]! &= ~row[each]!;
    }
    taken += lightest;
    for (const item of set) {
      rest[item]! -= lightest;
      if (rest[item]! > 0) continue;
      order.push(item);
      bounds.push(taken);
      left[item >>> 5]! &= ~(1 << (item & 31));
    }
  }
  return { order, bounds };
}
