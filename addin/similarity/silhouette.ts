import type { Condensed } from "./condensed.ts";
import { pairDistance } from "./condensed.ts";

/** How well items sit in their groups (Rousseeuw 1987). */
export interface Silhouette {
  /** One width an item, from −1 (belongs elsewhere) to 1 (far from all other groups); 0 for an item by itself. */
  readonly widths: Float64Array;
  /** The mean of the widths that are known. */
  readonly mean: number;
}

/**
 * Silhouette of a grouping: (b − a) / max(a, b), with a the mean distance of an item to its own group and b the least mean
 * distance to another group. Pairs that are not known are left out of the means; a width without any mean to rest
 * on, and every width when there is only one group, is NaN.
 *
 * @param groups group number of each item, from 1, see `cutAt`
 */
export function silhouette(distances: Condensed, groups: Int32Array): Silhouette {
  const widths = Float64Array.from(groups, (_, item) => widthOf(distances, groups, item));
  const known = widths.filter((width) => !Number.isNaN(width));
  return { widths, mean: known.reduce((sum, width) => sum + width, 0) / known.length };
}

function widthOf(distances: Condensed, groups: Int32Array, item: number): number {
  const { means, isAlone } = meanDistances(distances, groups, item);
  const own = means.get(groups[item]!);
  means.delete(groups[item]!);
  const others = Math.min(...means.values());
  if (others === Infinity) return Number.NaN;
  if (isAlone) return 0;
  if (own === undefined) return Number.NaN;
  return own === others ? 0 : (others - own) / Math.max(own, others);
}

/** Mean distance of an item to each group to which one is known. */
function meanDistances(distances: Condensed, groups: Int32Array, item: number) {
  const sums = new Map<number, { sum: number; count: number }>();
  let isAlone = true;
  groups.forEach((group, other) => {
    if (other === item) return;
    if (group === groups[item]) isAlone = false;
    const distance = pairDistance(distances, item, other);
    if (Number.isNaN(distance)) return;
    const so = sums.get(group) ?? { sum: 0, count: 0 };
    sums.set(group, { sum: so.sum + distance, count: so.count + 1 });
  });
  const means = new Map([...sums].map(([group, { sum, count }]) => [group, sum / count]));
  return { means, isAlone };
}
