import { girthOverLayers } from "./girthOverLayers.ts";

/** The share of a cloth’s stretch that is comfortable in wear. Common practice; the project’s own starting value. */
export const comfortableShare = 0.5;

/**
 * What is left when an opening passes over an obstacle: a neck over the head, a sleeve over the hand. Negative
 * when it will not pass, by that much.
 *
 * @param opening girth of the opening, unstretched
 * @param obstacle girth that must pass through, in the same unit
 * @param options.stretch how far the cloth stretches, as a fraction (0.25 is 25 %)
 * @param options.stretchShare share of the stretch that is used
 * @param options.thickness thickness of what covers the obstacle or turns in the opening, in the same unit
 * @returns clearance in the same unit
 * @example
 * clearance(100, 110, { stretch: 0.3 }); // 5: the opening reaches 115
 */
export function clearance(
  opening: number,
  obstacle: number,
  options: { stretch?: number; stretchShare?: number; thickness?: number } = {},
): number {
  const { stretch = 0, stretchShare = comfortableShare, thickness = 0 } = options;
  return opening * (1 + stretch * stretchShare) - girthOverLayers(obstacle, thickness);
}
