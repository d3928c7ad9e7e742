import { comparedOf } from "../similarity/chartOf.ts";

/**
 * Twelve girths of ten men in cm: shoulders, chest, waist, abdomen, hip, thigh, biceps, forearm, knee, calf, ankle, wrist.
 *
 * Source: the first ten rows of G. Heinz, L. J. Peterson, R. W. Johnson and C. J. Kerk, “Exploring Relationships in Body
 * Dimensions”, Journal of Statistics Education 11(2), 2003.
 */
export const body10Cm: readonly (readonly number[])[] = [
  [106.2, 89.5, 71.5, 74.5, 93.5, 51.5, 32.5, 26, 34.5, 36.5, 23.5, 16.5],
  [110.5, 97, 79, 86.5, 94.8, 51.5, 34.4, 28, 36.5, 37.5, 24.5, 17],
  [115.1, 97.5, 83.2, 82.9, 95, 57.3, 33.4, 28.8, 37, 37.3, 21.9, 16.9],
  [104.5, 97, 77.8, 78.8, 94, 53, 31, 26.2, 37, 34.8, 23, 16.6],
  [107.5, 97.5, 80, 82.5, 98.5, 55.4, 32, 28.4, 37.7, 38.6, 24.4, 18],
  [119.8, 99.9, 82.5, 80.1, 95.3, 57.5, 33, 28, 36.6, 36.1, 23.5, 16.9],
  [123.5, 106.9, 82, 84, 101, 60.9, 42.4, 32.3, 40.1, 40.3, 23.6, 18.8],
  [120.4, 102.5, 76.8, 80.5, 98, 56, 34.1, 28, 39.2, 36.7, 22.5, 18],
  [111, 91, 68.5, 69, 89.5, 50, 33, 26, 35.5, 35, 22, 16.5],
  [119.5, 93.5, 77.5, 81.5, 99.8, 59.8, 36.5, 29.2, 38.3, 38.6, 22.2, 16.9],
];

/** The rows as columns to compare. The lengths stay the numbers of the source, so that results do too. */
export const body10 = comparedOf(body10Cm, { floorMm: 3, percent: 0 });
