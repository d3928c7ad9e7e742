import type { ReadingError } from "../../measures/readingError.ts";
import { readingErrorMm, usualReadingError } from "../../measures/readingError.ts";
import type { ComparedColumn } from "../columns.ts";

/**
 * Standard uncertainty of one reading of a measure, in mm: one standard deviation, see `ReadingError`.
 *
 * @param column the measure
 * @param mm the reading
 * @param place of the figure in the chart, from 0; left out for one reading off the tape
 */
export type Uncertainty = (column: ComparedColumn, mm: number, place?: number) => number;

/** The errors that count for a chart, as uncertainties: those of single measures where there are any, the usual one elsewhere. */
export function repeatedUncertainty(errors: ReadingError): Uncertainty {
  return ({ column }, mm, place) => readingErrorMm(errors, mm, column.key, place);
}

/** The usual error of a reading, whatever the measure. */
export const usualUncertainty: Uncertainty = repeatedUncertainty(usualReadingError);
