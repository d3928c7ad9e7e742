import { figureIndex, measureColumn } from "../addin/chart/find.ts";
import { expectedValue } from "../addin/checking/expectedValue.ts";
import { fewestFigures, fewestMeasures, fewestReadings } from "../addin/checking/proportions.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import { chart, text } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { emptyChart, unknownFigure } from "./failures.ts";
import { shownLength } from "./shown.ts";

export const expectedFunction = defineFunction({
  name: "EXPECTED",
  summary: "What a reading can be expected to be, from the proportions of the chart: an estimate.",
  details:
    "The size of the figure times the usual proportion of the measure, with an eye to figures of like build. The reading " +
    "itself, if there is one, takes no part. About nineteen in twenty readings lie from Low to High. Lengths are in the unit " +
    "of the column. An estimate is no reading: use it to see whether a reading can be right, and do not write it into the " +
    "chart.",
  parameters: {
    chart: chart(),
    figure: text("A figure of the chart."),
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
        ["Teal", "Waist (mm)", 140, 132.375, 148.064, "Estimate. There is no reading."],
      ],
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "The measure has no column in the chart. The message offers the nearest names.", shows: "#N/A" },
  ],
  source: "Median polish: J. W. Tukey, Exploratory Data Analysis (1977), of the logarithms of the readings.",
  compute: ({ chart: figures, figure, measure }) => {
    const i = figureIndex(figures, figure);
    const column = measureColumn(figures, measure);
    const expected = expectedValue(figures, i, figures.measures.indexOf(column));
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
