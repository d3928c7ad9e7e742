import { columnsOfPart } from "../addin/similarity/columnsOfPart.ts";
import { sharedBodyGroups } from "../addin/similarity/groups.ts";
import { chart, garmentTolerances } from "./arguments.ts";
import { method, unknownWord, zone } from "./bodies.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { shown } from "./shown.ts";
import { worstMeasure } from "./worstMeasure.ts";

export const groupsFunction = defineFunction({
  name: "GROUPS",
  summary: "Which figures share a body: a group for each figure, and the base figure to draft for.",
  details:
    "With the method complete, every two figures of a group are within tolerance at every measure that was compared. " +
    "The base figure is the one nearest to all others of its group. Worst measure and Of tolerance say where the figure " +
    "differs most from it: at most 1 is within tolerance. Larger groups come first. Figures that cannot be compared are " +
    "never put together; Worst measure then says what is missing.",
  parameters: { chart: chart(), tolerances: garmentTolerances(), zone: zone(), method: method() },
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
  compute: ({ chart: figures, tolerances: allowed, zone: part, method: linkage }) => [
    ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
    ...sharedBodyGroups(figures, columnsOfPart(figures, part, allowed(figures)), linkage).map((row) => [
      row.figure,
      row.group,
      row.base,
      worstMeasure(row.fromBase),
      shown(row.fromBase.distance),
    ]),
  ],
});
