import { hasBit } from "./bits.ts";
import type { Graph } from "./graph.ts";

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

function groupsOf(groupOf: Int32Array, count: number): readonly (readonly number[])[] {
  const groups: number[][] = Array.from({ length: count }, () => []);
  groupOf.forEach((group, item) => groups[group]!.push(item));
  return groups;
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
