import type { ReadingError } from "../../measures/readingError.ts";
import { readingErrorMm, usualReadingError } from "../../measures/readingError.ts";
import type { ComparedColumn } from "../columns.ts";

/**
 * Standard uncertainty of one reading of a measure, in mm: one standard deviation, see `ReadingError`.
 *
 * @param column the measure
 * @param mm the reading
 */
export type Uncertainty = (column: ComparedColumn, mm: number) => number;

/** The errors that count for a chart, as uncertainties: those of single measures where there are any, the usual one elsewhere. */
export function repeatedUncertainty(errors: ReadingError): Uncertainty {
  return ({ column }, mm) => readingErrorMm(errors, mm, column.key);
}

/** The usual error of a reading, whatever the measure. */
export const usualUncertainty: Uncertainty = repeatedUncertainty(usualReadingError);
