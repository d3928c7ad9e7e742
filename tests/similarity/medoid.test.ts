import { describe, expect, it } from "vitest";
import { medoid } from "../../addin/similarity/medoid.ts";
import { condensedOf } from "./condensedOf.ts";

describe("medoid", () => {
  it("has the least distance to its farthest", () => {
    expect(medoid(condensedOf([[4, 9], [5]]))).toBe(1);
  });

  it("has the least sum among those", () => {
    // The farthest is 5 away from items 1 and 2, with sums of 12 and 11.
    expect(medoid(condensedOf([[5, 5, 6], [3, 4], [3]]))).toBe(2);
  });

  it("is the first of equals", () => {
    expect(medoid(condensedOf([[1, 1], [1]]))).toBe(0);
    expect(medoid({ size: 1, values: new Float64Array() })).toBe(0);
  });
});
