import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { Condensed } from "../../addin/similarity/matrix.ts";
import { createCondensed } from "../../addin/similarity/matrix.ts";
import { isKnown } from "../../addin/similarity/pair.ts";

/**
 * Straight-line distance of each pair of figures in mm, with every measure an axis: √Σ(aᵢ − bᵢ)². Published
 * clusterings rest on it; tolerances play no part.
 *
 * Measures missing on either side are left out and the sum is scaled up to the full number of measures, as `dist` of R
 * does. Not known (NaN) by the same rules as `toleranceDistances`.
 *
 * @throws {InputError} when there are too many figures
 */
export function euclideanDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const distances = createCondensed(size);
  for (let i = 0, at = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++) distances.values[at++] = distanceOf(columns, i, j);
  }
  return distances;
}

function distanceOf(columns: readonly ComparedColumn[], i: number, j: number): number {
  let sum = 0;
  let compared = 0;
  let lacksRequired = false;
  for (const { column, required } of columns) {
    const difference = (column.mm[i] ?? Number.NaN) - (column.mm[j] ?? Number.NaN);
    if (Number.isNaN(difference)) {
      lacksRequired ||= required;
      continue;
    }
    compared++;
    sum += difference * difference;
  }
  const isGiven = isKnown(compared, columns.length, lacksRequired);
  return isGiven ? Math.sqrt((sum * columns.length) / compared) : Number.NaN;
}
