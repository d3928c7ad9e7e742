import { agnes } from "ml-hclust";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Condensed } from "../../addin/similarity/matrix.ts";
import { pairDistance } from "../../addin/similarity/matrix.ts";
import { cutAt, cutInto } from "../../addin/similarity/cut.ts";
import type { Merge } from "../../addin/similarity/linkage.ts";
import { linkage, linkageMethods } from "../../addin/similarity/linkage.ts";
import { condensedOf, seeded } from "./condensedOf.ts";

const unknown = Number.NaN;

describe("linkage", () => {
  it("names items by minus their number and merges by their number, items first", () => {
    const distances = condensedOf([[9, 9, 1], [2, 9], [9]]);
    expect(linkage(distances, "complete")).toEqual([
      { left: -1, right: -4, height: 1, size: 2 },
      { left: -2, right: -3, height: 2, size: 2 },
      { left: 1, right: 2, height: 9, size: 4 },
    ]);
  });

  it("has nothing to join in none or one", () => {
    expect(linkage({ size: 0, values: new Float64Array() }, "complete")).toEqual([]);
    expect(linkage({ size: 1, values: new Float64Array() }, "ward")).toEqual([]);
  });

  it("leaves the distances as they are", () => {
    const distances = condensedOf([[3, 4], [5]]);
    linkage(distances, "ward");
    expect([...distances.values]).toEqual([3, 4, 5]);
  });

  it.each(linkageMethods)("joins equal distances from the first items on (%s)", (method) => {
    const merges = linkage(condensedOf([[1, 9, 9], [9, 9], [1]]), method);
    expect(merges.slice(0, 2)).toEqual([
      { left: -1, right: -2, height: 1, size: 2 },
      { left: -3, right: -4, height: 1, size: 2 },
    ]);
  });

  it.each(linkageMethods)("never joins two items whose distance is not known (%s)", (method) => {
    // 1 and 3 are both near 2, but nothing is known between 1 and 3.
    const merges = linkage(condensedOf([[1, unknown], [2]]), method);
    expect(merges).toEqual([{ left: -1, right: -2, height: 1, size: 2 }]);
  });

  it.each(linkageMethods)("goes on with the rest when a group is finished (%s)", (method) => {
    const merges = linkage(condensedOf([[unknown, unknown, unknown], [unknown, unknown], [4]]), method);
    expect(merges).toEqual([{ left: -3, right: -4, height: 4, size: 2 }]);
  });
});

/** Random distances in a square, for the peer, and condensed. Without ties, so that there is one right answer. */
function randomDistances(size: number, seed: number): { square: number[][]; condensed: Condensed } {
  const random = seeded(seed);
  const points = Array.from({ length: size }, () => Array.from({ length: 5 }, () => 100 * random()));
  const between = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((x, c) => x - b[c]!));
  const square = points.map((a) => points.map((b) => between(a, b)));
  return { square, condensed: condensedOf(square.slice(0, -1).map((row, i) => row.slice(i + 1))) };
}

describe("linkage against ml-hclust 4.0.0 on random data", () => {
  // Its “ward2” squares the distances and takes the root of heights, as ward.D2 of R and our “ward” do.
  const peers = { complete: "complete", average: "average", single: "single", ward: "ward2" } as const;

  for (const method of linkageMethods) {
    it.each([
      [60, 1],
      [60, 2],
      [100, 3],
    ])(`gives the same heights and groups of %i items for “${method}” (seed %i)`, (size, seed) => {
      const { square, condensed } = randomDistances(size, seed);
      const root = agnes(square, { method: peers[method], isDistanceMatrix: true });
      const heights: number[] = [];
      root.traverse((cluster) => {
        if (!cluster.isLeaf) heights.push(cluster.height);
      });
      const merges = linkage(condensed, method);
      heights.sort((a, b) => a - b).forEach((height, i) => expect(merges[i]!.height).toBeCloseTo(height, 9));

      const groups = root.group(7).children.map((cluster) => cluster.indices().sort((a, b) => a - b));
      expect(partition(cutInto(merges, size, 7))).toEqual(partitionOf(groups));
    });
  }

  // Its “ward” joins plain distances as if they were squared, as ward.D of R does: squares in, squares out.
  it("gives the same heights for “ward” with squared distances put in", () => {
    const { square, condensed } = randomDistances(40, 4);
    const root = agnes(
      square.map((row) => row.map((distance) => distance ** 2)),
      { method: "ward", isDistanceMatrix: true },
    );
    const heights: number[] = [];
    root.traverse((cluster) => {
      if (!cluster.isLeaf) heights.push(Math.sqrt(cluster.height));
    });
    expect(linkage(condensed, "ward").map(({ height }) => height.toFixed(6))).toEqual(
      heights.sort((a, b) => a - b).map((height) => height.toFixed(6)),
    );
  });
});

/** A grouping as sets of items, whatever the numbers. */
function partition(groups: Int32Array): readonly string[] {
  const members = new Map<number, number[]>();
  groups.forEach((group, item) => members.set(group, [...(members.get(group) ?? []), item]));
  return partitionOf([...members.values()]);
}

function partitionOf(groups: readonly (readonly number[])[]): readonly string[] {
  return groups.map((members) => members.join(" ")).sort();
}

/** Distances of 2 to 14 items in whole numbers, so with many ties, and some not known. */
const anyDistances = fc.integer({ min: 2, max: 14 }).chain((size) =>
  fc
    .array(fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 20 }) }, fc.constant(unknown)), {
      minLength: (size * (size - 1)) / 2,
      maxLength: (size * (size - 1)) / 2,
    })
    .map((values): Condensed => ({ size, values: Float64Array.from(values) })),
);

/** Complete linkage as it is defined: of all pairs of groups the nearest, of equals the one with the lowest items. */
function searchAllPairs({ size, values }: Condensed): readonly string[] {
  const distances = { size, values };
  const groups = Array.from({ length: size }, (_, item) => [item]);
  const joins: string[] = [];
  for (;;) {
    let found: readonly [number, number] | undefined;
    let height = Infinity;
    groups.forEach((one, i) =>
      groups.slice(i + 1).forEach((other, next) => {
        const across = one.flatMap((a) => other.map((b) => pairDistance(distances, a, b)));
        const farthest = across.some(Number.isNaN) ? Infinity : Math.max(...across);
        if (farthest < height) {
          height = farthest;
          found = [i, i + 1 + next];
        }
      }),
    );
    if (!found) return joins;
    const [first, second] = found.map((at) => groups[at]!);
    joins.push(`${first!.join(" ")} with ${second!.join(" ")} at ${String(height)}`);
    groups[found[0]] = [...first!, ...second!].sort((a, b) => a - b);
    groups.splice(found[1], 1);
  }
}

/** The same words for merges. */
function joinsOf(merges: readonly Merge[]): readonly string[] {
  const members = new Map<number, readonly number[]>();
  const membersOf = (label: number) => (label < 0 ? [-label - 1] : members.get(label)!);
  return merges.map(({ left, right, height }, i) => {
    const [first, second] = [membersOf(left), membersOf(right)].sort((a, b) => a[0]! - b[0]!);
    members.set(
      i + 1,
      [...first!, ...second!].sort((a, b) => a - b),
    );
    return `${first!.join(" ")} with ${second!.join(" ")} at ${String(height)}`;
  });
}

const anyMethod = fc.constantFrom(...linkageMethods);

describe("any clustering", () => {
  it("joins step by step what a search through all pairs finds, with complete linkage", () => {
    fc.assert(
      fc.property(anyDistances, (distances) => {
        expect(joinsOf(linkage(distances, "complete"))).toEqual(searchAllPairs(distances));
      }),
    );
  });

  it("never falls in height", () => {
    fc.assert(
      fc.property(anyDistances, anyMethod, (distances, method) => {
        const heights = linkage(distances, method).map(({ height }) => height);
        heights.slice(1).forEach((height, i) => expect(height).toBeGreaterThanOrEqual(heights[i]!));
      }),
    );
  });

  it("uses every item and merge once, and counts sizes right", () => {
    fc.assert(
      fc.property(anyDistances, anyMethod, (distances, method) => {
        const merges = linkage(distances, method);
        const used = merges.flatMap(({ left, right }) => [left, right]);
        expect(new Set(used).size).toBe(used.length);
        merges.forEach(({ left, right, size }, i) => {
          const sizeOf = (label: number) => (label < 0 ? 1 : merges[label - 1]!.size);
          expect(Math.max(left, right)).toBeLessThan(i + 1);
          expect(size).toBe(sizeOf(left) + sizeOf(right));
        });
      }),
    );
  });

  it("holds no pair in a group that is not known", () => {
    fc.assert(
      fc.property(anyDistances, anyMethod, (distances, method) => {
        const groups = cutAt(linkage(distances, method), distances.size, Infinity);
        forEachPairWithin(groups, (i, j) => expect(pairDistance(distances, i, j)).not.toBeNaN());
      }),
    );
  });

  it("forms no larger group by a distance becoming not known", () => {
    fc.assert(
      fc.property(anyDistances, anyMethod, fc.nat(), (distances, method, at) => {
        const values = Float64Array.from(distances.values);
        const lost = at % values.length;
        values[lost] = unknown;
        const after = cutAt(linkage({ ...distances, values }, method), distances.size, Infinity);
        const [i, j] = pairsOf(distances.size)[lost]!;
        expect(after[i]).not.toBe(after[j]);
      }),
    );
  });

  it("keeps every pair within the cut with complete linkage", () => {
    fc.assert(
      fc.property(anyDistances, fc.integer({ min: 0, max: 20 }), (distances, height) => {
        const groups = cutAt(linkage(distances, "complete"), distances.size, height);
        forEachPairWithin(groups, (i, j) =>
          expect(pairDistance(distances, i, j)).toBeLessThanOrEqual(height),
        );
      }),
    );
  });

  it("joins what could still be joined with complete linkage", () => {
    fc.assert(
      fc.property(anyDistances, fc.integer({ min: 0, max: 20 }), (distances, height) => {
        const groups = cutAt(linkage(distances, "complete"), distances.size, height);
        const numbers = [...new Set(groups)];
        for (const a of numbers) {
          for (const b of numbers.filter((number) => number > a)) {
            const across = pairsOf(distances.size)
              .filter(([i, j]) => [groups[i], groups[j]].sort().join() === [a, b].sort().join())
              .map(([i, j]) => pairDistance(distances, i, j));
            expect(across.every((distance) => distance <= height)).toBe(false);
          }
        }
      }),
    );
  });

  it("gives the same groups whatever the order, when no two distances are equal", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 20 }),
        fc.integer(),
        anyMethod,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (size, seed, method, share) => {
          const { condensed } = randomDistances(size, seed);
          const order = shuffled(size, seed + 1);
          const moved: Condensed = {
            size,
            values: Float64Array.from(pairsOf(size), ([i, j]) =>
              pairDistance(condensed, order[i]!, order[j]!),
            ),
          };
          const height = share * 150;
          const before = cutAt(linkage(condensed, method), size, height);
          const after = cutAt(linkage(moved, method), size, height);
          const back = new Int32Array(size);
          order.forEach((from, to) => (back[from] = after[to]!));
          expect(partition(back)).toEqual(partition(before));
        },
      ),
    );
  });
});

function pairsOf(size: number): readonly (readonly [number, number])[] {
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size - i - 1 }, (_, next) => [i, i + 1 + next] as const),
  ).flat();
}

function forEachPairWithin(groups: Int32Array, check: (i: number, j: number) => void): void {
  for (const [i, j] of pairsOf(groups.length)) if (groups[i] === groups[j]) check(i, j);
}

function shuffled(size: number, seed: number): readonly number[] {
  const random = seeded(seed);
  return Array.from({ length: size }, (_, item) => ({ item, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);
}
