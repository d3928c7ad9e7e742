import type { MeasureColumn } from "../addin/chart/chart.ts";
import { measureColumn } from "../addin/chart/find.ts";
import { gradeAdviceWords } from "../addin/grading/gradeAdvice.ts";
import type { RunStep } from "../addin/grading/gradeRun.ts";
import { gradeRun } from "../addin/grading/gradeRun.ts";
import { chart, choice, names, tolerances } from "./arguments.ts";
import { yesOrNo } from "./choices.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart } from "./failures.ts";
import { shown, shownLength } from "./shown.ts";

export const stepsFunction = defineFunction({
  name: "STEPS",
  summary: "The differences from each row of a chart to the next, as between the sizes of a size chart.",
  details:
    "Rows are taken in the order of the chart. Lengths are in the unit of their column. Missing names the measures for which " +
    "one of the two readings is missing.\n\nWith advice, Print scale % is the best single scale for the step, and Says tells " +
    "whether the step is a grade or another shape: where the best print scale, even for girths and lengths apart, leaves a " +
    "measure beyond its tolerance, draft anew. It also names the measures whose step differs from the one before. For the " +
    "movement of every point over a run of sizes, see GRADE with several targets.",
  parameters: {
    chart: chart(),
    measures: names("The measures wanted: a range of headings, or one text with commas.", "all measures"),
    advice: choice("yes to have each step judged: grade, or draft anew.", yesOrNo, "no"),
    tolerances: tolerances(),
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
    {
      formula: 'FIT.STEPS(Figures[#All], "Bust, Waist", "yes")',
      values: [exampleChart, "Bust, Waist", "yes"],
      gives: [
        ["From", "To", "Bust", "Waist", "Missing", "Print scale %", "Says"],
        ["Linnet", "Dunnock", 1, 1, "", 100.87, "Grade."],
        [
          "Dunnock",
          "Teal",
          54,
          54,
          "",
          146.424,
          "Draft anew: at the best print scale Waist is 7.1 mm too small. Another step than before: Bust, Waist.",
        ],
        ["Teal", "Siskin", 2, -1, "", 100.2, "Grade. Another step than before: Bust, Waist."],
      ],
    },
  ],
  failures: [
    emptyChart,
    { when: "A measure is not in the chart. The message offers the nearest headings.", shows: "#N/A" },
    { when: "advice is neither yes nor no.", shows: "#VALUE!" },
    badTolerances,
  ],
  compute: ({ chart: sizes, measures, advice, tolerances: allowed }) => {
    const columns = measures?.map((name) => measureColumn(sizes, name)) ?? sizes.measures;
    const run = gradeRun(sizes, columns, allowed(sizes));
    const isJudged = advice === "yes";
    return [
      [
        "From",
        "To",
        ...columns.map(({ heading }) => heading),
        "Missing",
        ...(isJudged ? ["Print scale %", "Says"] : []),
      ],
      ...run.map((step, i) => [
        step.from,
        step.to,
        ...columns.map(({ unit }, c) => shownLength(step.deltasMm[c] ?? Number.NaN, unit)),
        columns
          .filter((_, c) => Number.isNaN(step.deltasMm[c]))
          .map(({ heading }) => heading)
          .join(", "),
        ...(isJudged
          ? [
              shown(step.scale.factor * 100),
              [gradeAdviceWords(step.scale), ...unevenWords(step, run[i - 1], columns)].join(" "),
            ]
          : []),
      ]),
    ];
  },
});

/** Readings in inches arrive with binary dust. */
const dustMm = 1e-6;

function unevenWords(
  step: RunStep,
  before: RunStep | undefined,
  columns: readonly MeasureColumn[],
): readonly string[] {
  const uneven = columns.filter(
    (_, c) => Math.abs((step.deltasMm[c] ?? Number.NaN) - (before?.deltasMm[c] ?? Number.NaN)) > dustMm,
  );
  return uneven.length > 0
    ? [`Another step than before: ${uneven.map(({ heading }) => heading).join(", ")}.`]
    : [];
}
