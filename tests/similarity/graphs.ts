import { addBit, emptyBits } from "../../addin/similarity/fewest/bits.ts";
import type { FewestBases } from "../../addin/similarity/fewest/exactBases.ts";
import { exactBases } from "../../addin/similarity/fewest/exactBases.ts";
import type { Graph } from "../../addin/similarity/fewest/graph.ts";
import type { Condensed } from "../../addin/similarity/matrix.ts";
import { pairDistance } from "../../addin/similarity/matrix.ts";
import { isWithin } from "../../addin/similarity/pair.ts";
import type { ExactOptions } from "../../addin/similarity/fewest/exactOptions.ts";

export type Edge = readonly [number, number];

/** Distances of 1 along the edges, 9 elsewhere. */
export function distancesOf(size: number, edges: readonly Edge[]): Condensed {
  const has = new Set(edges.map(([i, j]) => Math.min(i, j) * size + Math.max(i, j)));
  const values: number[] = [];
  for (let i = 0; i < size; i++)
    for (let j = i + 1; j < size; j++) values.push(has.has(i * size + j) ? 1 : 9);
  return { size, values: Float64Array.from(values) };
}

/** The pairs at most `reach` apart. */
export function graphOf(distances: Condensed, reach: number): Graph {
  const { size } = distances;
  const near = Array.from({ length: size }, () => emptyBits(size));
  for (const [i, j] of allPairs(size)) {
    if (!isWithin(pairDistance(distances, i, j), reach)) continue;
    addBit(near[i]!, j);
    addBit(near[j]!, i);
  }
  return { size, near };
}

/** The fewest bases of items with these distances. */
export function basesOf(
  distances: Condensed,
  reach: number,
  options?: ExactOptions<FewestBases>,
): FewestBases {
  return exactBases(graphOf(distances, reach), (i, j) => pairDistance(distances, i, j), options);
}

export function graph(size: number, edges: readonly Edge[]): Graph {
  return graphOf(distancesOf(size, edges), 1);
}

/** The pairs that are no edges. */
export function complement(size: number, edges: readonly Edge[]): readonly Edge[] {
  const { near } = graph(size, edges);
  return allPairs(size).filter(([i, j]) => (near[i]![j >>> 5]! & (1 << (j & 31))) === 0);
}

export function allPairs(size: number): readonly Edge[] {
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size - i - 1 }, (__, k): Edge => [i, i + 1 + k]),
  ).flat();
}

export const cycle = (size: number): readonly Edge[] =>
  Array.from({ length: size }, (_, i): Edge => [i, (i + 1) % size]);

export const path = (size: number): readonly Edge[] => cycle(size).slice(0, -1);

/** Outer cycle, inner star, spokes. */
export const petersen: readonly Edge[] = [0, 1, 2, 3, 4].flatMap((i): Edge[] => [
  [i, (i + 1) % 5],
  [5 + i, 5 + ((i + 2) % 5)],
  [i, 5 + i],
]);

/** Mycielski’s construction (1955) on a cycle of five, the Grötzsch graph: no triangle, yet four colours. */
export const grotzsch: readonly Edge[] = [0, 1, 2, 3, 4].flatMap((i): Edge[] => [
  [i, (i + 1) % 5],
  [5 + i, (i + 1) % 5],
  [5 + i, (i + 4) % 5],
  [5 + i, 10],
]);

/** Squares of a chess board from which queens attack one another. */
export function queens(side: number): readonly Edge[] {
  return allPairs(side * side).filter(([a, b]) => {
    const rows = Math.abs(Math.floor(a / side) - Math.floor(b / side));
    const columns = Math.abs((a % side) - (b % side));
    return rows === 0 || columns === 0 || rows === columns;
  });
}
