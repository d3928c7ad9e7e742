import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bondOf } from "../../addin/similarity/bond.ts";
import { readingsOf } from "../../addin/similarity/pair.ts";
import { comparedOf } from "./chartOf.ts";

/** Readings with a tolerance of 1 mm. */
function bond(rows: readonly (readonly number[])[], members: readonly number[]) {
  const columns = comparedOf(rows, { floorMm: 1, percent: 0 });
  return bondOf(columns, readingsOf(columns, rows.length), members);
}

describe("bondOf", () => {
  it("takes for the base the member with the least distance to its farthest", () => {
    expect(bond([[0], [4], [9]], [0, 1, 2]).base).toBe(1);
  });

  it("takes the least sum of distances among those", () => {
    // 4 and 6 are both 6 from their farthest, with sums of 15 and 13.
    expect(bond([[0], [4], [6], [10], [7]], [0, 1, 2, 3, 4]).base).toBe(2);
  });

  it("takes the first of equals", () => {
    expect(bond([[7], [7], [7]], [2, 1, 0]).base).toBe(2);
    expect(bond([[7]], [0])).toMatchObject({ base: 0, pair: [0, 0], farthest: { distance: 0 } });
  });

  it("names the first pair that is farthest apart, and how far", () => {
    const found = bond([[0], [9], [9], [3]], [0, 1, 2, 3]);
    expect(found.pair).toEqual([0, 1]);
    expect(found.farthest).toMatchObject({ distance: 9, deltaMm: 9 });
  });

  it("says the same of a group with gaps, whose pairs are all compared one by one", () => {
    const anyRows = fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(anyRows, (rows) => {
        const members = rows.map((_, i) => i);
        // A fourth measure that only the last figure has is compared with nobody.
        const withGaps = rows.map((row, i) => [...row, i === rows.length - 1 ? 5 : Number.NaN]);
        const plain = bond(rows, members);
        const mended = bond(withGaps, members);
        expect([mended.base, mended.pair]).toEqual([plain.base, plain.pair]);
      }),
    );
  });

  it("counts a pair that is not known as farthest", () => {
    // The first two lack each other’s measures, the third has both.
    const unknown = Number.NaN;
    expect(bond([[5, unknown], [unknown, 5], [9, 9]], [0, 1, 2]).base).toBe(2); // prettier-ignore
  });
});
