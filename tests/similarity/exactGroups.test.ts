import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactGroups } from "../../addin/similarity/fewest/exactGroups.ts";
import { fewestCliques } from "../../addin/similarity/fewest/coverGroups.ts";
import type { Graph } from "../../addin/similarity/fewest/graph.ts";
import { hasBit } from "../../addin/similarity/fewest/bits.ts";
import { seeded } from "./condensedOf.ts";
import type { Edge } from "./graphs.ts";
import { allPairs, complement, cycle, graph, grotzsch, petersen, queens } from "./graphs.ts";
import { highs } from "./highs.ts";

function expectValid({ near }: Graph, groupOf: Int32Array, count: number): void {
  groupOf.forEach((group, i) => {
    for (let j = i + 1; j < groupOf.length; j++) {
      if (groupOf[j] === group) expect(hasBit(near[i]!, j)).toBe(true);
    }
  });
  expect(new Set(groupOf)).toEqual(new Set(Array.from({ length: count }, (_, group) => group)));
}

// Known numbers, from memory: a cover by cliques is a colouring of the complement. Cycles, the Petersen and the Grötzsch graph:
// Bondy & Murty, Graph Theory (2008). Queens’ graphs of boards of 5, 6 and 7 squares a side: 5, 7, 7 colours, Vasquez (2004).
const known: readonly (readonly [string, number, readonly Edge[], number])[] = [
  ["the odd cycle C5: pairs and a rest", 5, cycle(5), 3],
  ["the odd cycle C7", 7, cycle(7), 4],
  ["the complement of C5", 5, complement(5, cycle(5)), 3],
  ["the complement of C9", 9, complement(9, cycle(9)), 3],
  ["the complement of C8: an even cycle has 2 colours", 8, complement(8, cycle(8)), 2],
  ["the Petersen graph: no triangles, a perfect matching", 10, petersen, 5],
  ["the complement of the Petersen graph: 3 colours", 10, complement(10, petersen), 3],
  ["the complement of the Grötzsch graph: 4 colours", 11, complement(11, grotzsch), 4],
  ["the complement of the queens’ graph 5 × 5", 25, complement(25, queens(5)), 5],
  ["the complement of the queens’ graph 6 × 6", 36, complement(36, queens(6)), 7],
  ["the complement of the queens’ graph 7 × 7", 49, complement(49, queens(7)), 7],
  ["no pair within reach", 4, [], 4],
  ["all within reach", 6, allPairs(6), 1],
  ["nothing", 0, [], 0],
];

describe("exactGroups on graphs with known answers", () => {
  it.each(known)("%s, by the search of our own", (_, size, edges, count) => {
    const given = graph(size, edges);
    const found = exactGroups(given);
    expect(found).toMatchObject({ count, atLeast: count });
    expectValid(given, found.groupOf, count);
  });

  it.each(known)("%s, with the solver", (_, size, edges, count) => {
    const given = graph(size, edges);
    const found = exactGroups(given, { solver: highs });
    expect(found).toMatchObject({ count, atLeast: count });
    expectValid(given, found.groupOf, count);
  });

  it.each(known.filter(([, size]) => size > 0))("%s, by priced cliques alone", (_, size, edges, count) => {
    const alone = Array.from({ length: size }, (__, item) => [item]);
    const found = fewestCliques(graph(size, edges), alone, 1, { solver: highs, leftMs: () => Infinity });
    expect(found.groups).toHaveLength(count);
    expect(found.atLeast).toBe(count);
  });
});

const randomGraph = fc
  .tuple(fc.integer({ min: 1, max: 8 }), fc.integer(), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([size, seed, share]) => {
    const random = seeded(seed);
    return graph(
      size,
      allPairs(size).filter(() => random() < share),
    );
  });

describe("exactGroups", () => {
  it("is the least over all ways to put items into groups", () => {
    fc.assert(
      fc.property(randomGraph, (given) => {
        const count = leastByTrial(given);
        for (const options of [{}, { solver: highs }]) {
          const found = exactGroups(given, options);
          expect(found).toMatchObject({ count, atLeast: count });
          expectValid(given, found.groupOf, count);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("agrees with the solver, and with priced cliques alone, on larger graphs", () => {
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: 0.1, max: 0.8, noNaN: true }), (seed, share) => {
        const random = seeded(seed);
        const given = graph(
          22,
          allPairs(22).filter(() => random() < share),
        );
        const own = exactGroups(given);
        const alone = Array.from({ length: 22 }, (_, item) => [item]);
        const cliques = fewestCliques(given, alone, 1, { solver: highs, leftMs: () => Infinity });
        expect(own.atLeast).toBe(own.count);
        expect(cliques.groups).toHaveLength(own.count);
        expect(cliques.atLeast).toBe(own.count);
      }),
      { numRuns: 40 },
    );
  });

  it("states the gap when the time is used up, the first answer having been told", () => {
    const random = seeded(3);
    const given = graph(
      120,
      allPairs(120).filter(() => random() < 0.5),
    );
    const told: number[] = [];
    const found = exactGroups(given, {
      solver: highs,
      leftMs: () => 0,
      onProgress: ({ count }) => told.push(count),
    });
    expectValid(given, found.groupOf, found.count);
    expect(found.atLeast).toBeLessThan(found.count);
    expect(told[0]).toBeGreaterThanOrEqual(found.count);
  });
});

/** Every way to put items into groups, one after another. */
function leastByTrial({ size, near }: Graph): number {
  let least = size;
  const tryFrom = (item: number, groups: readonly (readonly number[])[]): void => {
    if (item === size) {
      least = Math.min(least, groups.length);
      return;
    }
    groups.forEach((group, at) => {
      if (!group.every((other) => hasBit(near[other]!, item))) return;
      tryFrom(
        item + 1,
        groups.map((each, g) => (g === at ? [...each, item] : each)),
      );
    });
    tryFrom(item + 1, [...groups, [item]]);
  };
  tryFrom(0, []);
  return least;
}
