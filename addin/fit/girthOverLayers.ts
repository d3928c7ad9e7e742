/**
 * The girth over cloth: each layer of thickness t adds 2πt (geometry of a circle, and of any convex outline).
 *
 * @param girth bare girth
 * @param thickness thickness of one layer, in the unit of the girth
 * @param layers number of layers
 * @returns the outer girth, in the same unit
 * @example
 * girthOverLayers(80, 0.5); // 83.14…: half a millimetre of cloth adds 3.14 mm
 */
export function girthOverLayers(girth: number, thickness: number, layers = 1): number {
  return girth + 2 * Math.PI * thickness * layers;
}
