/** At this size neighbouring floating-point numbers are 2⁻³⁶ apart. */
export const grid = 1.5 * 2 ** 16;

/**
 * A distance in tolerances to the nearest 2⁻³⁶ (about 0.000000000015; coarser above 32,768 tolerances). Readings such as
 * 4 7/8 in have no exact value in millimetres; with their noise rounded away, equal distances are equal, whatever the unit
 * and the order of columns, and a difference of exactly one tolerance is 1.
 */
export function roundDistance(distance: number): number {
  return distance + grid - grid;
}
