import { sharedBodyGroups } from "../addin/similarity/groups.ts";
import { chart, tolerances } from "./arguments.ts";
import { method, zone } from "./bodies.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { shown } from "./shown.ts";

export const groupsFunction = defineFunction({
  name: "GROUPS",
  summary: "Which figures share a body: a group for each figure, and the base figure to draft for.",
  details:
    "With the method complete, every pair of figures in a group is within tolerance at every measure that was compared. " +
    "Worst measure and Of tolerance say where the figure differs most from the base figure of its group.",
  parameters: { chart: chart(), tolerances: tolerances(), zone: zone(), method: method() },
  result: "table",
  examples: [
    {
      formula: "FIT.GROUPS(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
        ["Linnet", 1, "Linnet", "", ""],
        ["Dunnock", 1, "Linnet", "Hip", 0.667],
        ["Teal", 2, "Teal", "", ""],
        ["Siskin", 2, "Teal", "Bust", 0.667],
      ],
    },
  ],
  failures: [
    emptyChart,
    badTolerances,
    nothingToCompare,
    { when: "The zone or the method is not one of the words listed.", shows: "#VALUE!" },
  ],
  source: "Complete linkage: T. Sørensen (1948); groups cut where the worst difference is one tolerance.",
  compute: ({ chart: figures, tolerances: allowed, zone: part, method: linkage }) => [
    ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
    ...sharedBodyGroups(figures, columnsOf(figures, allowed(figures), part), linkage).map((row) => [
      row.figure,
      row.group,
      row.base,
      row.worst?.column.heading ?? "",
      shown(row.ofTolerance),
    ]),
  ],
});
