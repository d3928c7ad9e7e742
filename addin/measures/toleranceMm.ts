import type { Tolerance } from "./measure.ts";

/**
 * How far two readings of one measure may differ and still count as the same:
 * max(floor, percent / 100 · mean of the two).
 *
 * @param a one reading in mm
 * @param b the other reading in mm
 * @returns mm; NaN when a reading is missing (NaN)
 */
export function toleranceMm(tolerance: Tolerance, a: number, b: number): number {
  return Math.max(tolerance.floorMm, (tolerance.percent / 100) * ((a + b) / 2));
}
