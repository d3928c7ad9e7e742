/** The scales, in percent, that are worth printing at: beyond them a pattern has to be drafted anew. */
export const printablePercent = { least: 50, most: 200 } as const;

/** A scale as a printer takes it. */
export interface PrintSetting {
  /** whole percent */
  readonly percent: number;
  /** What the rounding adds to a length of 1 that is printed: below 0 when the print comes out too small. */
  readonly roundingShare: number;
}

/**
 * A scale in whole percent, with the error that the rounding makes.
 *
 * @param factor the scale, 1 for the same size
 * @example
 * printSetting(0.754); // { percent: 75, roundingShare: −0.004 }
 */
export function printSetting(factor: number): PrintSetting {
  const percent = Math.round(factor * 100);
  return { percent, roundingShare: percent / 100 - factor };
}

/** True from 50 % to 200 %, with room for the last digit of a computed factor. */
export function isPrintable(factor: number): boolean {
  const percent = factor * 100;
  return percent >= printablePercent.least - 1e-9 && percent <= printablePercent.most + 1e-9;
}
