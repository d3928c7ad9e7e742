import { hasBit } from "./bits.ts";
import type { Graph } from "./graph.ts";
import { seeded } from "./searchBases.ts";

/**
 * Looks for a partition into fewer groups, one group less at a time: the smallest group is dealt out among the others, then
 * the item in the way of most others is moved again and again, and not back for a while (tabu search; Hertz & de Werra
 * 1987, with the items that must be kept apart as the edges).
 *
 * @param groups groups of which every two items are within reach
 * @param atLeast no partition has fewer groups
 * @param mostMoves moves that are tried for each number of groups
 * @param isOver true when the search must end
 */
export function fewerGroups(
  graph: Graph,
  groups: readonly (readonly number[])[],
  atLeast: number,
  mostMoves: number,
  isOver: () => boolean = () => false,
): readonly (readonly number[])[] {
  const random = seeded(1);
  const apart = apartLists(graph);
  let best = groups;
  while (best.length > atLeast && best.length > 1 && !isOver()) {
    const fewer = withOneLess(apart, best, mostMoves, random, isOver);
    if (!fewer) return best;
    best = fewer;
  }
  return best;
}

/** By item: the others that it must be kept apart from. */
function apartLists({ near, size }: Graph): readonly Int32Array[] {
  return near.map((row, item) =>
    Int32Array.from(
      Array.from({ length: size }, (_, other) => other).filter(
        (other) => other !== item && !hasBit(row, other),
      ),
    ),
  );
}

function withOneLess(
  apart: readonly Int32Array[],
  groups: readonly (readonly number[])[],
  mostMoves: number,
  random: () => number,
  isOver: () => boolean,
): readonly (readonly number[])[] | undefined {
  const size = apart.length;
  const count = groups.length - 1;
  const smallestLast = [...groups].sort((a, b) => b.length - a.length);
  const groupOf = new Int32Array(size).fill(-1);
  /** By item and group: how many of the group the item must be kept apart from. */
  const against = new Int32Array(size * count);
  const tabuUntil = new Int32Array(size * count);
  const place = (item: number, group: number): void => {
    const from = groupOf[item]!;
    for (const other of apart[item]!) {
      if (from >= 0) against[other * count + from]!--;
      against[other * count + group]!++;
    }
    groupOf[item] = group;
  };
  smallestLast.forEach((items, group) => {
    if (group < count)
      items.forEach((item) => {
        place(item, group);
      });
  });
  for (const item of smallestLast.at(-1) ?? []) place(item, leastAgainst(against, item, count));

  let conflicts = 0;
  for (let item = 0; item < size; item++) conflicts += against[item * count + groupOf[item]!]!;
  conflicts /= 2;
  let fewest = conflicts;
  for (let move = 1; conflicts > 0; move++) {
    if (move > mostMoves || (move % 1024 === 0 && isOver())) return undefined;
    let bestChange = Infinity;
    let chosenItem = -1;
    let chosenGroup = -1;
    let ties = 0;
    let inTheWay = 0;
    for (let item = 0; item < size; item++) {
      const own = against[item * count + groupOf[item]!]!;
      if (own === 0) continue;
      inTheWay++;
      for (let group = 0, at = item * count; group < count; group++, at++) {
        if (group === groupOf[item]) continue;
        const change = against[at]! - own;
        if (change > bestChange) continue;
        if (tabuUntil[at]! >= move && conflicts + change >= fewest) continue;
        if (change < bestChange) ties = 0;
        ties++;
        if (random() * ties >= 1) continue;
        bestChange = change;
        chosenItem = item;
        chosenGroup = group;
      }
    }
    if (chosenItem < 0) continue;
    tabuUntil[chosenItem * count + groupOf[chosenItem]!] =
      move + Math.floor(10 * random()) + Math.floor(0.6 * inTheWay);
    place(chosenItem, chosenGroup);
    conflicts += bestChange;
    fewest = Math.min(fewest, conflicts);
  }
  return groupsOf(groupOf, count);
}

function leastAgainst(against: Int32Array, item: number, count: number): number {
  let least = 0;
  for (let group = 1; group < count; group++) {
    if (against[item * count + group]! < against[item * count + least]!) least = group;
  }
  return least;
}

function groupsOf(groupOf: Int32Array, count: number): readonly (readonly number[])[] {
  const groups: number[][] = Array.from({ length: count }, () => []);
  groupOf.forEach((group, item) => groups[group]!.push(item));
  return groups.filter((items) => items.length > 0);
}

/** What a search in steps found. */
export interface SearchedGroups {
  /** Absent when nothing better than asked for was found. */
  readonly groups?: readonly (readonly number[])[];
  /** True when it is proved that no partition has fewer groups than found, or asked for. */
  readonly isProved: boolean;
  readonly steps: number;
}

/**
 * The fewest groups as a colouring of the pairs that must be kept apart, by branch and bound with DSATUR (Brélaz 1979).
 *
 * @param seeds items that are mutually apart: each starts a group
 * @param fewerThan only a partition into fewer groups is of interest
 * @param mostSteps items placed in the search
 */
export function searchGroups(
  graph: Graph,
  seeds: readonly number[],
  fewerThan: number,
  mostSteps: number,
): SearchedGroups {
  const search = createSearch(graph);
  seeds.forEach((item, group) => {
    search.place(item, group);
  });
  let best: { readonly groupOf: Int32Array; readonly count: number } | undefined;
  let limit = fewerThan;
  let steps = 0;

  // Returns false when the steps are used up.
  const descend = (used: number): boolean => {
    if (used >= limit) return true;
    const item = search.hardest();
    if (item === undefined) {
      best = { groupOf: search.groupOf.slice(), count: used };
      limit = used;
      return true;
    }
    // One group that is not in use yet stands for all of those.
    for (let group = 0; group <= used && group < limit - 1 && limit > seeds.length; group++) {
      if (!search.isFree(item, group)) continue;
      if (steps >= mostSteps) return false;
      steps++;
      search.place(item, group);
      const isDone = descend(Math.max(used, group + 1));
      search.takeBack(item, group);
      if (!isDone) return false;
    }
    return true;
  };

  const isProved = descend(seeds.length);
  return { ...(best && { groups: groupsOf(best.groupOf, best.count) }), isProved, steps };
}

interface Search {
  readonly groupOf: Int32Array;
  isFree(item: number, group: number): boolean;
  place(item: number, group: number): void;
  takeBack(item: number, group: number): void;
  /** The item not placed yet that fewest groups are left for; of equal ones that with most items to keep apart from. */
  hardest(): number | undefined;
}

function createSearch({ near, size }: Graph): Search {
  const items = Array.from({ length: size }, (_, item) => item);
  const apart = near.map((row, item) => items.filter((other) => other !== item && !hasBit(row, other)));
  const groupOf = new Int32Array(size).fill(-1);
  /** By item and group: how many items of the group the item must be kept apart from. */
  const against = apart.map(() => new Int32Array(size));
  const closed = new Int32Array(size);
  return {
    groupOf,
    isFree: (item, group) => against[item]![group] === 0,
    place(item, group) {
      groupOf[item] = group;
      for (const other of apart[item]!) {
        const before = against[other]![group]!++;
        if (before === 0) closed[other]!++;
      }
    },
    takeBack(item, group) {
      groupOf[item] = -1;
      for (const other of apart[item]!) {
        const left = --against[other]![group]!;
        if (left === 0) closed[other]!--;
      }
    },
    hardest() {
      let hardest: number | undefined;
      for (let item = 0; item < size; item++) {
        if (groupOf[item]! >= 0) continue;
        const lead =
          hardest === undefined
            ? 1
            : closed[item]! - closed[hardest]! || apart[item]!.length - apart[hardest]!.length;
        if (lead > 0) hardest = item;
      }
      return hardest;
    },
  };
}
