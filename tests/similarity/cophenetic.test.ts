import { describe, expect, it } from "vitest";
import { copheneticCorrelation, copheneticDistances } from "../../addin/similarity/cophenetic.ts";
import { pairDistance } from "../../addin/similarity/matrix.ts";
import { linkage, linkageMethods } from "../../addin/similarity/linkage.ts";
import { condensedOf, seeded } from "./condensedOf.ts";

describe("copheneticDistances", () => {
  it("are the heights at which pairs come together", () => {
    const merges = linkage(condensedOf([[1, 6, 5], [7, 4], [2]]), "complete");
    expect([...copheneticDistances(merges, 4).values]).toEqual([1, 7, 7, 7, 7, 2]);
  });

  it("are not known for pairs that never do", () => {
    const merges = linkage(condensedOf([[1, Number.NaN], [3]]), "single");
    expect([...copheneticDistances(merges, 3).values]).toEqual([1, Number.NaN, Number.NaN]);
  });
});

describe("any tree", () => {
  it("has at each pair the height of the first merge that holds both", () => {
    const random = seeded(4);
    for (const method of linkageMethods) {
      const size = 30;
      // Few different distances, so that heights are often equal; some are not known.
      const values = Float64Array.from({ length: (size * (size - 1)) / 2 }, () =>
        random() < 0.02 ? Number.NaN : Math.ceil(8 * random()),
      );
      const merges = linkage({ size, values }, method);
      const groups: Set<number>[] = [];
      const found = new Map<string, number>();
      for (const { left, right, height } of merges) {
        const [some, others] = [left, right].map((label) =>
          label < 0 ? new Set([-label - 1]) : groups[label - 1]!,
        );
        for (const i of some!)
          for (const j of others!) found.set([i, j].sort((a, b) => a - b).join(), height);
        groups.push(new Set([...some!, ...others!]));
      }
      const heights = copheneticDistances(merges, size);
      for (let i = 0; i < size; i++) {
        for (let j = i + 1; j < size; j++) {
          expect(pairDistance(heights, i, j)).toBe(found.get([i, j].join()) ?? Number.NaN);
        }
      }
    }
  });
});

describe("copheneticCorrelation", () => {
  it("is 1 where the tree shows every distance", () => {
    const distances = condensedOf([[1, 3, 3], [3, 3], [2]]);
    expect(copheneticCorrelation(distances, linkage(distances, "average"))).toBeCloseTo(1, 12);
  });

  it("is not known of two items, of items all equally far, and of none", () => {
    for (const distances of [
      condensedOf([[1]]),
      condensedOf([[2, 2], [2]]),
      { size: 0, values: new Float64Array() },
    ]) {
      expect(copheneticCorrelation(distances, linkage(distances, "complete"))).toBeNaN();
    }
  });
});
