import type { Chart } from "../addin/chart/chart.ts";
import { mended } from "../addin/chart/doubt.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { someOf } from "../addin/measures/quote.ts";
import type { Near } from "../addin/similarity/nearest.ts";
import { nearest } from "../addin/similarity/nearest.ts";
import { chart, count, figureName, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { doubtMarks, withMarks } from "./doubtMarks.ts";
import { badTolerances, emptyChart, nothingToCompare, unknownFigure } from "./failures.ts";
import { doubtfulNote, doubtsBeside } from "./listed.ts";
import { shown } from "./shown.ts";
import { worstMeasure } from "./worstMeasure.ts";

export const nearestFunction = defineFunction({
  name: "NEAREST",
  summary: "The figures whose bodies come closest to one figure, closest first.",
  details:
    "Distance is the worst difference in tolerances: at most 1 means the same body. Compared says how many of the " +
    "measures are known of both figures. Figures that cannot be compared come last, with what is missing.\n\n" +
    "Where an answer rests on a flagged reading, a last column Doubtful says on which, and what distance and place would be if it were " +
    `mended, or who would come before. ${doubtfulNote}`,
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
    const nearestOn = (on: Chart) => nearest(on, columnsOf(on, tolerances), place, on.figures.length);
    const tableOn = (on: Chart) => [
      [...headings, "Place"],
      ...nearestOn(on).map((near, at) => [
        near.figure,
        Number.isNaN(near.distance) ? "not known" : shown(near.distance),
        worstMeasure(near),
        `${String(near.compared)} of ${String(near.of)}`,
        at + 1,
      ]),
    ];
    const marks = doubtMarks(figures, tableOn, {
      keys: 1,
      about: [place],
      except: "Compared",
      isInOrder: true,
    });
    const sound = nearestOn(mended(figures, doubtsBeside(figures)));
    return withMarks(
      tableOn(figures)
        .slice(0, wanted + 1)
        .map((row) => row.slice(0, headings.length)),
      withOvertaking(marks, nearestOn(figures), sound).slice(0, wanted),
    );
  },
});

/** What is said of each figure, nearest first; where nothing is, those behind it that come before it in another order, each told once. */
function withOvertaking(
  marks: readonly string[],
  order: readonly Near[],
  other: readonly Near[],
): readonly string[] {
  const placeIn = (list: readonly Near[]) => new Map(list.map(({ row }, at) => [row, at]));
  const [now, then] = [placeIn(order), placeIn(other)];
  const told = new Set<number>();
  return order.map(({ row }, at) => {
    const mark = marks[at] ?? "";
    if (mark !== "") return mark;
    const passing = other
      .slice(0, then.get(row))
      .filter((near) => now.get(near.row)! > at && !told.has(near.row));
    for (const near of passing) told.add(near.row);
    if (passing.length === 0) return "";
    return `With doubtful readings mended this one would come behind ${someOf(passing.map(({ figure }) => figure))}.`;
  });
}

const headings = ["Figure", "Distance", "Worst measure", "Compared"];
