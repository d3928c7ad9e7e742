import { measureColumn } from "../addin/chart/find.ts";
import { steps } from "../addin/grading/steps.ts";
import { chart, names } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { emptyChart } from "./failures.ts";
import { shownLength } from "./shown.ts";

export const stepsFunction = defineFunction({
  name: "STEPS",
  summary: "The differences from each row of a chart to the next, as between the sizes of a size chart.",
  details:
    "Rows are taken in the order of the chart. Lengths are in the unit of their column. The last column names the " +
    "measures for which one of the two readings is missing.",
  parameters: {
    chart: chart(),
    measures: names("The measures wanted: a range of headings, or one text with commas.", "all measures"),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.STEPS(Figures[#All], "Bust, Waist")',
      values: [exampleChart, "Bust, Waist"],
      gives: [
        ["From", "To", "Bust", "Waist", "Missing"],
        ["Linnet", "Dunnock", 1, 1, ""],
        ["Dunnock", "Teal", 54, 54, ""],
        ["Teal", "Siskin", 2, -1, ""],
      ],
    },
  ],
  failures: [
    emptyChart,
    { when: "A measure is not in the chart. The message offers the nearest headings.", shows: "#N/A" },
  ],
  compute: ({ chart: sizes, measures }) => {
    const columns = measures?.map((name) => measureColumn(sizes, name)) ?? sizes.measures;
    return [
      ["From", "To", ...columns.map(({ heading }) => heading), "Missing"],
      ...steps(sizes, columns).map(({ from, to, deltasMm }) => [
        from,
        to,
        ...columns.map(({ unit }, i) => shownLength(deltasMm[i] ?? Number.NaN, unit)),
        columns
          .filter((_, i) => Number.isNaN(deltasMm[i]))
          .map(({ heading }) => heading)
          .join(", "),
      ]),
    ];
  },
});
