import type { ReachLists } from "./reachLists.ts";

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
