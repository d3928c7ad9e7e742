/** How far a reading may be off: the larger of a length and a share of the reading. */
export interface ReadingError {
  /** mm */
  readonly mm: number;
  /** percent of the reading */
  readonly percent: number;
}

/** A careful tape reading of a small figure. The project’s own starting value. */
export const usualReadingError: ReadingError = { mm: 0.5, percent: 0.25 };

/** mm by which a reading may be off. */
export function readingErrorMm(error: ReadingError, readingMm: number): number {
  return Math.max(error.mm, (error.percent / 100) * readingMm);
}
