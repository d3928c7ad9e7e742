import type { Bits } from "./bits.ts";
import { addBit, bitsOf, countBits, emptyBits, hasBit, itemsOf, removeBit } from "./bits.ts";
import { fewerSets, searchBases, swapBases } from "./searchBases.ts";
import type { Graph } from "./graph.ts";
import { components, partOf } from "./graph.ts";
import type { Alteration, ReachLists } from "./reachLists.ts";
import { alterationOf, nearestBases, reachLists } from "./reachLists.ts";
import { mutuallyApart } from "./mutuallyApart.ts";
import { leastReported, mostSearched } from "./exactOptions.ts";
import type { ExactOptions } from "./exactOptions.ts";

/** As few bases as possible, so that every item is within reach of one. */
export interface FewestBases {
  /** The base of each item: the nearest, of equal ones the first. A base is its own. */
  readonly baseOf: Int32Array;
  readonly count: number;
  /** No answer has fewer bases than this. Equal to `count` when that is proved to be the fewest. */
  readonly atLeast: number;
  /** The sum of the distances from each item to its base. */
  readonly alteration: number;
  /** True when it is proved that no answer with as few bases needs less alteration (to a millionth of a tolerance). */
  readonly isLeastAlteration: boolean;
}

/** Bases tried by the search without a solver, for all sets together. */
const mostSteps = 30_000;
const mostSwaps = 5_000;
const mostSwapTries = 5_000;
const mostApartSteps = 20_000;

interface Part {
  readonly items: readonly number[];
  readonly graph: Graph;
  bases: readonly number[];
  atLeast: number;
  isLeastAlteration: boolean;
}

/**
 * The fewest bases, and of all answers with as few one with the least total alteration: a smallest set cover, for each set
 * of items that hang together by itself. The first answer takes again and again the item that reaches most; it is made better
 * by swapping, and then proved, or beaten, by the solver or a search in steps. Of equal answers the one found first stays;
 * it depends on the order of items and on nothing else, unless a limit in time ends the work.
 *
 * @param whole the pairs of which one can be the base of the other
 */
export function exactBases(
  whole: Graph,
  between: Alteration,
  options: ExactOptions<FewestBases> = {},
): FewestBases {
  const { solver, leftMs = () => Infinity, onProgress } = options;
  const parts = components(whole)
    .map((items): Part => {
      const graph = partOf(whole, items);
      const bases = greedyBases(graph);
      return { items, graph, bases, atLeast: 1, isLeastAlteration: items.length === 1 };
    })
    .sort((a, b) => a.items.length - b.items.length);
  const lists = new Map<Part, ReachLists>();
  const listsOf = (part: Part): ReachLists => {
    // Of a large set only the bases are looked at, which do not change.
    const among = part.items.length > mostSearched ? bitsOf(part.items.length, part.bases) : undefined;
    const known = lists.get(part) ?? reachLists(between, part.items, part.graph, among);
    lists.set(part, known);
    return known;
  };
  const answer = (): FewestBases => {
    const baseOf = new Int32Array(whole.size);
    let alteration = 0;
    for (const part of parts) {
      const found = listsOf(part);
      nearestBases(found, part.bases).forEach((base, item) => {
        baseOf[part.items[item]!] = part.items[base]!;
      });
      alteration += alterationOf(found, part.bases);
    }
    return {
      baseOf,
      alteration,
      count: parts.reduce((sum, { bases }) => sum + bases.length, 0),
      atLeast: parts.reduce((sum, { atLeast }) => sum + atLeast, 0),
      isLeastAlteration: parts.every((part) => part.isLeastAlteration),
    };
  };
  const report = (): void => onProgress?.(answer());

  report();
  let stepsLeft = mostSteps;
  for (const part of parts) {
    if (part.items.length === 1) continue;
    if (part.items.length > mostSearched) {
      part.atLeast = separate(part.graph);
      continue;
    }
    part.atLeast = mutuallyApart(withinTwoSteps(part.graph), mostApartSteps).length;
    const found = listsOf(part);
    const sets = { items: found.size, sets: found.bases.map((each) => [...each]) };
    part.bases = fewerSets(sets, part.bases, part.atLeast, mostSwaps, () => leftMs() <= 0);
    part.bases = swapBases(found, part.bases, mostSwapTries);
    if (part.items.length >= leastReported) report();
    if (!solver) {
      const known = { count: part.bases.length, alteration: alterationOf(found, part.bases) };
      const searched = searchBases(found, known, stepsLeft);
      stepsLeft = Math.max(0, stepsLeft - searched.steps);
      part.bases = searched.bases ?? part.bases;
      part.isLeastAlteration = searched.isProved;
      if (searched.isProved) part.atLeast = part.bases.length;
      continue;
    }
    if (part.atLeast < part.bases.length) {
      solver.fewestByCover(found, part, {
        solver,
        leftMs,
        onProgress: ({ bases, atLeast }) => {
          part.bases = bases;
          part.atLeast = atLeast;
          if (part.items.length >= leastReported) report();
        },
      });
    }
  }
  report();
  // How many comes first: the alteration is looked at when that is done everywhere.
  for (const part of parts) {
    if (!solver || part.isLeastAlteration || part.items.length > mostSearched) continue;
    const least = solver.leastAlteration(listsOf(part), part.bases, {
      solver,
      leftMs,
      onProgress: (bases) => {
        part.bases = bases;
        if (part.items.length >= leastReported) report();
      },
    });
    part.bases = least.bases;
    part.isLeastAlteration = least.isProved && part.atLeast === part.bases.length;
  }
  return answer();
}

/** Again and again the item that reaches most of those not reached yet; of equal ones the first. */
function greedyBases({ size, near }: Graph): readonly number[] {
  const gain = Int32Array.from(near, (row) => itemsOf(row).length + 1);
  const isReached = new Uint8Array(size);
  const bases: number[] = [];
  const reachItem = (item: number): void => {
    if (isReached[item] === 1) return;
    isReached[item] = 1;
    gain[item]!--;
    for (const other of itemsOf(near[item]!)) gain[other]!--;
  };
  for (let left = size; left > 0;) {
    const base = gain.reduce((most, value, item) => (value > gain[most]! ? item : most), 0);
    left -= gain[base]!;
    bases.push(base);
    reachItem(base);
    for (const item of itemsOf(near[base]!)) reachItem(item);
  }
  return bases;
}

/** Items with a base in common: of mutually apart ones, each needs a base of its own. */
function withinTwoSteps({ size, near }: Graph): Graph {
  const wide = near.map((row, item) => {
    const all = emptyBits(size);
    for (const other of [item, ...itemsOf(row)]) addRow(all, near[other]!);
    removeBit(all, item);
    return all;
  });
  return { size, near: wide };
}

/** A number of items of which no two have a base in common, those with fewest others near them first. */
function separate({ size, near }: Graph): number {
  const degree = near.map(countBits);
  const isTaken = emptyBits(size);
  let count = 0;
  for (const item of Array.from(degree.keys()).sort((a, b) => degree[a]! - degree[b]! || a - b)) {
    if (hasBit(isTaken, item)) continue;
    count++;
    addBit(isTaken, item);
    for (const other of [item, ...itemsOf(near[item]!)]) addRow(isTaken, near[other]!);
  }
  return count;
}

function addRow(bits: Bits, row: Bits): void {
  for (let word = 0; word < bits.length; word++) bits[word]! |= row[word]!;
}
