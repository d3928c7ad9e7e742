import type { Chart } from "../addin/chart/chart.ts";
import { columnsOfPart, countingEstimates } from "../addin/similarity/columns.ts";
import type { ComparedColumn } from "../addin/similarity/columns.ts";
import { fewestSharedGroups } from "../addin/similarity/fewest/fewestShared.ts";
import { groupMarks } from "../addin/similarity/doubtfulGroups.ts";
import type { GroupedFigure } from "../addin/similarity/groups.ts";
import { groupedFigures, sharedBodyGroups } from "../addin/similarity/groups.ts";
import { nameOrder } from "../addin/similarity/nameOrder.ts";
import { chart, garmentTolerances } from "./arguments.ts";
import { estimates, groupMethod, unknownWord, zone } from "./bodies.ts";
import { defineFunction } from "./descriptor.ts";
import { withMarks } from "./doubtMarks.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { doubtfulNote, doubtsBeside } from "./listed.ts";
import { shown } from "./shown.ts";
import { worstMeasure } from "./worstMeasure.ts";

export const groupsFunction = defineFunction({
  name: "GROUPS",
  summary: "Which figures share a body: a group for each figure, and the base figure to draft for.",
  details:
    "With the method complete, every two figures of a group are within tolerance at every measure that was compared. " +
    "The base figure is the one nearest to all others of its group. Worst measure and Of tolerance say where the figure " +
    "differs most from it: at most 1 is within tolerance. Larger groups come first. Figures that cannot be compared are " +
    "never put together; Worst measure then says what is missing.\n\n" +
    "Where groups rest on flagged readings, or on estimates that you count, a last column Doubtful says on which, and who would share a body if they were " +
    `mended. ${doubtfulNote}\n\n` +
    "With the method fewest, no other way makes fewer groups in which every pair is within tolerance. Where that could not be " +
    "shown in the time that a cell has, the heading of Group says so and names the number that is needed at least, as the heading of " +
    "Doubtful does for the groups after mending; the " +
    "section Groups of the pane can look further.",
  parameters: {
    chart: chart(),
    tolerances: garmentTolerances(),
    zone: zone(),
    method: groupMethod(),
    estimates: estimates(),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.GROUPS(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
        ["Linnet", 1, "Dunnock", "Hip", 0.667],
        ["Dunnock", 1, "Dunnock", "", 0],
        ["Teal", 2, "Siskin", "Bust", 0.667],
        ["Siskin", 2, "Siskin", "", 0],
      ],
    },
    {
      formula: 'FIT.GROUPS(A1:D5, Tolerances[#All], "body", "fewest")',
      values: [
        [
          ["Figure", "Bust", "Waist", "Hip"],
          ["Dunnock", 135, 100, 140],
          ["Linnet", 132.5, 100, 140],
          ["Pipit", 130, 100, 140],
          ["Robin", 137.5, 100, 140],
        ],
        exampleTolerances,
        "body",
        "fewest",
      ],
      gives: [
        ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
        ["Dunnock", 1, "Dunnock", "", 0],
        ["Linnet", 2, "Linnet", "", 0],
        ["Pipit", 2, "Linnet", "Bust", 0.833],
        ["Robin", 1, "Dunnock", "Bust", 0.833],
      ],
    },
    {
      formula: 'FIT.GROUPS(A1:D4, Tolerances[#All], "Loose clothes")',
      values: [
        [
          ["Figure", "Bust", "Waist", "Hip"],
          ["Linnet", 135, 100, 140],
          ["Dunnock", 136, 101, 142],
          ["Pipit", 141, 108, 148],
        ],
        [
          ["Measure", "Tolerance", "Loose clothes"],
          ["Bust", 3, 12],
          ["Waist", 2, ""],
          ["Hip", 3, 12],
        ],
        "Loose clothes",
      ],
      gives: [
        ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
        ["Linnet", 1, "Dunnock", "Hip", 0.167],
        ["Dunnock", 1, "Dunnock", "", 0],
        ["Pipit", 1, "Dunnock", "Hip", 0.5],
      ],
    },
  ],
  failures: [emptyChart, badTolerances, nothingToCompare, unknownWord],
  source: "Complete linkage: T. Sørensen (1948); groups cut where the worst difference is one tolerance.",
  compute: ({ chart: given, tolerances: allowed, zone: part, method: chosen, estimates: asked }) => {
    const figures = asked === "count" ? countingEstimates(given) : given;
    const columns = columnsOfPart(figures, part, allowed(figures));
    const grouped = (by: readonly ComparedColumn[]) =>
      chosen === "fewest"
        ? fewest(figures, by)
        : { rows: sharedBodyGroups(figures, by, chosen), heading: "Group" };
    const { rows, heading } = grouped(columns);
    const numbers = (of: readonly GroupedFigure[]) => of.map(({ group }) => group);
    let after = "Group";
    const marks = groupMarks(figures, columns, numbers(rows), doubtsBeside(given), (by) => {
      const mended = grouped(by);
      after = mended.heading;
      return numbers(mended.rows);
    });
    return withMarks(
      [
        ["Figure", heading, "Base figure", "Worst measure", "Of tolerance"],
        ...rows.map((row) => [
          ...[row.figure, row.group, row.base, worstMeasure(row.fromBase), shown(row.fromBase.distance)],
        ]),
      ],
      marks,
      after === "Group" ? "Doubtful" : `Doubtful (mended: ${after})`,
    );
  },
});

function fewest(
  chart: Chart,
  columns: readonly ComparedColumn[],
): { readonly rows: readonly GroupedFigure[]; readonly heading: string } {
  const { groupOf, count, atLeast, isProved } = fewestSharedGroups(chart, columns);
  const named = nameOrder(chart, columns);
  const inOrder = Int32Array.from(named.order, (place) => groupOf[place]!);
  return {
    rows: groupedFigures(chart, named, inOrder),
    heading: isProved ? "Group" : `Group (${String(count)} found, at least ${String(atLeast)} needed)`,
  };
}
