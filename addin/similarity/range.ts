import type { Readings } from "./pair.ts";
import { roundDistance } from "./pair.ts";

/** The smallest and the largest reading of a group in each measure; NaN where no member has one. */
export interface Range {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export function rangeOf({ width, mm }: Readings, members: readonly number[]): Range {
  const low = new Float64Array(width).fill(Number.NaN);
  const high = new Float64Array(width).fill(Number.NaN);
  for (const item of members) {
    for (let c = 0, at = item * width; c < width; c++, at++) {
      const reading = mm[at]!;
      if (!(reading >= low[c]!) && !Number.isNaN(reading)) low[c] = reading;
      if (!(reading <= high[c]!) && !Number.isNaN(reading)) high[c] = reading;
    }
  }
  return { low, high };
}

/**
 * The worst difference of an item from any member in any measure that both have, in tolerances; infinite once it is beyond
 * `limit`, NaN when there is no such measure. A difference in tolerances grows with the difference in mm, percentages
 * included, so that the smallest and the largest member are enough.
 */
export function worstFrom(
  { low, high }: Range,
  { mm, floorMm, halfShare }: Readings,
  item: number,
  limit = Infinity,
): number {
  let worst = Number.NaN;
  for (let c = 0, at = item * low.length; c < low.length; c++, at++) {
    const reading = mm[at]!;
    const below = reading - low[c]!;
    const above = high[c]! - reading;
    if (Number.isNaN(below)) continue;
    const share = Math.max(
      below > 0 ? below / Math.max(floorMm[c]!, halfShare[c]! * (reading + low[c]!)) : 0,
      above > 0 ? above / Math.max(floorMm[c]!, halfShare[c]! * (reading + high[c]!)) : 0,
    );
    const ofTolerance = roundDistance(share);
    if (ofTolerance > limit) return Infinity;
    if (!(ofTolerance <= worst)) worst = ofTolerance;
  }
  return worst;
}
