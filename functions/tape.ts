import { formatFraction } from "../addin/measures/formatFraction.ts";
import { fromMm } from "../addin/measures/units.ts";
import { unitOfFraction } from "../addin/chart/unitsOfColumns.ts";
import { count, optionalUnit, readingOrDifference } from "./arguments.ts";
import { defineFunction, naming } from "./descriptor.ts";
import { notALength, notAUnit } from "./failures.ts";

export const tapeFunction = defineFunction({
  name: "TAPE",
  summary: "A length as you read it on an inch tape, to the nearest sixteenth or another fraction.",
  details: "The result is text. A difference below zero keeps its sign.",
  parameters: {
    length: readingOrDifference("The length, or a difference such as DELTA gives."),
    from_unit: optionalUnit(
      "The unit of a length that names none: mm, cm or in.",
      "in for a fraction, mm for anything else",
    ),
    denominator: count("The finest mark of the tape, as parts of an inch: 4, 8, 16, 32 …", 16),
  },
  result: "text",
  examples: [
    { formula: "FIT.TAPE(136.5)", values: [136.5], gives: '5 3/8"' },
    { formula: 'FIT.TAPE(13.4, "cm", 4)', values: [13.4, "cm", 4], gives: '5 1/4"' },
    { formula: 'FIT.TAPE(5.375, "in")', values: [5.375, "in"], gives: '5 3/8"' },
    { formula: "FIT.TAPE(-6.5)", values: [-6.5], gives: '-1/4"' },
  ],
  failures: [
    notALength,
    notAUnit,
    { when: "The denominator is not 1, 2, 4, 8, 16, 32 or 64.", shows: "#VALUE!" },
  ],
  source: "An inch is 25.4 mm exactly (international yard and pound agreement, 1959).",
  compute: ({ length, from_unit, denominator }) => {
    const mm = from_unit ? length.mm(from_unit) : length.mm("mm", unitOfFraction);
    return mm === undefined ? "" : naming("denominator", () => formatFraction(fromMm(mm, "in"), denominator));
  },
});
