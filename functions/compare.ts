import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { amount } from "../addin/checking/amount.ts";
import { compare } from "../addin/fit/compare.ts";
import { chart, figureName, tolerances } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { doubtfulNote, doubtsBeside } from "./listed.ts";
import { shown, shownLength } from "./shown.ts";

export const compareFunction = defineFunction({
  name: "COMPARE",
  summary:
    "Two figures side by side, measure by measure: what changes from one to the other, and how much it matters.",
  details:
    "Lengths are in the unit that stands after the measure. Percent is of the base. Of tolerance is the difference in tolerances: at " +
    "most 1 means that the two count as the same there. A missing reading leaves its row blank. Where a reading is flagged or estimated, a last " +
    `column Doubtful says so, with what FLAGS suggests. ${doubtfulNote}`,
  parameters: {
    chart: chart(),
    base: figureName("The figure to start from."),
    target: figureName("The figure to compare with it."),
    tolerances: tolerances(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.COMPARE(Figures[#All], "Linnet", "Dunnock", Tolerances[#All])',
      values: [exampleChart, "Linnet", "Dunnock", exampleTolerances],
      gives: [
        ["Measure", "Base", "Target", "Delta", "Percent", "Of tolerance"],
        ["Height (mm)", 280, 280, 0, 0, 0],
        ["Bust (mm)", 135, 136, 1, 0.741, 0.333],
        ["Waist (mm)", 100, 101, 1, 1, 0.5],
        ["Hip (mm)", 140, 142, 2, 1.429, 0.667],
      ],
    },
  ],
  failures: [emptyChart, unknownFigure, badTolerances],
  compute: ({ chart: figures, base, target, tolerances: allowed }) => {
    const places = [figureIndex(figures, base), figureIndex(figures, target)] as const;
    const rows = compare(figures, ...places, allowed(figures));
    const marks = doubtfulReadings(figures, places);
    const areMarked = rows.some(({ column }) => marks.has(column.position));
    return [
      ["Measure", "Base", "Target", "Delta", "Percent", "Of tolerance", ...(areMarked ? ["Doubtful"] : [])],
      ...rows.map((row) => [
        `${row.column.heading} (${row.column.unit})`,
        shownLength(row.baseMm, row.column.unit),
        shownLength(row.targetMm, row.column.unit),
        shownLength(row.deltaMm, row.column.unit),
        shown(row.percent),
        shown(row.ofTolerance),
        ...(areMarked ? [marks.get(row.column.position) ?? ""] : []),
      ]),
    ];
  },
});

/** What is doubtful about readings of some figures, by the position of their columns. */
function doubtfulReadings(chart: Chart, places: readonly number[]): ReadonlyMap<number, string> {
  const marks = new Map<number, string>();
  for (const place of places) {
    const name = chart.figures[place]!;
    for (const { cells, corrections, figure, says } of doubtsBeside(chart)) {
      for (const { row, column } of cells) {
        const unit = chart.measures.find(({ position }) => position === column)?.unit;
        if (row !== chart.rows[place] || !unit) continue;
        const right = corrections.find((each) => each.row === row && each.column === column);
        const about = figure === "" || figure === name ? says : `${figure}, ${says}`;
        const instead = right ? `: ${amount(right.mm, unit)} instead?` : ".";
        const before = marks.get(column);
        marks.set(column, `${before === undefined ? "" : `${before} `}${name}: ${about}${instead}`);
      }
    }
  }
  return marks;
}
