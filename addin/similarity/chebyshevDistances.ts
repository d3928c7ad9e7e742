import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { pairwise } from "./pairwise.ts";
import { readingsByFigure } from "./readings.ts";

/**
 * The greatest difference of each pair of figures over all measures, in mm: max |aᵢ − bᵢ|. For exploration; tolerances
 * play no part. Missing readings as in `toleranceDistances`.
 *
 * @throws {InputError} when there are too many figures
 */
export function chebyshevDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const readings = readingsByFigure(columns, size);
  const { width, mm } = readings;
  return pairwise(readings, (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let greatest = 0;
      for (let c = 0; c < width; c++) {
        const difference = Math.abs(a[c]! - mm[next + c]!);
        if (difference > greatest) greatest = difference;
      }
      values[at] = greatest;
    }
  });
}
