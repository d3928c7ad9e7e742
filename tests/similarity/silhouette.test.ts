import { describe, expect, it } from "vitest";
import { silhouette } from "../../addin/similarity/silhouette.ts";
import { condensedOf } from "./condensedOf.ts";

const unknown = Number.NaN;

describe("silhouette", () => {
  it("compares the mean distance to the own group with that to the nearest other", () => {
    // a = 1, b = 4; a = 1, b = 5; an item by itself
    const { widths, neighbours, mean } = silhouette(condensedOf([[1, 4], [5]]), Int32Array.of(1, 1, 2));
    expect([...widths]).toEqual([0.75, 0.8, 0]);
    expect([...neighbours]).toEqual([2, 2, 1]);
    expect(mean).toBeCloseTo(1.55 / 3, 12);
  });

  it("names the nearest other group, of equals the first, and none where nothing is known", () => {
    // Item 3 is as far from 1 as from 2; of item 4 nothing is known.
    const distances = condensedOf([[3, 2, unknown], [2, unknown], [unknown]]);
    expect([...silhouette(distances, Int32Array.of(1, 2, 3, 4)).neighbours]).toEqual([3, 3, 1, 0]);
  });

  it("leaves out pairs that are not known", () => {
    const { widths } = silhouette(
      condensedOf([[1, 4, unknown], [unknown, 6], [2]]),
      Int32Array.of(1, 1, 2, 2),
    );
    expect([...widths]).toEqual([3 / 4, 5 / 6, 2 / 4, 4 / 6]);
  });

  it("is not known with one group, and where nothing is known of other groups", () => {
    expect([...silhouette(condensedOf([[1]]), Int32Array.of(1, 1)).widths]).toEqual([unknown, unknown]);
    const { widths, mean } = silhouette(condensedOf([[1, unknown], [3]]), Int32Array.of(1, 1, 2));
    expect([...widths]).toEqual([unknown, 2 / 3, 0]);
    expect(mean).toBeCloseTo(1 / 3, 12);
  });

  it("is 0 for items that are all the same", () => {
    expect([...silhouette(condensedOf([[0, 0], [0]]), Int32Array.of(1, 1, 2)).widths]).toEqual([0, 0, 0]);
  });
});
