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

/**
 * What a garment’s own cloth takes of the room inside. A pattern is drafted flat, and cloth that is bent round keeps its
 * length half way through its thickness; its inner face is half a thickness further in: 2π·t/2 = πt shorter (geometry).
 *
 * @param thickness thickness of one layer of the garment’s cloth
 * @returns what the inner girth is less than the finished girth, in the same unit
 * @example
 * ownRoom(2); // 6.28…: a felt of 2 mm that is 162 mm round leaves 155.7 mm inside
 */
export function ownRoom(thickness: number): number {
  return Math.PI * thickness;
}
