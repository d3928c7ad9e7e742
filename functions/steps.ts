import type { Chart, MeasureColumn } from "../addin/chart/chart.ts";
import type { ToleranceTable } from "../addin/chart/tolerances.ts";
import type { RunStep } from "../addin/grading/gradeRun.ts";
import { gradeRun } from "../addin/grading/gradeRun.ts";
import { verdictWords } from "../addin/grading/printWords.ts";
import type { Step } from "../addin/grading/steps.ts";
import { steps } from "../addin/grading/steps.ts";
import { columnsOfZone } from "../addin/similarity/columns.ts";
import { chart, choice, names, tolerances } from "./arguments.ts";
import { yesOrNo } from "./choices.ts";
import { columnsCalled } from "./columnsOf.ts";
import type { Table, Value } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { withDoubts } from "./doubtMarks.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import { shown, shownLength } from "./shown.ts";

export const stepsFunction = defineFunction({
  name: "STEPS",
  summary: "The differences from each row of a chart to the next, as between the sizes of a size chart.",
  details:
    "Rows are taken in the order of the chart. Lengths are in the unit of their column. Missing names the measures for which " +
    "one of the two readings is missing.\n\nWith advice, Width % and Height % are the scales to print at for the step, and Says tells " +
    "whether a print will do for it, what to let out or take in after it, or that the next size has another shape: the same " +
    "verdict as that of RESIZE. It rests on the measures wanted, or on those that decide fit where none are named; name a " +
    "garment, such as Bodice, for the measures that move it. Says also names the measures whose step differs from the one " +
    "before. For the movement of every point over a run of sizes, see GRADE with several targets.\n\n" +
    "Where a step rests on a flagged or estimated reading, a last column Doubtful says on which, and what it would be if that were " +
    `mended. ${doubtfulNote}`,
  parameters: {
    chart: chart(),
    measures: names(
      "The measures wanted, or a garment or piece: a range of names, or one text with commas.",
      "all measures",
    ),
    advice: choice("yes to have each step judged: print it larger, alter it, or draft anew.", yesOrNo, "no"),
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
        ["From", "To", "Bust", "Waist", "Missing", "Width %", "Height %", "Says"],
        [
          "Linnet",
          "Dunnock",
          1,
          1,
          "",
          101,
          101,
          "Print at 101 %. At worst Bust is 0.3 mm too large, which is within tolerance.",
        ],
        [
          "Dunnock",
          "Teal",
          54,
          54,
          "",
          153,
          153,
          "Print at 153 %, then take in Bust by 18.1 mm. Waist is within tolerance. Another step than before: Bust, Waist.",
        ],
        [
          "Teal",
          "Siskin",
          2,
          -1,
          "",
          100,
          100,
          "Print at 100 %. At worst Bust is 2 mm too small, which is within tolerance. Another step than before: Bust, Waist.",
        ],
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
    const tableOn = (on: Chart) => stepsTable(on, measures, advice === "yes", allowed(sizes));
    const columns = measures && columnsCalled(sizes, measures);
    return withDoubts(sizes, tableOn, { keys: 2, columns });
  },
});

function stepsTable(
  sizes: Chart,
  measures: readonly string[] | undefined,
  isJudged: boolean,
  allowed: ToleranceTable | undefined,
): Table {
  const columns = measures ? columnsCalled(sizes, measures) : sizes.measures;
  const run = steps(sizes, columns);
  const judged = isJudged ? gradeRun(sizes, judgedColumns(sizes, measures && columns), allowed) : [];
  return [
    [
      "From",
      "To",
      ...columns.map(({ heading }) => heading),
      "Missing",
      ...(isJudged ? ["Width %", "Height %", "Says"] : []),
    ],
    ...run.map((step, i) => [
      step.from,
      step.to,
      ...columns.map(({ unit }, c) => shownLength(step.deltasMm[c] ?? Number.NaN, unit)),
      columns
        .filter((_, c) => Number.isNaN(step.deltasMm[c]))
        .map(({ heading }) => heading)
        .join(", "),
      ...(judged[i] ? verdictCells(judged[i], unevenWords(step, run[i - 1], columns)) : []),
    ]),
  ];
}

/** At which scales to print it, and what that leaves. */
function verdictCells({ scale }: RunStep, uneven: readonly string[]): readonly Value[] {
  const { across, along } = scale.best;
  return [shown(across.percent), shown(along.percent), [verdictWords(scale), ...uneven].join(" ")];
}

/** What a step is judged by: the measures wanted, else those that decide fit, else all. */
function judgedColumns(sizes: Chart, wanted: readonly MeasureColumn[] | undefined): readonly MeasureColumn[] {
  if (wanted) return wanted;
  const deciding = columnsOfZone(sizes, "body").map(({ column }) => column);
  return deciding.length > 0 ? deciding : sizes.measures;
}

/** Readings in inches arrive with binary dust. */
const dustMm = 1e-6;

function unevenWords(
  step: Step,
  before: Step | undefined,
  columns: readonly MeasureColumn[],
): readonly string[] {
  const uneven = columns.filter(
    (_, c) => Math.abs((step.deltasMm[c] ?? Number.NaN) - (before?.deltasMm[c] ?? Number.NaN)) > dustMm,
  );
  return uneven.length > 0
    ? [`Another step than before: ${uneven.map(({ heading }) => heading).join(", ")}.`]
    : [];
}
