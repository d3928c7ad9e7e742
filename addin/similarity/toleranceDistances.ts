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
  return pairwise(readings, isFixed ? fixedTolerance(readings) : relativeTolerance(readings));
}

/** Without percentages the divisions can be done beforehand. */
function fixedTolerance({ size, width, mm, columns }: Readings): RowDistances {
  const perMm = Float64Array.from(columns, ({ tolerance }) => 1 / tolerance.floorMm);
  return (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let worst = 0;
      for (let c = 0; c < width; c++) {
        // A missing reading makes this NaN, which is never greater.
        const apart = Math.abs(a[c]! - mm[next + c]!) * perMm[c]!;
        if (apart > worst) worst = apart;
      }
      values[at] = worst;
    }
  };
}

/** The comparison is multiplied out: a division is needed only when a measure turns out worse than those before. */
function relativeTolerance({ size, width, mm, columns }: Readings): RowDistances {
  const floorMm = Float64Array.from(columns, ({ tolerance }) => tolerance.floorMm);
  const halfShare = Float64Array.from(columns, ({ tolerance }) => tolerance.percent / 200);
  return (i, values, start) => {
    const a = mm.subarray(i * width, (i + 1) * width);
    for (let at = start, next = (i + 1) * width; next < size * width; next += width, at++) {
      let worst = 0;
      for (let c = 0; c < width; c++) {
        const b = mm[next + c]!;
        const relative = halfShare[c]! * (a[c]! + b);
        const floor = floorMm[c]!;
        const tolerance = relative > floor ? relative : floor;
        const difference = Math.abs(a[c]! - b);
        if (difference > worst * tolerance) worst = difference / tolerance;
      }
      values[at] = worst;
    }
  };
}
