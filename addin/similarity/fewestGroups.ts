/** Items in as few groups as possible, every two of a group within reach of each other. */
export interface FewestGroups {
  /** The group of each item, from 1 in the order of first appearance. */
  readonly groups: Int32Array;
  readonly count: number;
  /** No answer has fewer groups than this. Equal to `count` when that is proved to be the fewest. */
  readonly atLeast: number;
}

/**
 * The fewest groups: a smallest clique cover, found as a colouring of the pairs that must be kept apart by branch and bound
 * with DSATUR (Brélaz 1979), for each set of items that hang together by itself. There is always an answer: the greedy
 * one, improved until it is proved or the steps are used up.
 *
 * @param size number of items
 * @param isTogether true when items i < j may be in one group
 * @param mostSteps items placed in the search, for each set that hangs together
 * @example fewestGroups(3, (i, j) => j - i === 1) // { groups: [1, 1, 2], count: 2, atLeast: 2 }
 */
export function fewestGroups(
  size: number,
  isTogether: (i: number, j: number) => boolean,
  mostSteps = 1_000_000,
): FewestGroups {
  const groups = new Int32Array(size);
  let count = 0;
  let atLeast = 0;
  for (const items of components(size, isTogether)) {
    const found = solve(apartness(items, isTogether), mostSteps);
    items.forEach((item, at) => (groups[item] = count + found.groups[at]! + 1));
    count += found.count;
    atLeast += found.atLeast;
  }
  return { groups: byFirstAppearance(groups), count, atLeast };
}

/** Items that hang together over any number of pairs, lowest first. */
function components(
  size: number,
  isTogether: (i: number, j: number) => boolean,
): readonly (readonly number[])[] {
  const isPlaced = new Uint8Array(size);
  const found: number[][] = [];
  for (let first = 0; first < size; first++) {
    if (isPlaced[first]) continue;
    isPlaced[first] = 1;
    const items = [first];
    // The list grows while it is walked through.
    for (const item of items) {
      for (let other = 0; other < size; other++) {
        if (isPlaced[other] || !isTogether(Math.min(item, other), Math.max(item, other))) continue;
        isPlaced[other] = 1;
        items.push(other);
      }
    }
    found.push(items.sort((a, b) => a - b));
  }
  return found;
}

/** The items that each item must be kept apart from. */
function apartness(
  items: readonly number[],
  isTogether: (i: number, j: number) => boolean,
): readonly (readonly number[])[] {
  return items.map((i, at) =>
    items.flatMap((j, other) => (other !== at && !isTogether(Math.min(i, j), Math.max(i, j)) ? [other] : [])),
  );
}

/** Groups from 0 for one set that hangs together. */
function solve(apart: readonly (readonly number[])[], mostSteps: number): FewestGroups {
  const seeds = mutuallyApart(apart);
  const atLeast = Math.max(1, seeds.length);
  const search = createSearch(apart);
  seeds.forEach((item, group) => search.place(item, group));
  let best = { groups: new Int32Array(apart.length), count: Infinity };
  let steps = 0;

  // Returns false when the steps are used up.
  const descend = (used: number): boolean => {
    if (used >= best.count) return true;
    const item = search.hardest();
    if (item === undefined) {
      best = { groups: search.groups.slice(), count: used };
      return true;
    }
    // One group that is not in use yet stands for all of those; more than the best answer has are not worth a try.
    for (let group = 0; group <= used && group < best.count - 1 && best.count > atLeast; group++) {
      if (!search.isFree(item, group)) continue;
      if (steps >= mostSteps && best.count < Infinity) return false;
      steps++;
      search.place(item, group);
      const isDone = descend(Math.max(used, group + 1));
      search.takeBack(item, group);
      if (!isDone) return false;
    }
    return true;
  };

  const isProved = descend(seeds.length);
  return { groups: best.groups, count: best.count, atLeast: isProved ? best.count : atLeast };
}

/** Items of which every two must be kept apart, each in a group of its own: as many as a greedy choice finds. */
function mutuallyApart(apart: readonly (readonly number[])[]): readonly number[] {
  const sets = apart.map((each) => new Set(each));
  const order = apart.map((_, item) => item).sort((a, b) => sets[b]!.size - sets[a]!.size || a - b);
  let best: readonly number[] = [];
  for (const first of order.slice(0, mostStarts)) {
    const chosen = [first];
    for (const item of order) {
      if (chosen.every((other) => sets[item]!.has(other))) chosen.push(item);
    }
    if (chosen.length > best.length) best = chosen;
  }
  return best;
}

/** Enough to find a good bound without costing more than the search. */
const mostStarts = 50;

interface Search {
  readonly groups: Int32Array;
  isFree(item: number, group: number): boolean;
  place(item: number, group: number): void;
  takeBack(item: number, group: number): void;
  /** The item not placed yet that fewest groups are left for; of equal ones that with most items to keep apart from. */
  hardest(): number | undefined;
}

function createSearch(apart: readonly (readonly number[])[]): Search {
  const size = apart.length;
  const groups = new Int32Array(size).fill(-1);
  /** By item and group: how many items of the group the item must be kept apart from. */
  const against = apart.map(() => new Int32Array(size));
  const closed = new Int32Array(size);
  return {
    groups,
    isFree: (item, group) => against[item]![group] === 0,
    place(item, group) {
      groups[item] = group;
      for (const other of apart[item]!) {
        const before = against[other]![group]!++;
        if (before === 0) closed[other]!++;
      }
    },
    takeBack(item, group) {
      groups[item] = -1;
      for (const other of apart[item]!) {
        const left = --against[other]![group]!;
        if (left === 0) closed[other]!--;
      }
    },
    hardest() {
      let hardest: number | undefined;
      for (let item = 0; item < size; item++) {
        if (groups[item]! >= 0) continue;
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

function byFirstAppearance(groups: Int32Array): Int32Array {
  const numbers = new Map<number, number>();
  return groups.map((group) => {
    const number = numbers.get(group) ?? numbers.size + 1;
    numbers.set(group, number);
    return number;
  });
}
