import type { Condensed } from "./condensed.ts";
import { pairDistance } from "./condensed.ts";

/**
 * The member of a group that stands nearest to all others: the one with the least distance to its farthest, then with the
 * least sum of distances, then the one that is listed first.
 *
 * @param members items of one group, from 0, at least one
 */
export function medoid(distances: Condensed, members: readonly number[]): number {
  const candidates = members.map((item) => {
    const apart = members.map((other) => pairDistance(distances, item, other));
    return {
      item,
      farthest: apart.reduce((most, distance) => Math.max(most, distance), 0),
      sum: apart.reduce((sum, distance) => sum + distance, 0),
    };
  });
  return candidates.reduce((best, next) =>
    next.farthest < best.farthest || (next.farthest === best.farthest && next.sum < best.sum) ? next : best,
  ).item;
}
