/**
 * A piece that was cut with seam allowance, resized as it should be: allowance off, scaled, allowance on again.
 *
 * @param cut cut length or width of the piece, in any unit
 * @param factor the print scale
 * @param allowance seam allowance on each of the two edges, in the same unit
 * @returns the new cut length or width
 * @example
 * resizedCut(8.5, 0.75, 0.25); // 6.5
 */
export function resizedCut(cut: number, factor: number, allowance: number): number {
  return (cut - 2 * allowance) * factor + 2 * allowance;
}

/** What a print does to a seam allowance that is on the pattern. */
export interface PrintedAllowance {
  /** Its width on paper. */
  readonly printed: number;
  /** To add along every edge after printing; below 0, to trim. */
  readonly toAdd: number;
}

/**
 * The seam allowance on paper after printing at a scale, and what is to be added to have it as it was.
 *
 * @param allowance seam allowance, in any unit
 * @param factor the print scale
 * @example
 * printedAllowance(6, 0.75); // { printed: 4.5, toAdd: 1.5 }
 */
export function printedAllowance(allowance: number, factor: number): PrintedAllowance {
  return { printed: allowance * factor, toAdd: allowance - allowance * factor };
}
