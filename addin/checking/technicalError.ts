import { InputError } from "../measures/inputError.ts";

/** How well somebody repeats their own readings. Lengths in the unit of the readings. */
export interface TechnicalError {
  /** Technical error of measurement: the typical error of one reading. */
  readonly tem: number;
  readonly mean: number;
  /** `tem` in percent of `mean`. */
  readonly relativePercent: number;
  /** How many things were read at least twice. */
  readonly pairs: number;
}

/**
 * Technical error of measurement from two readings of each thing: √(Σd² / 2N).
 *
 * Source: Ulijaszek & Kerr, British Journal of Nutrition 82 (1999), 165–177.
 *
 * @param first first readings, any one unit; NaN is missing
 * @param second second readings of the same things, in the same order
 * @throws {InputError} when the lists differ in length or no thing was read twice
 * @example
 * technicalError([80, 62], [81, 61]).tem; // => 0.7071 (√(2 / 4))
 */
export function technicalError(first: readonly number[], second: readonly number[]): TechnicalError {
  if (first.length !== second.length) {
    throw new InputError(
      `There are ${first.length} first readings and ${second.length} second readings. Give as many of one as of the other.`,
    );
  }
  return technicalErrorOfReadings(first.map((reading, i) => [reading, second[i]!]));
}

/**
 * The same from any number of readings a thing: √(Σ(ΣM² − (ΣM)²/K) / Σ(K − 1)), which is the published
 * √(… / (N(K − 1))) when each thing was read K times. Things read less than twice are left out.
 *
 * @param readings one list of readings a thing; NaN is missing
 * @throws {InputError} when nothing was read twice
 */
export function technicalErrorOfReadings(readings: readonly (readonly number[])[]): TechnicalError {
  const repeated = readings
    .map((list) => list.filter((reading) => !Number.isNaN(reading)))
    .filter((list) => list.length >= 2);
  if (repeated.length === 0) {
    throw new InputError("No measure has two readings. Read at least one measure twice.");
  }
  const count = repeated.reduce((sum, list) => sum + list.length, 0);
  const mean = repeated.reduce((sum, list) => sum + total(list), 0) / count;
  const squares = repeated.reduce((sum, list) => sum + squaresAboutMean(list), 0);
  const tem = Math.sqrt(squares / (count - repeated.length));
  return { tem, mean, relativePercent: (100 * tem) / mean, pairs: repeated.length };
}

function total(list: readonly number[]): number {
  return list.reduce((sum, reading) => sum + reading, 0);
}

/** ΣM² − (ΣM)²/K, in the form that does not lose digits. */
export function squaresAboutMean(list: readonly number[]): number {
  const mean = total(list) / list.length;
  return list.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
}
