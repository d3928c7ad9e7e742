import type { Graph } from "./graph.ts";
import { addBit, emptyBits, hasBit, itemsOf } from "./bits.ts";
import { heaviestClique } from "./coverGroups.ts";

/**
 * As many items as can be found of which no two are within reach: no two of them can be in one group, so that there are at
 * least as many groups. By branch and bound in small graphs, else those with fewest others near them first.
 *
 * @param mostSteps sets of candidates looked at
 * @returns items, lowest first
 */
export function mutuallyApart(graph: Graph, mostSteps: number): readonly number[] {
  const greedy = greedyApart(graph);
  if (graph.size > mostItems) return greedy;
  const { size, near } = graph;
  const apart = near.map((row, item) => {
    const others = emptyBits(size);
    for (let other = 0; other < size; other++) {
      if (other !== item && !hasBit(row, other)) addBit(others, other);
    }
    return others;
  });
  const weights = new Float64Array(size).fill(1);
  return heaviestClique({ size, near: apart }, weights, greedy.length, mostSteps).items ?? greedy;
}

/** In larger graphs a step takes too long. */
const mostItems = 1000;

function greedyApart({ size, near }: Graph): readonly number[] {
  const degree = near.map((row) => itemsOf(row).length);
  const order = Array.from({ length: size }, (_, item) => item).sort(
    (a, b) => degree[a]! - degree[b]! || a - b,
  );
  const isNear = emptyBits(size);
  const chosen: number[] = [];
  for (const item of order) {
    if (hasBit(isNear, item)) continue;
    chosen.push(item);
    near[item]!.forEach((word, at) => (isNear[at]! |= word));
  }
  return chosen.sort((a, b) => a - b);
}
