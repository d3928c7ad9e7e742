import { isWithin } from "./within.ts";

/** As few base figures as possible, so that every figure is within reach of one. */
export interface FewestBases {
  /** The base of each item; a base is its own. */
  readonly baseOf: Int32Array;
  readonly count: number;
  /** The sum of the alterations from each base to the items that it serves. */
  readonly alteration: number;
  /** No answer has fewer bases than this. Equal to `count` when that is proved to be the fewest. */
  readonly atLeast: number;
  /** True when it is proved that no answer with as few bases needs less alteration. */
  readonly isLeastAlteration: boolean;
}

/**
 * The fewest bases, and of all answers with as few the one with the least total alteration: minimum set cover by branch and
 * bound. Each step takes the item that fewest candidates are left for, and tries those, nearest first. There is always an
 * answer: the greedy one, improved until it is proved or the steps are used up. Each item is served by its nearest base,
 * of equal ones the first.
 *
 * @param size number of items
 * @param distance alteration from one item to another, the same both ways; NaN when it is not known
 * @param reach the most that one base may be altered
 * @param mostSteps bases tried in the search
 */
export function fewestBases(
  size: number,
  distance: (i: number, j: number) => number,
  reach: number,
  mostSteps = 1_000_000,
): FewestBases {
  const far = (i: number, j: number) => (i === j ? 0 : distance(Math.min(i, j), Math.max(i, j)));
  /** The items within reach of each, nearest first, itself before all. */
  const near = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, j) => j)
      .filter((j) => isWithin(far(i, j), reach))
      .sort((a, b) => Number(b === i) - Number(a === i) || far(i, a) - far(i, b) || a - b),
  );
  const total = (bases: readonly number[]) =>
    near.reduce((sum, candidates, i) => {
      const base = candidates.find((candidate) => bases.includes(candidate));
      return sum + (base === undefined ? 0 : far(i, base));
    }, 0);

  const greedy = greedyCover(near);
  let best: { bases: readonly number[]; alteration: number } = { bases: greedy, alteration: total(greedy) };
  const isRuledOut = new Uint8Array(size);
  const timesCovered = new Int32Array(size);
  const chosen: number[] = [];
  let steps = 0;

  const choose = (base: number, by: 1 | -1): void => {
    near[base]!.forEach((item) => (timesCovered[item]! += by));
    if (by === 1) chosen.push(base);
    else chosen.pop();
  };

  /** The least that the alterations can add up to when nothing that is ruled out becomes a base. */
  const leastAlteration = (): number => {
    let sum = 0;
    for (let item = 0; item < size; item++) {
      const candidate = near[item]!.find((each) => isRuledOut[each] === 0 || chosen.includes(each));
      if (candidate !== undefined) sum += far(item, candidate);
    }
    return sum;
  };

  // Returns false when the steps are used up.
  const descend = (): boolean => {
    const open = openItems(near, timesCovered, isRuledOut);
    if (open.length === 0) {
      const alteration = total(chosen);
      const isFewer = chosen.length < best.bases.length;
      if (isFewer || (chosen.length === best.bases.length && alteration < best.alteration)) {
        best = { bases: [...chosen], alteration };
      }
      return true;
    }
    const needed = chosen.length + separate(open, near, isRuledOut);
    if (needed > best.bases.length) return true;
    if (needed === best.bases.length && leastAlteration() >= best.alteration) return true;
    const candidates = near[open[0]!]!.filter((each) => isRuledOut[each] === 0);
    const tried: number[] = [];
    let isDone = true;
    for (const base of candidates) {
      if (++steps > mostSteps) isDone = false;
      if (!isDone) break;
      isRuledOut[base] = 1;
      tried.push(base);
      choose(base, 1);
      isDone = descend();
      choose(base, -1);
    }
    tried.forEach((base) => (isRuledOut[base] = 0));
    return isDone;
  };

  const nothing = openItems(near, timesCovered, isRuledOut);
  const atLeast = separate(nothing, near, isRuledOut);
  const isProved = descend();
  return {
    baseOf: Int32Array.from(near, (candidates) => candidates.find((each) => best.bases.includes(each))!),
    count: best.bases.length,
    alteration: best.alteration,
    atLeast: isProved ? best.bases.length : atLeast,
    isLeastAlteration: isProved,
  };
}

/** Again and again the item that serves most of those not served yet; of equal ones the first. */
function greedyCover(near: readonly (readonly number[])[]): readonly number[] {
  const isCovered = new Uint8Array(near.length);
  const gain = (base: number) => near[base]!.filter((item) => isCovered[item] === 0).length;
  const bases: number[] = [];
  while (isCovered.includes(0)) {
    const base = near.reduce((most, _, each) => (gain(each) > gain(most) ? each : most), 0);
    bases.push(base);
    near[base]!.forEach((item) => (isCovered[item] = 1));
  }
  return bases;
}

/** The items not served yet, those with fewest candidates first. */
function openItems(
  near: readonly (readonly number[])[],
  timesCovered: Int32Array,
  isRuledOut: Uint8Array,
): readonly number[] {
  const left = (item: number) => near[item]!.filter((each) => isRuledOut[each] === 0).length;
  return near
    .flatMap((_, item) => (timesCovered[item] === 0 ? [{ item, left: left(item) }] : []))
    .sort((a, b) => a.left - b.left || a.item - b.item)
    .map(({ item }) => item);
}

/** A number of items of which no two have a candidate in common: so many bases are needed. */
function separate(
  items: readonly number[],
  near: readonly (readonly number[])[],
  isRuledOut: Uint8Array,
): number {
  const isTaken = new Uint8Array(near.length);
  let count = 0;
  for (const item of items) {
    const candidates = near[item]!.filter((each) => isRuledOut[each] === 0);
    if (candidates.some((each) => isTaken[each] === 1)) continue;
    candidates.forEach((each) => (isTaken[each] = 1));
    count++;
  }
  return count;
}
