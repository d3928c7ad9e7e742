import type { ReachLists } from "./reachLists.ts";
import type { Solver } from "./solver.ts";

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
