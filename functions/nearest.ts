import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { nearest } from "../addin/similarity/nearest.ts";
import { chart, count, figureName, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { doubtMarks, withMarks } from "./doubtMarks.ts";
import { badTolerances, emptyChart, nothingToCompare, unknownFigure } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import { shown } from "./shown.ts";
import { worstMeasure } from "./worstMeasure.ts";

export const nearestFunction = defineFunction({
  name: "NEAREST",
  summary: "The figures whose bodies come closest to one figure, closest first.",
  details:
    "Distance is the worst difference in tolerances: at most 1 means the same body. Compared says how many of the " +
    "measures are known of both figures. Figures that cannot be compared come last, with what is missing.\n\n" +
    "Where an answer rests on a flagged reading, a last column Doubtful says on which, and what distance and place would be if it were " +
    `mended. ${doubtfulNote}`,
  parameters: {
    chart: chart(),
    figure: figureName("The figure to start from."),
    count: count("How many figures to list.", 5),
    tolerances: tolerances(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.NEAREST(Figures[#All], "Linnet", 2, Tolerances[#All])',
      values: [exampleChart, "Linnet", 2, exampleTolerances],
      gives: [
        ["Figure", "Distance", "Worst measure", "Compared"],
        ["Dunnock", 0.667, "Hip", "3 of 3"],
        ["Siskin", 27, "Waist", "3 of 3"],
      ],
    },
  ],
  failures: [emptyChart, unknownFigure, badTolerances, nothingToCompare],
  compute: ({ chart: figures, figure, count: wanted, tolerances: allowed }) => {
    const place = figureIndex(figures, figure);
    const tolerances = allowed(figures);
    const tableOn = (on: Chart) => [
      [...headings, "Place"],
      ...nearest(on, columnsOf(on, tolerances), place, on.figures.length).map((near, at) => [
        near.figure,
        Number.isNaN(near.distance) ? "not known" : shown(near.distance),
        worstMeasure(near),
        `${String(near.compared)} of ${String(near.of)}`,
        at + 1,
      ]),
    ];
    const marks = doubtMarks(figures, tableOn, { keys: 1, about: [place], except: "Compared" });
    const table = tableOn(figures).slice(0, wanted + 1);
    return withMarks(
      table.map((row) => row.slice(0, headings.length)),
      marks.slice(0, wanted),
    );
  },
});

const headings = ["Figure", "Distance", "Worst measure", "Compared"];
