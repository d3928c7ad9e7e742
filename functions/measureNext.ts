import { nextReadings } from "../addin/similarity/next.ts";
import { chart, count, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";

export const measureNextFunction = defineFunction({
  name: "MEASURENEXT",
  summary: "What to measure next: the missing readings that would tell most about who shares a body.",
  details:
    "A pair of figures is open when readings are missing to say whether they share a body, and nothing yet says that they do " +
    "not. Settles counts the open pairs that the reading alone would answer, Needed by those that wait for it, perhaps " +
    "among others. Nothing below the headings means that no reading is missing for any pair.",
  parameters: {
    chart: chart(),
    tolerances: tolerances(),
    count: count("How many readings to list.", 10),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.MEASURENEXT(A1:D5, Tolerances[#All])",
      values: [
        [
          ["Figure", "Bust", "Waist", "Hip"],
          ["Linnet", 135, 100, 140],
          ["Dunnock", 136, "", 142],
          ["Pipit", 137, 101, 141],
          ["Teal", 190, 155, ""],
        ],
        exampleTolerances,
      ],
      gives: [
        ["Figure", "Measure", "Settles", "Needed by"],
        ["Dunnock", "Waist", 2, 2],
      ],
    },
  ],
  failures: [emptyChart, badTolerances, nothingToCompare],
  compute: ({ chart: figures, tolerances: allowed, count: wanted }) => [
    ["Figure", "Measure", "Settles", "Needed by"],
    ...nextReadings(figures, columnsOf(figures, allowed(figures)))
      .slice(0, wanted)
      .map(({ figure, column, settles, neededBy }) => [figure, column.heading, settles, neededBy]),
  ],
});
