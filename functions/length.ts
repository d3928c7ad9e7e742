import { unitOfFraction } from "../addin/chart/unitsOfColumns.ts";
import { optionalUnit, reading, unit } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notALength, notAUnit } from "./failures.ts";
import { shownLength } from "./shown.ts";

export const lengthFunction = defineFunction({
  name: "LENGTH",
  summary: "Turns a tape reading in any common writing into a number in the unit that you want.",
  details:
    "A reading that names its unit is in that unit. One that names none is in from_unit; where that is left out, it is " +
    "in inches if it is written with a fraction, and in mm otherwise. Marks for “not taken” (-, n/a, ?) give a blank.",
  parameters: {
    reading: reading('The reading, as text or number: 5 3/8, 5⅜", 13,65 cm, 136 mm, 1\' 4 1/2".'),
    to_unit: unit("The unit of the result: mm, cm or in.", "mm"),
    from_unit: optionalUnit(
      "The unit of a reading that names none: mm, cm or in.",
      "in for a fraction, mm for anything else",
    ),
  },
  result: "number",
  examples: [
    { formula: 'FIT.LENGTH("5 3/8")', values: ["5 3/8"], gives: 136.525 },
    { formula: 'FIT.LENGTH("13,65 cm")', values: ["13,65 cm"], gives: 136.5 },
    { formula: 'FIT.LENGTH("136 mm", "in")', values: ["136 mm", "in"], gives: 5.354 },
    { formula: 'FIT.LENGTH(5.375, "cm", "in")', values: [5.375, "cm", "in"], gives: 13.653 },
    { formula: 'FIT.LENGTH("n/a")', values: ["n/a"], gives: "" },
  ],
  failures: [notALength, notAUnit],
  source: "An inch is 25.4 mm exactly (international yard and pound agreement, 1959).",
  compute: ({ reading: given, to_unit, from_unit }) => {
    const mm = from_unit ? given.mm(from_unit) : given.mm("mm", unitOfFraction);
    return mm === undefined ? "" : shownLength(mm, to_unit);
  },
});
