import { girthOverLayers } from "./girthOverLayers.ts";

/**
 * Ease: how much larger the finished garment is than the body with what is worn under it. Negative when the
 * garment must stretch.
 *
 * @param garment finished girth of the garment
 * @param body girth of the body, in the same unit
 * @param underThickness total thickness of the layers under the garment, in the same unit
 * @returns ease in the same unit
 * @example
 * ease(88, 80, 0.5); // 4.86: the layer of 0.5 mm under it takes 3.14 mm of the 8 mm
 */
export function ease(garment: number, body: number, underThickness = 0): number {
  return garment - girthOverLayers(body, underThickness);
}
