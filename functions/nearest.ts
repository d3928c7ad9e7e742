import { figureIndex } from "../addin/chart/find.ts";
import { nearest } from "../addin/similarity/nearest.ts";
import { chart, count, figureName, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare, unknownFigure } from "./failures.ts";
import { shown } from "./shown.ts";
import { worstMeasure } from "./worstMeasure.ts";

export const nearestFunction = defineFunction({
  name: "NEAREST",
  summary: "The figures whose bodies come closest to one figure, closest first.",
  details:
    "Distance is the worst difference in tolerances: at most 1 means the same body. Compared says how many of the " +
    "measures are known of both figures. Figures that cannot be compared come last, with what is missing.",
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
  compute: ({ chart: figures, figure, count: wanted, tolerances: allowed }) => [
    ["Figure", "Distance", "Worst measure", "Compared"],
    ...nearest(figures, columnsOf(figures, allowed(figures)), figureIndex(figures, figure), wanted).map(
      (near) => [
        near.figure,
        Number.isNaN(near.distance) ? "not known" : shown(near.distance),
        worstMeasure(near),
        `${String(near.compared)} of ${String(near.of)}`,
      ],
    ),
  ],
});
