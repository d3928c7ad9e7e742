import { figureIndex, measureColumn } from "../addin/chart/find.ts";
import { expectations, expectedValue } from "../addin/checking/expectedValue.ts";
import { onceFor } from "../addin/chart/workOnce.ts";
import { fewestFigures, fewestMeasures, fewestReadings } from "../addin/checking/proportions.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import { chart, figureName, text } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { emptyChart, unknownFigure } from "./failures.ts";
import { shownLength } from "./shown.ts";

/** A column of formulas asks for one reading after the other of the same chart. */
const lackingOnce = onceFor(expectations);

export const expectedFunction = defineFunction({
  name: "EXPECTED",
  summary: "What a reading can be expected to be, from the proportions of the chart: an estimate.",
  details:
    "The size of the figure times the usual proportion of the measure, then its build as its other readings show it, and what " +
    "figures like it have there. The reading itself, if there is one, takes no part. About nineteen in twenty readings lie " +
    "from Low to High, as the readings of the chart itself stray. Lengths are in the unit of the column. An estimate is no reading: " +
    "use it to see whether a reading can be right, and do not write it into the chart.",
  parameters: {
    chart: chart(),
    figure: figureName("A figure of the chart."),
    measure: text("A measure of the chart, with or without a reading of that figure."),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.EXPECTED(A1:F6, "Teal", "Waist")',
      values: [
        [
          ["Figure", "Bust", "Waist", "Hip", "Arm length", "Inside leg"],
          ["Linnet", 135, 100, 140, 90, 180],
          ["Dunnock", 162, 120, 168, 108, 216],
          ["Pipit", 148.5, 110, 154, 99, 198],
          ["Teal", 189, "", 196, 126, 252],
          ["Siskin", 202.5, 150, 210, 135, 270],
        ],
        "Teal",
        "Waist",
      ],
      gives: [
        ["Figure", "Measure", "Expected", "Low", "High", "Note"],
        ["Teal", "Waist (mm)", 140, 137.283, 142.771, "Estimate. There is no reading."],
      ],
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "The measure has no column in the chart. The message offers the nearest names.", shows: "#N/A" },
  ],
  source:
    "Of the logarithms of the readings: median polish (J. W. Tukey, Exploratory Data Analysis, 1977), then factor analysis by the " +
    "EM algorithm (D. B. Rubin and D. T. Thayer, Psychometrika 47, 1982), with strays weighed as from a t distribution " +
    "(K. L. Lange, R. J. A. Little and J. M. G. Taylor, JASA 84, 1989), then simple kriging from like figures.",
  compute: ({ chart: figures, figure, measure }) => {
    const i = figureIndex(figures, figure);
    const column = measureColumn(figures, measure);
    const expected = expectedValue(figures, i, figures.measures.indexOf(column), lackingOnce);
    const heading = `${column.heading} (${column.unit})`;
    const reading = column.mm[i] ?? Number.NaN;
    const known = Number.isNaN(reading)
      ? "There is no reading."
      : `The reading is ${lengthWords(reading, column.unit)}.`;
    const cells = expected
      ? [expected.mm, expected.lowMm, expected.highMm].map((mm) => shownLength(mm, column.unit))
      : ["", "", ""];
    return [
      ["Figure", "Measure", "Expected", "Low", "High", "Note"],
      [figures.figures[i] ?? "", heading, ...cells, `${expected ? "Estimate." : tooLittle} ${known}`],
    ];
  },
});

const tooLittle =
  `No estimate: it takes ${String(fewestFigures)} figures and ${String(fewestMeasures)} measures that grow with the figure, ` +
  `each with ${String(fewestReadings)} readings, this figure and this measure among them.`;
