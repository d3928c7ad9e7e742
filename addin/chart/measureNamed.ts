import { findMeasure, measureById, measures } from "../measures/dictionary.ts";
import { readHeading } from "../measures/heading.ts";
import { InputError } from "../measures/inputError.ts";
import type { Measure } from "../measures/measure.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";

/**
 * The measure of the dictionary that a text names.
 *
 * @param where what the text stands in, to begin the message with
 * @throws {InputError} with near names when the dictionary has no such measure
 */
export function measureNamed(text: string, where: string): Measure {
  const measure = measureById(text) ?? findMeasure(readHeading(text, "mm").name);
  if (measure) return measure;
  const names = measures.flatMap((each) => [each.name, each.shortName]);
  throw new InputError(
    `${where}: ${quote(text)} is not a measure of the dictionary.${didYouMean(text, names)}`,
  );
}
