import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Condensed } from "../../addin/similarity/matrix.ts";
import { pairDistance } from "../../addin/similarity/matrix.ts";
import { seeded } from "./condensedOf.ts";
import type { Edge } from "./graphs.ts";
import { allPairs, basesOf, cycle, distancesOf, path, petersen, queens } from "./graphs.ts";
import { highs } from "./highs.ts";

// Domination numbers, from memory: ⌈n/3⌉ for paths and cycles, 3 for the Petersen graph (Haynes, Hedetniemi & Slater 1998); queens that
// command a board of 5, 6, 7 squares a side: 3, 3, 4 (sequence A075458 of the OEIS).
const known: readonly (readonly [string, number, readonly Edge[], number])[] = [
  ["a path of 7", 7, path(7), 3],
  ["a path of 12", 12, path(12), 4],
  ["a cycle of 9", 9, cycle(9), 3],
  ["a cycle of 10", 10, cycle(10), 4],
  ["the Petersen graph", 10, petersen, 3],
  ["queens on 5 × 5", 25, queens(5), 3],
  ["queens on 6 × 6", 36, queens(6), 3],
  ["queens on 7 × 7", 49, queens(7), 4],
  ["none within reach", 4, [], 4],
  ["all within reach", 6, allPairs(6), 1],
  ["nothing", 0, [], 0],
];

describe("exactBases on graphs with known answers", () => {
  it.each(known)("%s", (_, size, edges, count) => {
    for (const options of [{}, { solver: highs }]) {
      const found = basesOf(distancesOf(size, edges), 1, options);
      expect(found).toMatchObject({ count, atLeast: count, isLeastAlteration: true });
      expect(new Set(found.baseOf).size).toBe(count);
      expect(found.alteration).toBe(size - count);
    }
  });

  it("counts not known as out of reach", () => {
    const distances = { size: 3, values: Float64Array.of(Number.NaN, 1, Number.NaN) };
    expect(basesOf(distances, 1)).toMatchObject({ count: 2, baseOf: Int32Array.of(0, 1, 0) });
  });
});

function randomDistances(size: number, seed: number, most: number): Condensed {
  const random = seeded(seed);
  return {
    size,
    values: Float64Array.from(allPairs(size), () => Math.floor(random() * most)),
  };
}

describe("exactBases", () => {
  it("is the fewest, with the least alteration, over all choices of bases", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), fc.integer(), (size, seed) => {
        const distances = randomDistances(size, seed, 8);
        const expected = bestByTrial(distances, 3);
        for (const options of [{}, { solver: highs }]) {
          const found = basesOf(distances, 3, options);
          expect(found).toMatchObject({ count: expected.count, atLeast: expected.count, isLeastAlteration: true });
          expect(found.alteration).toBeCloseTo(expected.alteration, 9);
          for (const base of found.baseOf) expect(found.baseOf[base]).toBe(base);
        }
      }),
      { numRuns: 150 },
    ); // prettier-ignore
  });

  it("agrees with the solver on larger sets", () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 5, max: 12 }), (seed, most) => {
        const distances = randomDistances(24, seed, most);
        const own = basesOf(distances, 2);
        const solved = basesOf(distances, 2, { solver: highs });
        expect(own).toMatchObject({ atLeast: own.count, isLeastAlteration: true });
        expect(solved).toMatchObject({ count: own.count, atLeast: own.count, isLeastAlteration: true });
        expect(solved.alteration).toBeCloseTo(own.alteration, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("states the gap when the time is used up", () => {
    const distances = randomDistances(150, 5, 12);
    const found = basesOf(distances, 1, { solver: highs, leftMs: () => 0 });
    expect(found.isLeastAlteration).toBe(false);
    expect(found.atLeast).toBeLessThan(found.count);
    found.baseOf.forEach((base, item) => {
      expect(pairDistance(distances, base, item)).toBeLessThanOrEqual(1);
    });
  });
});

/** All choices of bases, one after another. */
function bestByTrial(distances: Condensed, reach: number): { count: number; alteration: number } {
  const items = Array.from({ length: distances.size }, (_, item) => item);
  let best = { count: distances.size + 1, alteration: 0 };
  for (let choice = 1; choice < 2 ** distances.size; choice++) {
    const bases = items.filter((item) => (choice >> item) & 1);
    const nearest = items.map((item) =>
      Math.min(...bases.map((base) => pairDistance(distances, base, item))),
    );
    const served = items.map((item, i) => (bases.includes(item) ? 0 : nearest[i]!));
    if (Math.max(...served) > reach) continue;
    const alteration = served.reduce((sum, each) => sum + each, 0);
    const isBetter =
      bases.length < best.count || (bases.length === best.count && alteration < best.alteration);
    if (isBetter) best = { count: bases.length, alteration };
  }
  return best;
}
