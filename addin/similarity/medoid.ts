import type { Condensed } from "./condensed.ts";
import { pairDistance } from "./condensed.ts";

/**
 * The item that stands nearest to all others: the one with the least distance to its farthest, then with the least sum
 * of distances, then the one that is listed first.
 *
 * @param distances of at least one item, all known
 * @returns the item, from 0
 */
export function medoid(distances: Condensed): number {
  let best = { item: 0, farthest: Infinity, sum: Infinity };
  for (let item = 0; item < distances.size; item++) {
    let farthest = 0;
    let sum = 0;
    for (let other = 0; other < distances.size; other++) {
      const distance = pairDistance(distances, item, other);
      farthest = Math.max(farthest, distance);
      sum += distance;
    }
    const isBetter = farthest < best.farthest || (farthest === best.farthest && sum < best.sum);
    if (isBetter) best = { item, farthest, sum };
  }
  return best.item;
}
