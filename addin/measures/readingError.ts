/*
 * What is meant by the error of a reading, everywhere: one standard deviation of the readings that one person takes of one
 * measure of one figure. Two readings in three are off by less, nineteen in twenty by less than twice as much; two readings of
 * the same differ by √2 of it as a rule.
 *
 * It is found from figures that were measured twice (technical error of measurement). Where there are none it is half a
 * millimetre, or a quarter of one percent where that is more: the project’s own starting value for careful readings of a
 * small figure.
 */

/** Standard deviation of one reading: the larger of a length and a share of the reading. */
export interface ReadingError {
  /** mm */
  readonly mm: number;
  /** percent of the reading */
  readonly percent: number;
}

/** Of a careful tape reading of a small figure. The project’s own starting value. */
export const usualReadingError: ReadingError = { mm: 0.5, percent: 0.25 };

/**
 * Standard deviation of a reading, in mm.
 *
 * @param readingMm the reading; NaN gives NaN
 */
export function readingErrorMm(error: ReadingError, readingMm: number): number {
  return Math.max(error.mm, (error.percent / 100) * readingMm);
}
