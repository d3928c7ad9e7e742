import { describe, expect, it } from "vitest";
import { withinProbability } from "../../addin/similarity/certainty/certainty.ts";

/**
 * Areas of the normal curve within ±z, 2Φ(z) − 1, and below z, Φ(z). Source: M. Abramowitz & I. Stegun, Handbook of
 * Mathematical Functions (1964), table 26.1, to 9 decimals here, typed from memory.
 */
const areas = [
  [0.5, 0.691462461],
  [1, 0.841344746],
  [1.5, 0.933192799],
  [2, 0.977249868],
  [2.5, 0.993790335],
  [3, 0.998650102],
] as const;

describe("withinProbability", () => {
  it.each(areas)("is the area of the normal curve within ±%d standard deviations", (z, below) => {
    expect(withinProbability(0, 1, z)).toBeCloseTo(2 * below - 1, 6);
    expect(withinProbability(0, 0.5, z / 2)).toBeCloseTo(2 * below - 1, 6);
  });

  it.each(areas)("is the area on one side where the other limit is far: z = %d", (z, below) => {
    expect(withinProbability(-100, 1, 100 + z)).toBeCloseTo(below, 6);
    expect(withinProbability(100, 1, 100 - z)).toBeCloseTo(1 - below, 6);
  });

  it("has the 95 % limits of the handbooks", () => {
    expect(withinProbability(0, 1, 1.959963985)).toBeCloseTo(0.95, 6);
    expect(withinProbability(0, 1, 2.575829304)).toBeCloseTo(0.99, 6);
  });
});
