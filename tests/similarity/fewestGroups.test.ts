import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestGroups } from "../../addin/similarity/fewestGroups.ts";
import { seeded } from "./condensedOf.ts";

/** Pairs as texts “i j”, i < j. */
type Pairs = ReadonlySet<string>;
const pairsOf = (edges: readonly (readonly [number, number])[]): Pairs =>
  new Set(edges.map(([i, j]) => `${String(Math.min(i, j))} ${String(Math.max(i, j))}`));
const has = (pairs: Pairs) => (i: number, j: number) => pairs.has(`${String(i)} ${String(j)}`);
const lacks = (pairs: Pairs) => (i: number, j: number) => !pairs.has(`${String(i)} ${String(j)}`);
const cycle = (size: number) => pairsOf(Array.from({ length: size }, (_, i) => [i, (i + 1) % size] as const));

/** Outer cycle, inner star, spokes. */
const petersen = pairsOf(
  [0, 1, 2, 3, 4].flatMap((i) => [
    [i, (i + 1) % 5] as const,
    [5 + i, 5 + ((i + 2) % 5)] as const,
    [i, 5 + i] as const,
  ]),
);

/** Mycielski’s construction (1955) on a cycle of five: no triangle, yet four colours. */
const grotzsch = pairsOf(
  [0, 1, 2, 3, 4].flatMap((i) => [
    [i, (i + 1) % 5] as const,
    [5 + i, (i + 1) % 5] as const,
    [5 + i, (i + 4) % 5] as const,
    [5 + i, 10] as const,
  ]),
);

function expectValid(size: number, isTogether: (i: number, j: number) => boolean, groups: Int32Array): void {
  for (let i = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++) {
      if (groups[i] === groups[j]) expect(isTogether(i, j)).toBe(true);
    }
  }
}

describe("fewestGroups on graphs with known answers", () => {
  it.each<[string, number, (i: number, j: number) => boolean, number]>([
    ["the complement of a cycle of 5: the odd cycle needs 3 colours", 5, lacks(cycle(5)), 3],
    ["the complement of a cycle of 9", 9, lacks(cycle(9)), 3],
    ["the complement of a cycle of 8: 2 colours", 8, lacks(cycle(8)), 2],
    ["a cycle of 7: pairs and a rest", 7, has(cycle(7)), 4],
    ["the Petersen graph: no triangles, a perfect matching", 10, has(petersen), 5],
    ["the complement of the Petersen graph: chromatic number 3", 10, lacks(petersen), 3],
    ["the complement of the Grötzsch graph: chromatic number 4", 11, lacks(grotzsch), 4],
    ["no pair together", 4, () => false, 4],
    ["all together", 6, () => true, 1],
  ])("%s", (_, size, isTogether, count) => {
    const found = fewestGroups(size, isTogether);
    expect(found).toMatchObject({ count, atLeast: count });
    expect(new Set(found.groups).size).toBe(count);
    expectValid(size, isTogether, found.groups);
  });
});

describe("fewestGroups", () => {
  it("has nothing to do without items", () => {
    expect(fewestGroups(0, () => true)).toEqual({ groups: new Int32Array(0), count: 0, atLeast: 0 });
  });

  it("is the least over all ways to put items into groups", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }), fc.integer(), fc.double({ min: 0, max: 1, noNaN: true }), (size, seed, share) => {
        const random = seeded(seed);
        const isTogether = has(
          pairsOf(
            Array.from({ length: size * size }, (_, at) => [Math.floor(at / size), at % size] as const).filter(
              ([i, j]) => i < j && random() < share,
            ),
          ),
        );
        const found = fewestGroups(size, isTogether);
        expectValid(size, isTogether, found.groups);
        expect(found.count).toBe(leastByTrial(size, isTogether));
        expect(found.atLeast).toBe(found.count);
        expect(new Set(found.groups)).toEqual(new Set(Array.from({ length: found.count }, (_, i) => i + 1)));
      }),
      { numRuns: 300 },
    ); // prettier-ignore
  });

  it("still answers, and states the gap, when the steps are used up", () => {
    const random = seeded(3);
    const size = 60;
    const edges = Array.from({ length: size * size }, (_, at) => [Math.floor(at / size), at % size] as const);
    const isTogether = has(pairsOf(edges.filter(([i, j]) => i < j && random() < 0.5)));
    const found = fewestGroups(size, isTogether, 100);
    expectValid(size, isTogether, found.groups);
    expect(found.atLeast).toBeLessThan(found.count);
    expect(found.count).toBe(new Set(found.groups).size);
    expect(found.count).toBeGreaterThanOrEqual(fewestGroups(size, isTogether, 20_000).count);
  });
});

/** Every way to put items into groups, one after another. */
function leastByTrial(size: number, isTogether: (i: number, j: number) => boolean): number {
  let least = size;
  const tryFrom = (item: number, groups: readonly (readonly number[])[]): void => {
    if (item === size) {
      least = Math.min(least, groups.length);
      return;
    }
    groups.forEach((group, at) => {
      if (group.every((other) => isTogether(other, item))) {
        tryFrom(item + 1, groups.map((each, g) => (g === at ? [...each, item] : each)));
      }
    }); // prettier-ignore
    tryFrom(item + 1, [...groups, [item]]);
  };
  tryFrom(0, []);
  return least;
}
