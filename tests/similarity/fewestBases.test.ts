import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestBases } from "../../addin/similarity/fewestBases.ts";
import { seeded } from "./condensedOf.ts";

/** Distance 1 along a cycle, 9 elsewhere. */
const onCycle = (size: number) => (i: number, j: number) => (j - i === 1 || j - i === size - 1 ? 1 : 9);

const isPetersen = (i: number, j: number) =>
  j < 5 ? (j - i) % 5 === 1 || j - i === 4 : i >= 5 ? j - i === 2 || j - i === 3 : j - i === 5;

describe("fewestBases on graphs with known answers", () => {
  it.each<[string, number, (i: number, j: number) => number, number]>([
    ["a cycle of 9: every third", 9, onCycle(9), 3],
    ["a cycle of 10: the third part, rounded up", 10, onCycle(10), 4],
    ["the Petersen graph: domination number 3", 10, (i, j) => (isPetersen(i, j) ? 1 : 9), 3],
    ["none within reach", 4, () => 9, 4],
    ["not known is not within reach", 4, () => Number.NaN, 4],
    ["all within reach", 6, () => 1, 1],
  ])("%s", (_, size, distance, count) => {
    const found = fewestBases(size, distance, 1);
    expect(found).toMatchObject({ count, atLeast: count, isLeastAlteration: true });
    expect(new Set(found.baseOf).size).toBe(count);
    expect(found.alteration).toBe(size - count);
  });
});

describe("fewestBases", () => {
  it("is the fewest, with the least alteration, over all choices of bases", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), fc.integer(), (size, seed) => {
        const random = seeded(seed);
        const square = Array.from({ length: size }, () => Array.from({ length: size }, () => Math.floor(random() * 8)));
        const distance = (i: number, j: number) => square[i]![j]!;
        const reach = 3;
        let expected = { count: size + 1, alteration: 0 };
        for (let choice = 1; choice < 2 ** size; choice++) {
          const bases = square.flatMap((_, i) => ((choice >> i) & 1 ? [i] : []));
          const nearest = square.map((_, i) =>
            Math.min(...bases.map((base) => (base === i ? 0 : distance(Math.min(i, base), Math.max(i, base))))),
          );
          const alteration = nearest.reduce((sum, each) => sum + each, 0);
          const isBetter =
            bases.length < expected.count || (bases.length === expected.count && alteration < expected.alteration);
          if (isBetter && Math.max(...nearest) <= reach) expected = { count: bases.length, alteration };
        }
        const found = fewestBases(size, distance, reach);
        expect(found).toMatchObject({ ...expected, atLeast: expected.count, isLeastAlteration: true });
        found.baseOf.forEach((base) => {
          expect(found.baseOf[base]).toBe(base);
        });
      }),
      { numRuns: 200 },
    ); // prettier-ignore
  });

  it("still answers, and states the gap, when the steps are used up", () => {
    const random = seeded(5);
    const places = Array.from({ length: 60 }, () => [random(), random()] as const);
    const distance = (i: number, j: number) =>
      Math.hypot(places[i]![0] - places[j]![0], places[i]![1] - places[j]![1]);
    const found = fewestBases(60, distance, 0.15, 10);
    expect(found.isLeastAlteration).toBe(false);
    expect(found.atLeast).toBeLessThanOrEqual(found.count);
    found.baseOf.forEach((base, item) => {
      const [low, high] = [Math.min(base, item), Math.max(base, item)];
      expect(low === high ? 0 : distance(low, high)).toBeLessThanOrEqual(0.15);
    });
    expect(fewestBases(0, distance, 1)).toMatchObject({ count: 0, atLeast: 0 });
  });
});
