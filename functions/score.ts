import { modifiedZ } from "../addin/checking/modifiedZ.ts";
import { numbers } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { shown } from "./shown.ts";

export const scoreFunction = defineFunction({
  name: "SCORE",
  summary: "How far each value stands out from the others (modified z); beyond 3.5 either way, look again.",
  details:
    "Score = 0.6745 × (value − median) / median of the distances from the median. Use it on values that belong " +
    "together: one measure of one body, or the deltas of a row. Blank cells stay blank and take no part. A 0 is a " +
    "value here, so leave empty cells out of the range: some spreadsheets pass them as 0.",
  parameters: { values: numbers("The values, as a row, a column or a block.") },
  result: "table",
  examples: [
    {
      formula: "FIT.SCORE({10;11;12;13;30})",
      values: [[[10], [11], [12], [13], [30]]],
      gives: [[-1.349], [-0.6745], [0], [0.6745], [12.141]],
    },
  ],
  failures: [notANumber],
  source: "B. Iglewicz and D. C. Hoaglin, How to Detect and Handle Outliers (1993).",
  compute: ({ values }) => {
    const scores = modifiedZ(values.flat().map((value) => value ?? Number.NaN));
    const width = values[0]?.length ?? 0;
    return values.map((row, r) => row.map((_, c) => shown(scores[r * width + c] ?? Number.NaN)));
  },
});
