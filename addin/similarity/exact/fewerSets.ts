import { seeded } from "./seeded.ts";

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
