/*
 * What is meant by the error of a reading, everywhere: one standard deviation of the readings that are taken of one
 * measure of one figure. Two readings in three are off by less, nineteen in twenty by less than twice as much; two readings of
 * the same differ by √2 of it as a rule.
 *
 * It is found from figures that were measured twice (technical error of measurement), measure by measure. Where they are too few it
 * is half a millimetre, or a quarter of one percent where that is more: the project’s own starting value for careful readings of a
 * small figure. How sure it is that figures share and which verdicts are too close to call go by it. A length that stands for
 * several readings of the table Readings has a smaller one, see `settledErrorMm`.
 */

/** Standard deviation of one reading: the larger of a length and a share of the reading; of some measures one of their own. */
export interface ReadingError {
  /** mm */
  readonly mm: number;
  /** percent of the reading */
  readonly percent: number;
  /** mm by the key of the measure, where the chart’s own repeats have shown it. */
  readonly ofMeasures?: Readonly<Record<string, number>>;
  /** mm by the key of the measure, then by the place of the figure in the chart: of lengths that stand for several readings. */
  readonly ofReadings?: Readonly<Record<string, Readonly<Record<number, number>>>>;
}

/** Of a careful tape reading of a small figure. The project’s own starting value. */
export const usualReadingError: ReadingError = { mm: 0.5, percent: 0.25 };

/**
 * Standard deviation of a reading, in mm; of a length that stands for several readings, that of their mean or median.
 *
 * @param readingMm the reading; NaN gives NaN
 * @param measure its key, where measures have errors of their own
 * @param figure whose reading in the chart it is, from 0; left out for one reading off the tape
 */
export function readingErrorMm(
  error: ReadingError,
  readingMm: number,
  measure?: string,
  figure?: number,
): number {
  const own =
    measure === undefined
      ? undefined
      : (error.ofReadings?.[measure]?.[figure ?? -1] ?? error.ofMeasures?.[measure]);
  if (own !== undefined) return Number.isNaN(readingMm) ? Number.NaN : own;
  return Math.max(error.mm, (error.percent / 100) * readingMm);
}
