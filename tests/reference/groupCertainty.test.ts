import { describe, expect, it } from "vitest";
import { rangeProbability } from "../../addin/similarity/certainty/certainty.ts";

/**
 * The distribution of the range of k standard normal values, by R 4.2.2:
 * options(digits = 12); for (k in c(2, 3, 5, 10, 20)) ptukey(c(1, 2.5, 3.5, 5), k, Inf)
 */
const ranges = [
  [2, 0.520499877813, 0.922900128256, 0.986671671219, 0.999593047983],
  [3, 0.240712641229, 0.819491062793, 0.964442958137, 0.998816008769],
  [5, 0.0450451448071, 0.607457236759, 0.903661536021, 0.996269726195],
  [10, 0.000519869467084, 0.244302557924, 0.717983562367, 0.985142562112],
  [20, 4.96134272822e-8, 0.0309206387092, 0.396395001209, 0.948635336546],
] as const;

describe("rangeProbability, against ptukey of R", () => {
  it.each(ranges)("is the distribution of the range of %i equal readings", (k, ...expected) => {
    [1, 2.5, 3.5, 5].forEach((tolerance, at) => {
      const found = (unit: number) =>
        rangeProbability(new Array<number>(k).fill(100), new Array<number>(k).fill(unit), {
          floorMm: tolerance * unit,
          percent: 0,
        });
      expect(found(1)).toBeCloseTo(expected[at]!, 6);
      expect(found(0.5)).toBeCloseTo(expected[at]!, 6);
    });
  });
});
