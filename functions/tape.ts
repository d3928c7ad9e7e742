import { InputError } from "../addin/measures/inputError.ts";
import { formatFraction } from "../addin/measures/formatFraction.ts";
import { fromMm } from "../addin/measures/units.ts";
import { count, reading, unit } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notALength, notAUnit } from "./failures.ts";

/** What inch tapes and rulers are marked in. */
const denominators = [1, 2, 4, 8, 16, 32, 64];

export const tapeFunction = defineFunction({
  name: "TAPE",
  summary: "A length as you read it on an inch tape, to the nearest sixteenth or another fraction.",
  details: "The result is text. A difference below zero keeps its sign.",
  parameters: {
    length: reading("The length."),
    from_unit: unit("The unit of a length that names none: mm, cm or in.", "mm"),
    denominator: count("The finest mark of the tape: 1, 2, 4, 8, 16, 32 or 64.", 16),
  },
  result: "text",
  examples: [
    { formula: "FIT.TAPE(136.5)", values: [136.5], gives: '5 3/8"' },
    { formula: 'FIT.TAPE(13.4, "cm", 4)', values: [13.4, "cm", 4], gives: '5 1/4"' },
    { formula: 'FIT.TAPE(5.375, "in")', values: [5.375, "in"], gives: '5 3/8"' },
  ],
  failures: [
    notALength,
    notAUnit,
    { when: "The denominator is not 1, 2, 4, 8, 16, 32 or 64.", shows: "#VALUE!" },
  ],
  source: "An inch is 25.4 mm exactly (international yard and pound agreement, 1959).",
  compute: ({ length, from_unit, denominator }) => {
    if (!denominators.includes(denominator)) {
      throw new InputError(
        `denominator: no tape is marked in parts of 1/${String(denominator)} inch. Write 2, 4, 8, 16, 32 or 64.`,
      );
    }
    const mm = length.mm(from_unit);
    if (mm === undefined) return "";
    const inches = fromMm(mm, "in");
    return `${inches < 0 ? "-" : ""}${formatFraction(Math.abs(inches), denominator)}`;
  },
});
