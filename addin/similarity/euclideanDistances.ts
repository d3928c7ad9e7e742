import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { pairwise } from "./pairwise.ts";
import { readingsByFigure } from "./readings.ts";

/**
 * Straight-line distance of each pair of figures in mm, with every measure an axis: √Σ(aᵢ − bᵢ)². For exploration;
 * tolerances play no part.
 *
 * Measures missing on either side are left out and the sum is scaled up to the full number of measures, as `dist` of R
 * does. Not known (NaN) by the same rules as `toleranceDistances`.
 *
 * @throws {InputError} when there are too many figures
 */
export function euclideanDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const readings = readingsByFigure(columns, size);
  const { width, mm } = readings;
  return pairwise(readings, (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let sum = 0;
      let compared = 0;
      for (let c = 0; c < width; c++) {
        const difference = a[c]! - mm[next + c]!;
        if (Number.isNaN(difference)) continue;
        sum += difference * difference;
        compared++;
      }
      values[at] = Math.sqrt((sum * width) / compared);
    }
  });
}
