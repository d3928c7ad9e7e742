import { technicalError } from "../addin/checking/technicalError.ts";
import type { Numbers } from "./arguments.ts";
import { lengths } from "./arguments.ts";
import { defineFunction, naming } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { shown } from "./shown.ts";

export const temFunction = defineFunction({
  name: "TEM",
  summary: "How closely you repeat yourself: the technical error of measurement of two rounds of readings.",
  details:
    "TEM = √(Σd² / 2N) over the pairs of readings, in their unit. Measure the same things twice, on another day, and " +
    "give both rounds in the same order. A pair with a blank is left out.",
  parameters: {
    first_readings: lengths("The first round."),
    second_readings: lengths("The second round, in the same order."),
  },
  result: "number",
  examples: [
    {
      formula: "FIT.TEM({80;120.5;62}, {80.5;121;61.5})",
      values: [
        [[80], [120.5], [62]],
        [[80.5], [121], [61.5]],
      ],
      gives: 0.354,
    },
  ],
  failures: [
    notANumber,
    { when: "The two rounds differ in size, or nothing was read in both.", shows: "#VALUE!" },
  ],
  source: "S. J. Ulijaszek and D. A. Kerr, British Journal of Nutrition 82 (1999), 165–177.",
  compute: ({ first_readings, second_readings }) => {
    const first = flat(first_readings);
    const second = flat(second_readings);
    return [...first, ...second].every(Number.isNaN)
      ? ""
      : shown(naming("second_readings", () => technicalError(first, second)).tem);
  },
});

function flat(values: Numbers): number[] {
  return values.flat().map((value) => value ?? Number.NaN);
}
