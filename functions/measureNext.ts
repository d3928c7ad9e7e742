import type { Chart } from "../addin/chart/chart.ts";
import type { GarmentClass } from "../addin/chart/garmentClass.ts";
import type { WaitedFor } from "../addin/fit/waiting.ts";
import { waitedFor } from "../addin/fit/waiting.ts";
import { measureById } from "../addin/measures/dictionary.ts";
import { compareNames } from "../addin/similarity/nameOrder.ts";
import type { NextReading } from "../addin/similarity/next.ts";
import { nextReadings } from "../addin/similarity/next.ts";
import { chart, count, optionalRange, tableFrom, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import type { Table } from "./descriptor.ts";
import { defineFunction, naming } from "./descriptor.ts";
import { doubtMarks, withMarks } from "./doubtMarks.ts";
import { exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import {
  badClasses,
  badPatterns,
  badRules,
  easeRules,
  fittingOf,
  garmentClasses,
  patternsOf,
  repeats,
} from "./patterns.ts";

export const measureNextFunction = defineFunction({
  name: "MEASURENEXT",
  summary:
    "What to measure next: the missing readings that would tell most about who shares a body, and about which pattern fits.",
  details:
    "A pair of figures is open when readings are missing to say whether they share a body, and nothing yet says that they do " +
    "not. Settles counts the open pairs that the reading alone would answer, Needed by those that wait for it, perhaps " +
    "among others. Nothing below the headings means that no reading is missing for any pair.\n\n" +
    "With patterns, readings that verdicts wait for are listed too: Settles verdicts counts the patterns that the reading alone would answer, Verdicts need it " +
    "those whose verdict waits for it, perhaps among others, or holds only unless it says otherwise. Those that settle most come first. A verdict that is too close to " +
    "call waits for no other reading; which ones are, the table Readings tells by your own error. Who shares a body waits for readings that are " +
    "missing, whatever their error.\n\n" +
    "Where flagged readings decide what is waited for, a last column Doubtful says what a row would be with them mended. " +
    doubtfulNote,
  parameters: {
    chart: chart(),
    tolerances: tolerances(),
    count: count("How many readings to list.", 10),
    patterns: optionalRange(
      "The patterns whose verdicts are waited for: one row each, with the headings Pattern and Garment class.",
      "who shares a body alone",
      (cells) => (chart: Chart, classes: readonly GarmentClass[]) =>
        cells && patternsOf(tableFrom(cells), chart, classes),
    ),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.MEASURENEXT(A1:D5, Tolerances[#All])",
      values: [
        [
          ["Figure", "Bust", "Waist", "Hip"],
          ["Linnet", 135, 100, 140],
          ["Dunnock", 136, "", 142],
          ["Pipit", 137, 101, 141],
          ["Teal", 190, 155, ""],
        ],
        exampleTolerances,
      ],
      gives: [
        ["Figure", "Measure", "Settles", "Needed by"],
        ["Dunnock", "Waist", 2, 2],
      ],
    },
  ],
  failures: [emptyChart, badTolerances, nothingToCompare, badPatterns, badRules, badClasses],
  compute: (given) => {
    const { chart: figures, tolerances: allowed, count: wanted } = given;
    const ofBody = allowed(figures);
    const table = naming("patterns", () => given.patterns(figures, given.classes));
    const headings = ["Figure", "Measure", "Settles", "Needed by"];
    const tableOn = (on: Chart): Table => {
      const ofGroups = nextReadings(on, columnsOf(on, ofBody));
      if (!table)
        return [
          headings,
          ...ofGroups.map(({ figure, column, settles, neededBy }) => [
            ...[figure, column.heading, settles, neededBy],
          ]),
        ];
      const { fitting } = fittingOf({ ...given, figures: on, patterns: () => table });
      return [
        [...headings, "Settles verdicts", "Verdicts need it"],
        ...together(on, ofGroups, waitedFor(fitting)).map(({ figure, measure, pairs, verdicts }) => [
          ...[figure, measure, ...pairs, ...verdicts],
        ]),
      ];
    };
    const marks = doubtMarks(figures, tableOn, { keys: 2 });
    return withMarks(tableOn(figures).slice(0, wanted + 1), marks.slice(0, wanted));
  },
});

/** What a reading settles, and what needs it. */
type Counts = readonly [settles: number, neededBy: number];

interface Wanted {
  readonly place: number;
  readonly figure: string;
  readonly measure: string;
  readonly pairs: Counts;
  readonly verdicts: Counts;
}

/** Readings that pairs of figures or verdicts wait for, those first that settle most of both. */
function together(
  chart: Chart,
  ofGroups: readonly NextReading[],
  waiting: readonly WaitedFor[],
): readonly Wanted[] {
  const wanted = new Map<string, Wanted>();
  const keyOf = (place: number, measure: string) => `${String(place)} ${measure}`;
  for (const { place, column, figure, settles, neededBy } of ofGroups)
    wanted.set(keyOf(place, column.key), {
      ...{ place, figure, measure: column.heading, pairs: [settles, neededBy], verdicts: [0, 0] },
    });
  for (const { figure: place, measure: id, settles, others } of waiting) {
    const known = wanted.get(keyOf(place, id));
    const heading = chart.measures.find(({ key }) => key === id)?.heading ?? measureById(id)?.name ?? id;
    wanted.set(keyOf(place, id), {
      ...(known ?? { place, figure: chart.figures[place]!, measure: heading, pairs: [0, 0] }),
      verdicts: [settles.length, settles.length + others.length],
    });
  }
  const sum = ({ pairs, verdicts }: Wanted, at: 0 | 1) => pairs[at] + verdicts[at];
  const order = new Map(chart.measures.map(({ heading }, c) => [heading, c]));
  const columnOf = ({ measure }: Wanted) => order.get(measure) ?? chart.measures.length;
  return [...wanted.values()].sort(
    (a, b) =>
      sum(b, 0) - sum(a, 0) ||
      sum(b, 1) - sum(a, 1) ||
      compareNames(chart, a.place, b.place) ||
      columnOf(a) - columnOf(b) ||
      (a.measure < b.measure ? -1 : 1),
  );
}
