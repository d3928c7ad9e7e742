/*
 * A verdict within one standard deviation of a reading from its limit is too close to call. Beyond that it is right in at least
 * five of six cases, since a reading is off by more than one standard deviation to one side in one of six.
 */
export type { ReadingError } from "../measures/readingError.ts";
export { readingErrorMm, usualReadingError } from "../measures/readingError.ts";
