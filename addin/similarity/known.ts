/**
 * Two figures count as compared when both have readings of at least this share of the measures. The project’s own
 * starting value.
 */
export const leastComparedShare = 0.5;

/**
 * True when the distance of two figures is known.
 *
 * @param compared number of measures that both figures have
 * @param of number of measures that were asked for
 * @param lacksRequired true when one has no reading of a required measure
 */
export function isKnown(compared: number, of: number, lacksRequired: boolean): boolean {
  return !lacksRequired && compared > 0 && compared >= of * leastComparedShare;
}
