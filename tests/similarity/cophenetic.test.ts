import { describe, expect, it } from "vitest";
import { copheneticCorrelation, copheneticDistances } from "../../addin/similarity/cophenetic.ts";
import { linkage } from "../../addin/similarity/linkage.ts";
import { condensedOf } from "./condensedOf.ts";

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
