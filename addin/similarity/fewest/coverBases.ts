import type { ReachLists } from "./reachLists.ts";
import { alterationOf } from "./reachLists.ts";
import { swapBases } from "./searchBases.ts";
import type { OpenModel, Solver } from "./solver.ts";

/** Bases that reach all items of a set that hangs together. */
export interface FoundBases {
  readonly bases: readonly number[];
  readonly atLeast: number;
}

/**
 * The fewest bases by linear programming with branching: one variable an item, one row an item with all that could be its
 * base. Before that, the prices of the rows in the linear program give a bound free of rounding: the sum of the prices by
 * the greatest sum of prices that one base reaches.
 *
 * @param start bases to improve on
 */
export function fewestByCover(
  lists: ReachLists,
  start: FoundBases,
  options: {
    readonly solver: Solver;
    readonly leftMs: () => number;
    readonly onProgress: (found: FoundBases) => void;
  },
): FoundBases {
  const { solver, leftMs, onProgress } = options;
  let best = start;
  const improve = (change: Partial<FoundBases>): void => {
    best = { ...best, ...change };
    onProgress(best);
  };
  const model = solver.open(lists.size);
  try {
    // What an item can be served by is what it can serve.
    const rows = lists.bases.map((each) => [...each]);
    model.addVariables({ cost: 1, most: 1, isWhole: true, rows });
    const relaxed = model.relax(Math.max(0, leftMs()));
    if (!relaxed) return best;
    const prices = relaxed.rowPrices.map((price) => Math.max(0, Math.floor(price * scale)));
    const sum = prices.reduce((all, price) => all + price, 0);
    const dearest = rows.reduce(
      (most, each) =>
        Math.max(
          most,
          each.reduce((all, row) => all + prices[row]!, 0),
        ),
      1,
    );
    const bound = Math.ceil(sum / dearest - 1e-12);
    if (bound > best.atLeast) improve({ atLeast: bound });
    if (best.atLeast >= best.bases.length) return best;

    const take = (values: Float64Array): void => {
      const bases = itemsAbove(values);
      if (bases.length < best.bases.length) improve({ bases });
    };
    const found = model.solve({
      gap: 0.999,
      timeLimitMs: leftMs(),
      onBound: (atLeast) => {
        const least = Math.min(best.bases.length, Math.ceil(atLeast - 1e-6));
        if (least > best.atLeast) improve({ atLeast: least });
      },
      onAnswer: take,
    });
    if (found.values) take(found.values);
    if (found.outcome === "proved") improve({ atLeast: best.bases.length });
    return best;
  } finally {
    model.close();
  }
}

/** Prices are taken in whole parts of 1 / this. */
const scale = 2 ** 20;

export function chosenValues(size: number, chosen: readonly number[]): Float64Array {
  const values = new Float64Array(size);
  for (const item of chosen) values[item] = 1;
  return values;
}

export function itemsAbove(values: Float64Array): readonly number[] {
  return Array.from(values.keys()).filter((item) => values[item]! > 0.5);
}

export interface LeastAlteration {
  readonly bases: readonly number[];
  /** True when no choice of as many bases needs less, to a millionth of a tolerance. */
  readonly isProved: boolean;
}

/** Differences below this many tolerances are not told apart. */
const precision = 1e-6;
const mostRounds = 200;
const mostSwapTries = 20_000;

/**
 * Of all choices of as many bases, one with the least alteration in all. One variable an item says whether it is a base, a
 * second one how far it is from its base. Rows that say how far that must be are added only where they are needed
 * (Benders’ method for the p-median problem; Duran-Mateluna, Ales & Elloumi 2023): with D the distance to the
 * nearest bases that add up to one, far ≥ D − Σ (D − d) · base over all nearer ones.
 *
 * @param start bases that reach all items; their number stays
 */
export function leastAlteration(
  lists: ReachLists,
  start: readonly number[],
  options: {
    readonly solver: Solver;
    readonly leftMs: () => number;
    readonly onProgress: (bases: readonly number[]) => void;
  },
): LeastAlteration {
  const { solver, leftMs, onProgress } = options;
  const { size } = lists;
  let best = { bases: start, alteration: alterationOf(lists, start) };
  const consider = (bases: readonly number[]): void => {
    const alteration = alterationOf(lists, bases);
    if (bases.length > start.length || alteration >= best.alteration) return;
    best = { bases, alteration };
    onProgress(bases);
  };
  const model = solver.open(size);
  try {
    model.addVariables({ cost: 0, most: 1, isWhole: true, rows: lists.bases.map((each) => [...each]) });
    model.addVariables({ cost: 1, most: Infinity, isWhole: false, rows: lists.bases.map(() => []) });
    // No more bases than that.
    model.addRow(-start.length, [...Array(size).keys()], Array<number>(size).fill(-1));
    const isFixed = new Uint8Array(size);
    for (let round = 0; round < mostRounds; round++) {
      const relaxed = leftMs() > 0 ? model.relax(leftMs()) : undefined;
      if (!relaxed) return { bases: best.bases, isProved: false };
      if (relaxed.objective >= best.alteration - precision) return { bases: best.bases, isProved: true };
      if (addCuts(model, lists, relaxed.values) > 0) continue;
      // The relaxed answer is complete: round it, and leave out what cannot be in a better answer.
      consider(swapBases(lists, rounded(lists, relaxed.values, start.length) ?? best.bases, mostSwapTries));
      const room = best.alteration - relaxed.objective;
      for (let item = 0; item < size; item++) {
        if (isFixed[item] === 1 || relaxed.values[item]! > 0) continue;
        if (relaxed.variablePrices[item]! <= room + precision) continue;
        isFixed[item] = 1;
        model.fix(item, 0);
      }
      break;
    }
    for (let round = 0; round < mostRounds; round++) {
      if (leftMs() <= 0) return { bases: best.bases, isProved: false };
      const found = model.solve({
        start: valuesOf(lists, best.bases),
        gap: precision / 10,
        timeLimitMs: leftMs(),
      });
      if (found.outcome === "none" || found.atLeast >= best.alteration - precision) {
        return { bases: best.bases, isProved: true };
      }
      if (!found.values) return { bases: best.bases, isProved: false };
      consider(itemsAbove(found.values.subarray(0, size)));
      if (found.atLeast >= best.alteration - precision) return { bases: best.bases, isProved: true };
      if (found.outcome === "limit" || addCuts(model, lists, found.values) === 0) {
        return { bases: best.bases, isProved: found.outcome === "proved" };
      }
    }
    return { bases: best.bases, isProved: false };
  } finally {
    model.close();
  }
}

/** Adds the row of each item whose distance is too small for the bases given. Returns how many were added. */
function addCuts(model: OpenModel, { bases, far, size }: ReachLists, values: Float64Array): number {
  let added = 0;
  for (let item = 0; item < size; item++) {
    const [near, distances] = [bases[item]!, far[item]!];
    let sum = 0;
    let last = 0;
    while (last < near.length - 1 && (sum += values[near[last]!]!) < 1 - 1e-9) last++;
    const most = distances[last]!;
    let needed = most;
    for (let at = 0; distances[at]! < most; at++) needed -= (most - distances[at]!) * values[near[at]!]!;
    if (needed <= values[size + item]! + precision / 10) continue;
    const nearer = distances.findIndex((distance) => distance >= most);
    model.addRow(
      most,
      [size + item, ...near.subarray(0, nearer)],
      [1, ...Array.from(distances.subarray(0, nearer), (distance) => most - distance)],
    );
    added++;
  }
  return added;
}

/** The items most of which is chosen, when those reach all. */
function rounded(lists: ReachLists, values: Float64Array, count: number): readonly number[] | undefined {
  const items = Array.from({ length: lists.size }, (_, item) => item);
  const chosen = items.sort((a, b) => values[b]! - values[a]! || a - b).slice(0, count);
  return alterationOf(lists, chosen) < Infinity ? chosen : undefined;
}

function valuesOf(lists: ReachLists, chosen: readonly number[]): Float64Array {
  const values = new Float64Array(2 * lists.size);
  values.set(chosenValues(lists.size, chosen));
  const isBase = new Set(chosen);
  lists.bases.forEach((each, item) => {
    const at = each.findIndex((base) => isBase.has(base));
    values[lists.size + item] = lists.far[item]![at]!;
  });
  return values;
}
