/**
 * Readings such as 5 1/4 in have no exact value in millimetres, so a difference of exactly one tolerance may come
 * out a hair above it. This share of the reach is let pass.
 */
const roundingShare = 1e-9;

/** True when a distance is at most `reach`. A distance that is not known (NaN) is not. */
export function isWithin(distance: number, reach: number): boolean {
  return distance <= reach + Math.abs(reach) * roundingShare;
}
