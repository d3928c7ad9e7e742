import { expect, it } from "vitest";
import { invertInPlace } from "../../addin/checking/cholesky.ts";

it("inverts a matrix of which the inverse is known", () => {
  // The inverse of a matrix of two rows by the textbook formula: swap, negate, divide by the determinant, here 8.
  const two = Float64Array.of(4, 2, 2, 3);
  expect(invertInPlace(two, 2)).toBe(true);
  [3 / 8, -2 / 8, -2 / 8, 4 / 8].forEach((entry, at) => expect(two[at]).toBeCloseTo(entry, 14));
  // The Hilbert matrix of three rows: its inverse is whole.
  const hilbert = Float64Array.from({ length: 9 }, (_, at) => 1 / (Math.floor(at / 3) + (at % 3) + 1));
  expect(invertInPlace(hilbert, 3)).toBe(true);
  [9, -36, 30, -36, 192, -180, 30, -180, 180].forEach((entry, at) =>
    expect(hilbert[at]).toBeCloseTo(entry, 9),
  );
});

it("says when there is no inverse to be had", () => {
  expect(invertInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBe(false);
});
