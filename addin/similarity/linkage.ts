import { completeJoins } from "./completeJoins.ts";
import type { Condensed } from "./condensed.ts";
import { labelMerges } from "./labelMerges.ts";
import { nearestNeighbourChain } from "./nearestNeighbourChain.ts";

export const linkageMethods = ["complete", "average", "single", "ward"] as const;

/**
 * How far apart two groups are: the farthest pair (`complete`), the mean of all pairs (`average`), the nearest pair
 * (`single`), or the growth of the spread within (`ward`; Ward 1963, for Euclidean distances, with heights as
 * `ward.D2` of R and `ward` of SciPy give them).
 */
export type LinkageMethod = (typeof linkageMethods)[number];

/** One step of a clustering, by the convention of R’s `hclust`. */
export interface Merge {
  /** An item as −(its number from 1), or an earlier merge as its number from 1. Items before merges, lower first. */
  readonly left: number;
  readonly right: number;
  readonly height: number;
  /** Number of items in the new group. */
  readonly size: number;
}

/**
 * Hierarchical clustering: the two nearest groups are joined again and again.
 *
 * Sorted by height. Pairs that are not known (NaN) or infinite never join, whatever the method: no group holds such a
 * pair. There are then fewer merges than size − 1. Where distances are equal, items that come first are joined first.
 *
 * Time grows with size²; the memory is one copy of the distances.
 *
 * @example linkage({ size: 3, values: Float64Array.of(1, 5, 4) }, "complete")
 * // [{ left: -1, right: -2, height: 1, size: 2 }, { left: -3, right: 1, height: 5, size: 3 }]
 */
export function linkage({ size, values }: Condensed, method: LinkageMethod): readonly Merge[] {
  return linkageInPlace({ size, values: values.slice() }, method);
}

/** The same within the memory of the distances, which mean nothing afterwards: for thousands of items. */
export function linkageInPlace(distances: Condensed, method: LinkageMethod): readonly Merge[] {
  const joins = method === "complete" ? completeJoins(distances) : nearestNeighbourChain(distances, method);
  return labelMerges(joins, distances.size);
}
