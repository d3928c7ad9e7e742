import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import type { RowDistances } from "./pairwise.ts";
import { pairwise } from "./pairwise.ts";
import type { Readings } from "./readings.ts";
import { readingsByFigure } from "./readings.ts";

/**
 * The worst difference of each pair of figures, in tolerances: max |aᵢ − bᵢ| / tolᵢ with
 * tolᵢ = max(floor, percent · mean). At most 1 means “within tolerance everywhere”.
 *
 * Measures missing on either side are left out. A pair is not known (NaN) when a required measure is missing or less
 * than `leastComparedShare` of the measures could be compared.
 *
 * @param columns see `comparedColumns`
 * @param size number of figures
 * @throws {InputError} when there are too many figures
 */
export function toleranceDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const readings = readingsByFigure(columns, size);
  const isFixed = columns.every(({ tolerance }) => tolerance.percent === 0);
  return pairwise(readings, isFixed ? fixedTolerances(readings) : relativeTolerances(readings));
}

// In both loops a missing reading makes the difference NaN, which is never greater. The comparison is multiplied out, so
// that a division is needed only where a measure turns out worse than those before it.

function fixedTolerances({ size, width, mm, columns }: Readings): RowDistances {
  const floorMm = Float64Array.from(columns, ({ tolerance }) => tolerance.floorMm);
  return (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let worst = 0;
      for (let c = 0; c < width; c++) {
        const difference = Math.abs(a[c]! - mm[next + c]!);
        if (difference > worst * floorMm[c]!) worst = difference / floorMm[c]!;
      }
      values[at] = worst;
    }
  };
}

function relativeTolerances({ size, width, mm, columns }: Readings): RowDistances {
  const floorMm = Float64Array.from(columns, ({ tolerance }) => tolerance.floorMm);
  const halfShare = Float64Array.from(columns, ({ tolerance }) => tolerance.percent / 200);
  return (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let worst = 0;
      for (let c = 0; c < width; c++) {
        const difference = Math.abs(a[c]! - mm[next + c]!);
        const relative = halfShare[c]! * (a[c]! + mm[next + c]!);
        const tolerance = relative > floorMm[c]! ? relative : floorMm[c]!;
        if (difference > worst * tolerance) worst = difference / tolerance;
      }
      values[at] = worst;
    }
  };
}
