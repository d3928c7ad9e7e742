/**
 * Radius of the waist edge of a flared skirt that is cut as a part of a circle. The cut edge lies inside the seam line,
 * nearer to the middle of the circle, by the seam allowance.
 *
 *     r = waist / (2π · part) − allowance
 *
 * @param waist finished waist of the skirt, in any unit
 * @param part 1 for a full circle, 0.5 for a half; 2 for two full circles
 * @param allowance seam allowance at the waist, in the same unit
 * @returns the radius to cut at; below 0 when the allowance takes more than there is
 * @example
 * flareRadius(80, 1); // 12.732…
 * flareRadius(80, 0.5, 5); // 20.464…
 */
export function flareRadius(waist: number, part: number, allowance = 0): number {
  return waist / (2 * Math.PI * part) - allowance;
}
