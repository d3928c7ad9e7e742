/** Variables that are to be added to a model, each from 0 to `most`. */
export interface NewVariables {
  readonly cost: number;
  readonly most: number;
  readonly isWhole: boolean;
  /** By variable: the rows that it counts in, with 1 each. */
  readonly rows: readonly (readonly number[])[];
}

/** A linear model: rows of which each sum is at least some amount; the least sum of costs is wanted. */
export interface OpenModel {
  addVariables(variables: NewVariables): void;
  /** Adds a row Σ values · variables ≥ `least`. */
  addRow(least: number, variables: readonly number[], values: readonly number[]): void;
  /** Fixes a variable at a value. */
  fix(variable: number, value: number): void;
  /** The best fractions, without regard to what must be whole; `undefined` after the limit. */
  relax(timeLimitMs: number): Relaxed | undefined;
  /** The best whole numbers. */
  solve(options: SolveWhole): Whole;
  /** Must be called when the model is not needed any more. */
  close(): void;
}

export interface Relaxed {
  readonly objective: number;
  readonly values: Float64Array;
  /** What one more of each row would cost. */
  readonly rowPrices: Float64Array;
  /** What one more of each variable would cost. */
  readonly variablePrices: Float64Array;
}

export interface SolveWhole {
  /** A known answer to start from. */
  readonly start?: Float64Array;
  /** An answer no more than this above the bound counts as the best. */
  readonly gap: number;
  readonly timeLimitMs: number;
  /** Called with every better bound. */
  readonly onBound?: (atLeast: number) => void;
  /** Called with every better answer. */
  readonly onAnswer?: (values: Float64Array) => void;
}

export interface Whole {
  /** `none`: it is proved that nothing satisfies every row. */
  readonly outcome: "proved" | "limit" | "none";
  readonly values?: Float64Array;
  /** No answer costs less than this. */
  readonly atLeast: number;
}

/** Solves linear models. Handed in, so that nothing here loads a solver. */
export interface Solver {
  /** An empty model with so many rows Σ ≥ 1. */
  open(rows: number): OpenModel;
}
