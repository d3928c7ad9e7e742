import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { naturalOrder } from "../../addin/similarity/nameOrder.ts";

describe("naturalOrder", () => {
  it("puts numbers within names by their size", () => {
    const names = ["Size 10", "Size 2", "Size 2b", "Size", "10", "9", "Ash 007", "Ash 7", "Wren"];
    expect(names.sort(naturalOrder)).toEqual([
      "9",
      "10",
      "Ash 007",
      "Ash 7",
      "Size",
      "Size 2",
      "Size 2b",
      "Size 10",
      "Wren",
    ]);
  });

  it("is an order: the same from either side, and equal for equal names only", () => {
    const name = fc
      .array(fc.constantFrom("a", "b", "1", "01", "10", " "), { maxLength: 5 })
      .map((parts) => parts.join(""));
    fc.assert(
      fc.property(name, name, name, (a, b, c) => {
        expect(Math.sign(naturalOrder(a, b))).toBe(-Math.sign(naturalOrder(b, a)) + 0);
        expect(naturalOrder(a, b) === 0).toBe(a === b);
        if (naturalOrder(a, b) < 0 && naturalOrder(b, c) < 0) expect(naturalOrder(a, c)).toBeLessThan(0);
      }),
    );
  });
});
