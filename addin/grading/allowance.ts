/** What a print does to a seam allowance that is on the pattern. */
export interface PrintedAllowance {
  /** Its width on paper. */
  readonly printed: number;
  /** To add along every edge after printing; below 0, to trim. */
  readonly toAdd: number;
}

/**
 * The seam allowance on paper after printing at a scale, and what is to be added to have it as it was. A piece that was cut
 * with allowance is then as it should be: allowance off, scaled, allowance on again.
 *
 * @param allowance seam allowance, in any unit
 * @param factor the print scale
 * @example
 * printedAllowance(6, 0.75); // { printed: 4.5, toAdd: 1.5 }
 */
export function printedAllowance(allowance: number, factor: number): PrintedAllowance {
  return { printed: allowance * factor, toAdd: allowance - allowance * factor };
}
