import type { Bits } from "./bits.ts";
import { addBit, bitsOf, common, countBits, countCommon, emptyBits, firstItem, itemsOf } from "./bits.ts";
import { fewerSets } from "./searchBases.ts";
import type { Graph } from "./graph.ts";
import { disjoint, partOf } from "./graph.ts";
import { fewerGroups } from "./searchGroups.ts";
import type { OpenModel, Solver } from "./solver.ts";

/** Groups that may overlap, together all items. */
export interface Cover {
  readonly groups: readonly (readonly number[])[];
  readonly atLeast: number;
}

export interface CoverOptions {
  readonly solver: Solver;
  /** Milliseconds left before the search must end. */
  readonly leftMs: () => number;
  readonly onProgress?: (cover: Cover) => void;
}

/** Prices are taken in whole parts of 1 / this, so that bounds are free of rounding. */
const scale = 2 ** 20;
/** Sets of candidates that one search for the heaviest clique may look at. */
const mostCliqueSteps = 2_000_000;
/** Cliques that are listed to close a gap; more would take too long to choose from. */
const mostListed = 20_000;
const mostSwaps = 50_000;
const mostMoves = 300_000;

/**
 * The fewest cliques that cover all items: column generation. A linear program over the cliques found so far prices the items;
 * the heaviest clique by those prices either shows a clique that is still lacking, or bounds the number from below: no
 * cover has fewer than (sum of prices) / (price of the heaviest clique) groups (Farley 1990). Where the
 * bound does not meet the best answer, every clique that a better answer could hold is listed (its price must be so near 1
 * that the gap allows for it), and the choice among those is exact.
 *
 * @param start a cover to improve on
 * @param atLeast a bound known already
 */
export function fewestCliques(
  graph: Graph,
  start: readonly (readonly number[])[],
  atLeast: number,
  { solver, leftMs, onProgress }: CoverOptions,
): Cover {
  let best: Cover = { groups: start, atLeast };
  const improve = (change: Partial<Cover>): void => {
    best = { ...best, ...change };
    onProgress?.(best);
  };
  const isProved = () => best.atLeast >= best.groups.length;
  const model = solver.open(graph.size);
  const columns: (readonly number[])[] = [];
  const known = new Set<string>();
  const add = (cliques: readonly (readonly number[])[]): number => {
    const fresh = cliques.filter((clique) => {
      const key = clique.join();
      return !known.has(key) && known.add(key);
    });
    model.addVariables({ cost: 1, most: Infinity, isWhole: true, rows: fresh });
    columns.push(...fresh);
    return fresh.length;
  };
  /** Chooses among the cliques found so far without a proof. */
  const search = (): void => {
    const from = best.groups.map((group) => columns.findIndex((column) => holds(column, group)));
    const fewer = fewerSets(
      { items: graph.size, sets: columns },
      from,
      best.atLeast,
      mostSwaps,
      () => leftMs() <= 0,
    );
    if (fewer.length < best.groups.length) improve({ groups: fewer.map((at) => columns[at]!) });
  };

  try {
    add(start.map((group) => grown(graph, group)));
    add(Array.from({ length: graph.size }, (_, item) => grown(graph, [item])));
    let prices: Prices | undefined;
    while (!isProved()) {
      const relaxed = leftMs() > 0 ? model.relax(leftMs()) : undefined;
      if (!relaxed) return best;
      prices = wholePrices(relaxed.rowPrices);
      const found = greedyCliques(graph, prices.each);
      if (add(found) > 0) continue;
      const heaviest = heaviestClique(graph, prices.each, scale, mostCliqueSteps);
      const bound = Math.ceil(prices.sum / heaviest.atMost - 1e-12);
      prices = { ...prices, heaviest: heaviest.atMost };
      if (bound > best.atLeast) improve({ atLeast: bound });
      if (!heaviest.items || add([grown(graph, heaviest.items)]) === 0) break;
      if (bound >= Math.ceil(relaxed.objective - 1e-6)) break;
    }
    if (isProved() || !prices) return best;
    search();
    if (isProved()) return best;
    const dealt = fewerGroups(graph, disjoint(best.groups), best.atLeast, mostMoves, () => leftMs() <= 0);
    if (dealt.length < best.groups.length) {
      add(dealt.map((group) => grown(graph, group)));
      improve({ groups: dealt });
    }
    if (isProved()) return best;
    const listed = cliquesWorth(graph, prices, best.groups.length);
    if (listed) {
      add(listed);
      search();
      if (isProved()) return best;
    }
    const outcome = chooseAmong(model, columns, best, leftMs, improve);
    if (listed && outcome === "proved") improve({ atLeast: best.groups.length });
    return best;
  } finally {
    model.close();
  }
}

function holds(whole: readonly number[], part: readonly number[]): boolean {
  return part.every((item) => whole.includes(item));
}

interface Prices {
  readonly each: Float64Array;
  readonly sum: number;
  readonly heaviest: number;
}

function wholePrices(rowPrices: Float64Array): Prices {
  const each = rowPrices.map((price) => Math.max(0, Math.floor(price * scale)));
  return { each, sum: each.reduce((sum, price) => sum + price, 0), heaviest: scale };
}

function chooseAmong(
  model: OpenModel,
  columns: readonly (readonly number[])[],
  best: Cover,
  leftMs: () => number,
  improve: (change: Partial<Cover>) => void,
): "proved" | "limit" {
  let fewest = best.groups.length;
  const take = (values: Float64Array): void => {
    const groups = columns.filter((_, i) => values[i]! > 0.5);
    if (groups.length >= fewest) return;
    fewest = groups.length;
    improve({ groups });
  };
  const found = model.solve({ gap: 0.999, timeLimitMs: leftMs(), onAnswer: take });
  if (found.values) take(found.values);
  return found.outcome === "limit" ? "limit" : "proved";
}

/** The clique with every item added that goes with all of it, lowest first. */
function grown({ near, size }: Graph, clique: readonly number[]): readonly number[] {
  let candidates: Bits = bitsOf(
    size,
    Array.from({ length: size }, (_, item) => item),
  );
  for (const item of clique) candidates = common(candidates, near[item]!);
  const members = [...clique];
  for (let item = firstItem(candidates); item >= 0; item = firstItem(candidates)) {
    // The item that leaves most others to choose from.
    let most = -1;
    for (const each of itemsOf(candidates)) {
      const left = countCommon(candidates, near[each]!);
      if (left > most) {
        most = left;
        item = each;
      }
    }
    members.push(item);
    candidates = common(candidates, near[item]!);
  }
  return members.sort((a, b) => a - b);
}

/** From each item with a price, the clique that grows by the most valuable item each time; those heavier than 1. */
function greedyCliques(graph: Graph, prices: Float64Array): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  for (let first = 0; first < graph.size; first++) {
    if (prices[first] === 0) continue;
    const members = [first];
    let weight = prices[first]!;
    let candidates = graph.near[first]!;
    while (countBits(candidates) > 0) {
      let chosen = -1;
      let most = -1;
      for (const each of itemsOf(candidates)) {
        const value = prices[each]!;
        if (value > most) {
          most = value;
          chosen = each;
        }
      }
      if (most <= 0) break;
      members.push(chosen);
      weight += most;
      candidates = common(candidates, graph.near[chosen]!);
    }
    if (weight > scale * (1 + 1e-5)) found.push(grown(graph, members));
  }
  return found;
}

/**
 * Every maximal clique that a cover with fewer than `count` groups could hold: the prices of its groups add up to at least
 * the sum of all prices, and none is above the heaviest. `undefined` when there are too many.
 */
function cliquesWorth(
  { near, size }: Graph,
  prices: Prices,
  count: number,
): readonly (readonly number[])[] | undefined {
  const least = prices.sum - (count - 2) * prices.heaviest;
  const found: (readonly number[])[] = [];
  const chosen: number[] = [];
  let steps = 0;
  // Bron & Kerbosch (1973) with the pivot of Tomita, Tanaka & Takahashi (2006).
  const descend = (candidates: Bits, excluded: Bits, weight: number): boolean => {
    if (++steps > mostCliqueSteps || found.length > mostListed) return false;
    const items = itemsOf(candidates);
    if (items.length === 0) {
      if (countBits(excluded) === 0 && weight >= least) found.push([...chosen].sort((a, b) => a - b));
      return true;
    }
    if (weight + mostWeight(items, near, prices.each) < least) return true;
    let pivot = -1;
    let most = -1;
    for (const each of [...items, ...itemsOf(excluded)]) {
      const kept = countCommon(candidates, near[each]!);
      if (kept > most) {
        most = kept;
        pivot = each;
      }
    }
    const rest = candidates.slice();
    const out = excluded.slice();
    for (const item of items) {
      if ((near[pivot]![item >>> 5]! & (1 << (item & 31))) !== 0) continue;
      chosen.push(item);
      const isDone = descend(
        common(rest, near[item]!),
        common(out, near[item]!),
        weight + prices.each[item]!,
      );
      chosen.pop();
      if (!isDone) return false;
      rest[item >>> 5]! &= ~(1 << (item & 31));
      addBit(out, item);
    }
    return true;
  };
  const all = bitsOf(
    size,
    Array.from({ length: size }, (_, item) => item),
  );
  return descend(all, bitsOf(size, []), 0) ? found : undefined;
}

/** No clique of these items weighs more: items in sets that are out of reach of one another, the heaviest of each. */
function mostWeight(items: readonly number[], near: readonly Bits[], prices: Float64Array): number {
  const byPrice = items.filter((item) => prices[item]! > 0).sort((a, b) => prices[b]! - prices[a]!);
  const sets: number[][] = [];
  let sum = 0;
  for (const item of byPrice) {
    const row = near[item]!;
    const set = sets.find((each) => each.every((other) => (row[other >>> 5]! & (1 << (other & 31))) === 0));
    if (set) {
      set.push(item);
      continue;
    }
    sets.push([item]);
    sum += prices[item]!;
  }
  return sum;
}

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
