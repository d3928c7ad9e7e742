import { describe, expect, it } from "vitest";
import { withinProbability } from "../../addin/similarity/certainty/certainty.ts";

/**
 * Areas of the normal curve within ±z, 2Φ(z) − 1, and below z, Φ(z), by R 4.2.2:
 * print(pnorm(c(0.5, 1, 1.5, 2, 2.5, 3)), digits = 12); print(qnorm(c(0.975, 0.995)), digits = 12)
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

  it("has the limits of 95 % and of 99 %", () => {
    expect(withinProbability(0, 1, 1.959963985)).toBeCloseTo(0.95, 6);
    expect(withinProbability(0, 1, 2.575829304)).toBeCloseTo(0.99, 6);
  });
});
