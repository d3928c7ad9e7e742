import type { ReachLists } from "./reachLists.ts";
import { alterationOf } from "./reachLists.ts";

/** Sets to choose from, so that every item is in one that is chosen. */
export interface SetsOfItems {
  readonly items: number;
  readonly sets: readonly (readonly number[])[];
}

/**
 * Looks for fewer sets that still cover all items: takes a set away, then swaps sets while the items that stay uncovered
 * gain weight (row-weighting local search; Gao, Weise & Li 2015).
 *
 * @param start numbers of sets that cover all items
 * @param atLeast no cover has fewer sets
 * @param mostSwaps swaps that are tried after the last better answer
 * @returns numbers of sets, lowest first
 */
export function fewerSets(
  { items, sets }: SetsOfItems,
  start: readonly number[],
  atLeast: number,
  mostSwaps: number,
  isOver: () => boolean = () => false,
): readonly number[] {
  const random = seeded(1);
  const setsOf: number[][] = Array.from({ length: items }, () => []);
  sets.forEach((set, s) => {
    set.forEach((item) => setsOf[item]!.push(s));
  });
  const weight = new Float64Array(items).fill(1);
  const timesCovered = new Int32Array(items);
  const isChosen = new Uint8Array(sets.length);
  /** Outside: the weight that the set would newly cover. Chosen: minus the weight that it alone covers. */
  const score = Float64Array.from(sets, (set) => set.length);
  const changedAt = new Float64Array(sets.length);
  const mayReturn = new Uint8Array(sets.length).fill(1);
  const chosen: number[] = [];
  const uncovered: number[] = Array.from({ length: items }, (_, item) => item);
  const placeOf = Int32Array.from(uncovered);

  const add = (set: number): void => {
    isChosen[set] = 1;
    chosen.push(set);
    score[set] = -score[set]!;
    for (const item of sets[set]!) {
      const times = ++timesCovered[item]!;
      if (times === 1) {
        const last = uncovered.pop()!;
        const place = placeOf[item]!;
        if (last !== item) {
          uncovered[place] = last;
          placeOf[last] = place;
        }
      }
      for (const other of setsOf[item]!) {
        mayReturn[other] = 1;
        if (other === set) continue;
        if (times === 1) score[other]! -= weight[item]!;
        else if (times === 2 && isChosen[other] === 1) score[other]! += weight[item]!;
      }
    }
  };
  const remove = (set: number): void => {
    isChosen[set] = 0;
    chosen.splice(chosen.indexOf(set), 1);
    score[set] = -score[set]!;
    for (const item of sets[set]!) {
      const times = --timesCovered[item]!;
      if (times === 0) placeOf[item] = uncovered.push(item) - 1;
      for (const other of setsOf[item]!) {
        mayReturn[other] = 1;
        if (other === set) continue;
        if (times === 0) score[other]! += weight[item]!;
        else if (times === 1 && isChosen[other] === 1) score[other]! -= weight[item]!;
      }
    }
    mayReturn[set] = 0;
  };
  const leastLoss = (except: number): number => {
    let best = -1;
    for (const set of chosen) {
      if (set === except) continue;
      const lead = best < 0 ? 1 : score[set]! - score[best]! || changedAt[best]! - changedAt[set]!;
      if (lead > 0) best = set;
    }
    return best;
  };

  start.forEach(add);
  let best: readonly number[] = [...start];
  let justAdded = -1;
  for (let swap = 1, since = 0; since < mostSwaps; swap++, since++) {
    while (uncovered.length === 0) {
      best = [...chosen];
      since = 0;
      if (best.length <= Math.max(1, atLeast)) return sorted(best);
      remove(leastLoss(-1));
    }
    if (swap % 256 === 0 && isOver()) break;
    const other = leastLoss(justAdded);
    const out = other >= 0 ? other : leastLoss(-1);
    if (out >= 0) {
      remove(out);
      changedAt[out] = swap;
    }
    const item = uncovered[Math.floor(random() * uncovered.length)]!;
    let set = -1;
    for (const each of setsOf[item]!) {
      if (mayReturn[each] === 0) continue;
      const lead = set < 0 ? 1 : score[each]! - score[set]! || changedAt[set]! - changedAt[each]!;
      if (lead > 0) set = each;
    }
    if (set < 0) set = setsOf[item]![0]!;
    add(set);
    changedAt[set] = swap;
    justAdded = set;
    for (const left of uncovered) {
      weight[left]!++;
      for (const each of setsOf[left]!) score[each]!++;
    }
  }
  return sorted(best);
}

function sorted(sets: readonly number[]): readonly number[] {
  return [...sets].sort((a, b) => a - b);
}

/** Numbers from 0 to below 1 that look random and are the same each time: mulberry32 (T. Ettinger, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * Less alteration with the same number of bases: each base is swapped for another item as long as that helps (interchange;
 * Teitz & Bart 1968). Every item stays within reach of a base.
 *
 * @param mostTries swaps that are tried
 */
export function swapBases(lists: ReachLists, bases: readonly number[], mostTries: number): readonly number[] {
  const chosen = [...bases].sort((a, b) => a - b);
  const isBase = new Uint8Array(lists.size);
  for (const base of chosen) isBase[base] = 1;
  let least = alterationOf(lists, chosen);
  let tries = 0;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (let at = 0; at < chosen.length; at++) {
      const out = chosen[at]!;
      // A swapped base still has to reach what it alone reached, so it is near one of those.
      for (const into of candidates(lists, out, isBase)) {
        if (++tries > mostTries) return chosen;
        chosen[at] = into;
        const alteration = alterationOf(lists, chosen);
        if (alteration < least) {
          least = alteration;
          isBetter = true;
          isBase[out] = 0;
          isBase[into] = 1;
          break;
        }
        chosen[at] = out;
      }
    }
  }
  return chosen;
}

/** The items that reach all items which only this base reaches now. */
function candidates({ bases, size }: ReachLists, out: number, isBase: Uint8Array): readonly number[] {
  const times = new Int32Array(size);
  let needed = 0;
  for (const item of bases[out]!) {
    if (bases[item]!.some((base) => base !== out && isBase[base] === 1)) continue;
    needed++;
    for (const base of bases[item]!) times[base]!++;
  }
  return Array.from(times.keys()).filter((item) => times[item] === needed && isBase[item] === 0);
}

export interface SearchedBases {
  /** Absent when nothing better than asked for was found. */
  readonly bases?: readonly number[];
  /** True when it is proved that nothing is better. */
  readonly isProved: boolean;
  readonly steps: number;
}

/**
 * The fewest bases, and of all answers with as few the one with the least total alteration, by branch and bound: each step
 * takes the item that fewest candidates are left for, and tries those, nearest first.
 *
 * @param known the answer to improve on
 * @param mostSteps bases tried in the search
 */
export function searchBases(
  lists: ReachLists,
  known: { readonly count: number; readonly alteration: number },
  mostSteps: number,
): SearchedBases {
  const { size, bases: near, far } = lists;
  let best: { bases?: readonly number[]; count: number; alteration: number } = { ...known };
  const isRuledOut = new Uint8Array(size);
  const isChosen = new Uint8Array(size);
  const timesCovered = new Int32Array(size);
  const left = Int32Array.from(near, (each) => each.length);
  const isTaken = new Int32Array(size);
  const chosen: number[] = [];
  let steps = 0;
  let round = 0;

  /** A number of open items of which no two have a candidate in common: so many bases are needed. */
  const separate = (open: readonly number[]): number => {
    round++;
    let count = 0;
    for (const item of open) {
      const candidates = near[item]!;
      if (candidates.some((each) => isRuledOut[each] === 0 && isTaken[each] === round)) continue;
      candidates.forEach((each) => (isTaken[each] = round));
      count++;
    }
    return count;
  };

  /** The least that the alterations can add up to when nothing that is ruled out becomes a base. */
  const leastAlteration = (): number => {
    let sum = 0;
    for (let item = 0; item < size; item++) {
      const at = near[item]!.findIndex((each) => isRuledOut[each] === 0 || isChosen[each] === 1);
      if (at >= 0) sum += far[item]![at]!;
    }
    return sum;
  };

  const alteration = (): number => {
    let sum = 0;
    for (let item = 0; item < size; item++) {
      sum += far[item]![near[item]!.findIndex((each) => isChosen[each] === 1)]!;
    }
    return sum;
  };

  const choose = (base: number, by: 1 | -1): void => {
    near[base]!.forEach((item) => (timesCovered[item]! += by));
    isChosen[base] = by === 1 ? 1 : 0;
    if (by === 1) chosen.push(base);
    else chosen.pop();
  };

  const ruleOut = (base: number, isOut: boolean): void => {
    isRuledOut[base] = isOut ? 1 : 0;
    near[base]!.forEach((item) => (left[item]! += isOut ? -1 : 1));
  };

  // Returns false when the steps are used up.
  const descend = (): boolean => {
    const open: number[] = [];
    for (let item = 0; item < size; item++) if (timesCovered[item] === 0) open.push(item);
    if (open.length === 0) {
      const sum = alteration();
      if (chosen.length < best.count || (chosen.length === best.count && sum < best.alteration)) {
        best = { bases: [...chosen].sort((a, b) => a - b), count: chosen.length, alteration: sum };
      }
      return true;
    }
    open.sort((a, b) => left[a]! - left[b]! || a - b);
    const needed = chosen.length + separate(open);
    if (needed > best.count) return true;
    if (needed === best.count && leastAlteration() >= best.alteration) return true;
    const candidates = near[open[0]!]!.filter((each) => isRuledOut[each] === 0);
    const tried: number[] = [];
    let isDone = true;
    for (const base of candidates) {
      if (++steps > mostSteps) isDone = false;
      if (!isDone) break;
      ruleOut(base, true);
      tried.push(base);
      choose(base, 1);
      isDone = descend();
      choose(base, -1);
    }
    tried.forEach((base) => {
      ruleOut(base, false);
    });
    return isDone;
  };

  const isProved = descend();
  return { ...(best.bases && { bases: best.bases }), isProved, steps };
}
