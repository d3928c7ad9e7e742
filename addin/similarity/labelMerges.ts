import { createDisjointSets } from "./disjointSets.ts";
import type { Join } from "./nearestNeighbourChain.ts";
import type { Merge } from "./linkage.ts";

/** Joins in any order that puts parts before wholes → merges by height, numbered by the convention of R’s `hclust`. */
export function labelMerges(joins: readonly Join[], size: number): readonly Merge[] {
  const groups = createDisjointSets(size);
  const labels = Int32Array.from({ length: size }, (_, item) => -(item + 1));
  const sizes = new Int32Array(size).fill(1);
  // The sort is stable, so that at equal heights parts stay before wholes.
  return [...joins]
    .sort((a, b) => a.height - b.height)
    .map(({ first, second, height }, index) => {
      const one = groups.find(first);
      const other = groups.find(second);
      const [left, right] = inMergeOrder(labels[one]!, labels[other]!);
      const joined = groups.join(one, other);
      labels[joined] = index + 1;
      sizes[joined] = sizes[one]! + sizes[other]!;
      return { left, right, height, size: sizes[joined] };
    });
}

/** Items (negative) before merges; the lower number first among either. */
function inMergeOrder(a: number, b: number): readonly [number, number] {
  if (a < 0 && b < 0) return a > b ? [a, b] : [b, a];
  return a < b ? [a, b] : [b, a];
}
