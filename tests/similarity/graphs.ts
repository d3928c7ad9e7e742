import type { Graph } from "../../addin/similarity/exact/graph.ts";
import { graphOf } from "../../addin/similarity/exact/graph.ts";
import type { Condensed } from "../../addin/similarity/condensed.ts";

export type Edge = readonly [number, number];

/** Distances of 1 along the edges, 9 elsewhere. */
export function distancesOf(size: number, edges: readonly Edge[]): Condensed {
  const has = new Set(edges.map(([i, j]) => Math.min(i, j) * size + Math.max(i, j)));
  const values: number[] = [];
  for (let i = 0; i < size; i++)
    for (let j = i + 1; j < size; j++) values.push(has.has(i * size + j) ? 1 : 9);
  return { size, values: Float64Array.from(values) };
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
