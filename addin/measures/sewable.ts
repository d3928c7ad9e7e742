/** Beyond this share of a garment’s own measure a change is a new draft. The project’s own starting value. */
export const largestShare = 0.1;

/**
 * True when a measure of a garment can be changed by letting out or taking in, lengthening or shortening.
 *
 * @param changeMm more, or below 0 less
 * @param ofMm what the garment measures before
 */
export function isSewable(changeMm: number, ofMm: number): boolean {
  return Math.abs(changeMm) <= largestShare * ofMm;
}
