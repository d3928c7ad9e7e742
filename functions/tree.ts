import { columnsOfPart } from "../addin/similarity/columnsOfPart.ts";
import { figureTree } from "../addin/similarity/tree.ts";
import { chart, garmentTolerances } from "./arguments.ts";
import { method, unknownWord, zone } from "./bodies.ts";
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
  parameters: { chart: chart(), tolerances: garmentTolerances(), zone: zone(), method: method() },
  result: "table",
  examples: [
    {
      formula: "FIT.TREE(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        ["Left", "Right", "Height", "Size"],
        [-1, -2, 0.667, 2],
        [-3, -4, 0.667, 2],
        [1, 2, 27.5, 4],
      ],
    },
  ],
  failures: [emptyChart, badTolerances, nothingToCompare, unknownWord],
  source: "The table of merges follows the hclust function of R (stats package).",
  compute: ({ chart: figures, tolerances: allowed, zone: part, method: chosen }) => [
    ["Left", "Right", "Height", "Size"],
    ...figureTree(figures, columnsOfPart(figures, part, allowed(figures)), chosen).map((merge) => [
      merge.left,
      merge.right,
      shown(merge.height),
      merge.size,
    ]),
  ],
});
