import fc from "fast-check";
import { expect, it } from "vitest";
import { modifiedZ } from "../../addin/checking/modifiedZ.ts";

it("is 0 everywhere when all values are equal", () => {
  expect(modifiedZ([80, 80, 80])).toEqual([0, 0, 0]);
  expect(modifiedZ([80])).toEqual([0]);
  expect(modifiedZ([])).toEqual([]);
});

it("falls back to the mean absolute deviation when more than half are equal", () => {
  // Deviations 0 0 0 0 10: mean 2, so M = 10 / (1.253314 · 2).
  expect(modifiedZ([80, 80, 80, 80, 90])[4]).toBeCloseTo(10 / (1.253314 * 2), 12);
});

it("leaves missing values missing, without letting them touch the others", () => {
  expect(modifiedZ([1, Number.NaN, 2, 3, 4, 100])).toEqual([-1.349, Number.NaN, -0.6745, 0, 0.6745, 65.4265]);
  expect(modifiedZ([Number.NaN])).toEqual([Number.NaN]);
});

it("does not depend on the unit or on a shift", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 30 }),
      fc.integer({ min: -500, max: 500 }),
      (values, shift) => {
        const z = modifiedZ(values);
        modifiedZ(values.map((value) => value * 25.4 + shift)).forEach((other, i) =>
          expect(other).toBeCloseTo(z[i]!, 6),
        );
      },
    ),
  );
});
