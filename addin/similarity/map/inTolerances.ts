import type { Tolerance } from "../../measures/measure.ts";

/** ln 0 would be infinitely far away. */
const leastMm = 0.1;

/**
 * A reading on a scale on which one step is one tolerance. Where the tolerance is a length that is mm / floor; from the
 * reading on where the percentage is more, steps grow with the reading, as ln(mm) does. The difference of two readings on this
 * scale is |a − b| / max(floor, percent · mean) to the second order of their difference.
 *
 * With a percentage alone a reading below 0.1 mm counts as 0.1 mm.
 *
 * @example inTolerances({ floorMm: 2, percent: 0 }, 100) // 50
 */
export function inTolerances({ floorMm, percent }: Tolerance, mm: number): number {
  const share = percent / 100;
  if (share === 0) return mm / floorMm;
  if (floorMm === 0) return Math.log(Math.max(mm, leastMm)) / share;
  const bend = floorMm / share;
  return mm <= bend ? mm / floorMm : (1 + Math.log(mm / bend)) / share;
}
