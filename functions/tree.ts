import { linkage } from "../addin/similarity/linkage.ts";
import { toleranceDistances } from "../addin/similarity/toleranceDistances.ts";
import { chart, tolerances } from "./arguments.ts";
import { method, zone } from "./bodies.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { shown } from "./shown.ts";

export const treeFunction = defineFunction({
  name: "TREE",
  summary: "How the figures join into groups, step by step, closest first.",
  details:
    "Left and Right say what joins: a figure as minus its row number below the headings (−1 is the first), a group as " +
    "the number of the step that made it (1 is the first). Height is how far the two are apart, in tolerances; Size " +
    "is the number of figures in the new group. Figures that cannot be compared never join.",
  parameters: { chart: chart(), tolerances: tolerances(), zone: zone(), method: method() },
  result: "table",
  examples: [
    {
      formula: "FIT.TREE(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        ["Left", "Right", "Height", "Size"],
        [-1, -2, 0.667, 2],
        [-3, -4, 0.667, 2],
        [1, 2, 43.667, 4],
      ],
    },
  ],
  failures: [
    emptyChart,
    badTolerances,
    nothingToCompare,
    { when: "The zone or the method is not one of the words listed.", shows: "#VALUE!" },
  ],
  source: "The table of merges follows the hclust function of R (stats package).",
  compute: ({ chart: figures, tolerances: allowed, zone: part, method: chosen }) => {
    const columns = columnsOf(figures, allowed(figures), part);
    const merges = linkage(toleranceDistances(columns, figures.figures.length), chosen);
    return [
      ["Left", "Right", "Height", "Size"],
      ...merges.map(({ left, right, height, size }) => [left, right, shown(height), size]),
    ];
  },
});
