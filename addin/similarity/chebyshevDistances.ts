import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { toleranceDistances } from "./toleranceDistances.ts";

/**
 * The greatest difference of each pair of figures over all measures, in mm: max |aᵢ − bᵢ|. For exploration; the tolerances
 * of the columns play no part. Missing readings and rounding as in `toleranceDistances`.
 *
 * @throws {InputError} when there are too many figures
 */
export function chebyshevDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const oneMm = { floorMm: 1, percent: 0 };
  return toleranceDistances(
    columns.map((compared) => ({ ...compared, tolerance: oneMm })),
    size,
  );
}
