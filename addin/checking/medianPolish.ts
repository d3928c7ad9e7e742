import { medianInPlace, medianOf } from "./medianOf.ts";

/** value = overall + row + column + residual */
export interface MedianPolish {
  readonly overall: number;
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** Row by row; NaN where the value is missing. */
  readonly residuals: readonly (readonly number[])[];
  readonly iterations: number;
  readonly converged: boolean;
}

/**
 * Two-way median polish: takes row medians and column medians out in turn until nothing moves.
 * Rows first, and the same stopping rule as `medpolish` of R, so that both give the same numbers.
 *
 * Source: Tukey, Exploratory Data Analysis (1977), chapter 11.
 *
 * @param table row by row, all rows of one length; NaN is missing. The
 *   effect of a row or column without any value is NaN.
 * @param options `eps`: stop when the sum of absolute residuals changes by less than this share of itself; `from`: effects to
 *   begin with, of a table with the same rows and columns
 * @example
 * medianPolish([[1, 2], [3, 4]]); // overall 2.5, rows [-1, 1], columns [-0.5, 0.5], residuals 0
 */
export function medianPolish(
  table: readonly (readonly number[])[],
  {
    eps = 0.01,
    maxIterations = 10,
    from,
  }: {
    readonly eps?: number;
    readonly maxIterations?: number;
    readonly from?: Pick<MedianPolish, "overall" | "rows" | "columns">;
  } = {},
): MedianPolish {
  const width = table[0]?.length ?? 0;
  const rows = table.map((_, i) => (from?.rows[i] ?? 0) || 0);
  const columns = Array.from({ length: width }, (_, j) => (from?.columns[j] ?? 0) || 0);
  let overall = from?.overall ?? 0;
  const residuals = table.map((row, i) => row.map((value, j) => value - overall - rows[i]! - columns[j]!));
  const known = new Array<number>(Math.max(width, table.length)).fill(0);
  let sum = 0;
  let iterations = 0;
  let converged = false;

  while (!converged && iterations < maxIterations) {
    iterations++;
    residuals.forEach((row, i) => {
      let count = 0;
      for (const value of row) if (!Number.isNaN(value)) known[count++] = value;
      const step = medianInPlace(known, count);
      rows[i]! += step;
      for (let j = 0; j < width; j++) row[j]! -= step;
    });
    overall += centre(columns);
    for (let j = 0; j < width; j++) {
      let count = 0;
      for (const row of residuals) if (!Number.isNaN(row[j]!)) known[count++] = row[j]!;
      const step = medianInPlace(known, count);
      columns[j]! += step;
      for (const row of residuals) row[j]! -= step;
    }
    overall += centre(rows);

    const newSum = sumOfSizes(residuals);
    converged = newSum === 0 || Math.abs(newSum - sum) < eps * newSum;
    sum = newSum;
  }
  return { overall, rows, columns, residuals, iterations, converged };
}

/** Takes the median out of the effects, and returns it. */
function centre(effects: number[]): number {
  const step = medianOf(effects) || 0;
  for (let i = 0; i < effects.length; i++) effects[i]! -= step;
  return step;
}

function sumOfSizes(residuals: readonly (readonly number[])[]): number {
  let sum = 0;
  for (const row of residuals) for (const value of row) if (!Number.isNaN(value)) sum += Math.abs(value);
  return sum;
}
