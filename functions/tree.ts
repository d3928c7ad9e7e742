import type { Chart } from "../addin/chart/chart.ts";
import { columnsOfPart } from "../addin/similarity/columns.ts";
import type { TreeSide } from "../addin/similarity/tree.ts";
import { figureTree } from "../addin/similarity/tree.ts";
import { chart, garmentTolerances } from "./arguments.ts";
import { method, unknownWord, zone } from "./bodies.ts";
import { defineFunction } from "./descriptor.ts";
import { doubtMarks, withMarks } from "./doubtMarks.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import { shown } from "./shown.ts";

export const treeFunction = defineFunction({
  name: "TREE",
  summary: "How the figures join into groups, step by step, closest first.",
  details:
    "Each step joins two sides: a figure by its name, or the group that an earlier step made, as in “step 3”. Times the limit is " +
    "how far the two are apart in tolerances: with the usual method, at most 1 means that all figures of both sides share a " +
    "body. Figures is the number of figures in the new group. Figures that cannot be compared never join.\n\n" +
    "Where a figure joins by flagged readings, a last column Doubtful says by which, and how far apart it would be when it joins, and with " +
    "how many figures it would be then, if they were mended. " +
    doubtfulNote,
  parameters: { chart: chart(), tolerances: garmentTolerances(), zone: zone(), method: method() },
  result: "table",
  examples: [
    {
      formula: "FIT.TREE(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        ["Step", "One side", "Joins", "Times the limit", "Figures"],
        [1, "Dunnock", "Linnet", 0.667, 2],
        [2, "Siskin", "Teal", 0.667, 2],
        [3, "step 1", "step 2", 27.5, 4],
      ],
    },
  ],
  failures: [emptyChart, badTolerances, nothingToCompare, unknownWord],
  source: "Agglomerative clustering; the heights are those of the hclust function of R (stats package).",
  compute: ({ chart: figures, tolerances: allowed, zone: part, method: chosen }) => {
    const given = allowed(figures);
    const treeOn = (on: Chart) => figureTree(on, columnsOfPart(on, part, given), chosen);
    const tree = treeOn(figures);
    // Where each figure joins: a step by its number is another one as soon as one before it is.
    const joins = doubtMarks(
      figures,
      (on) => [
        ["Figure", "Times the limit", "Figures"],
        ...treeOn(on).flatMap(({ sides, height, size }) =>
          sides.flatMap((side) => ("figure" in side ? [[side.figure, shown(height), size]] : [])),
        ),
      ],
      { keys: 1, isInOrder: true },
    );
    let joined = 0;
    return withMarks(
      [
        ["Step", "One side", "Joins", "Times the limit", "Figures"],
        ...tree.map(({ step, sides: [one, other], height, size }) => [
          ...[step, sideWords(one), sideWords(other), shown(height), size],
        ]),
      ],
      tree.map(({ sides }) =>
        sides
          .map((side) => ("figure" in side ? (joins[joined++] ?? "") : ""))
          .join(" ")
          .trim(),
      ),
    );
  },
});

function sideWords(side: TreeSide): string {
  return "figure" in side ? side.figure : `step ${String(side.step)}`;
}
