import type { Condensed } from "./condensed.ts";

/**
 * The item that stands nearest to all others: the one with the least distance to its farthest, then with the least sum
 * of distances, then the one that is listed first.
 *
 * @param distances of at least one item, all known
 * @returns the item, from 0
 */
export function medoid({ size, values }: Condensed): number {
  const farthest = new Float64Array(size);
  const sums = new Float64Array(size);
  for (let i = 0, at = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++, at++) {
      const distance = values[at]!;
      farthest[i] = Math.max(farthest[i]!, distance);
      farthest[j] = Math.max(farthest[j]!, distance);
      sums[i]! += distance;
      sums[j]! += distance;
    }
  }
  let best = 0;
  for (let item = 1; item < size; item++) {
    const lead = farthest[item]! - farthest[best]! || sums[item]! - sums[best]!;
    if (lead < 0) best = item;
  }
  return best;
}
