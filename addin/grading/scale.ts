/**
 * Height of the person that a figure represents when none is given: an adult woman, in mm. The project’s own
 * starting value, a round one for the trade’s scales: 280 mm is 1:6, 420 mm is 1:4, 560 mm is 1:3.
 */
export const adultHeightMm = 1680;

/**
 * Scale of a figure as the x of 1:x: the height of the person it represents / its own height.
 *
 * @param figureHeight height of the figure, above 0
 * @param fullHeight height of the person, in the same unit
 * @example
 * figureScale(280, 1680); // 6, that is 1:6
 */
export function figureScale(figureHeight: number, fullHeight: number): number {
  return fullHeight / figureHeight;
}
