import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { GradePiece, GradeRule } from "../../addin/chart/gradeRule.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { columnsMoving } from "../../addin/grading/columnsMoving.ts";
import { columnsOfZone } from "../../addin/similarity/columns.ts";

/** `body`: all that decide fit; `pieces`: those that the chosen pieces follow; `chosen`: one by one. */
export type MeasuresFor = "body" | "pieces" | "chosen";

export const measuresForWords: Readonly<Record<MeasuresFor, string>> = {
  pieces: "Those that the chosen pieces follow",
  body: "All that decide fit",
  chosen: "Chosen one by one",
};

/** The measures of the chart that the print scale is judged by. */
export function countedMeasures(
  chart: Chart,
  which: MeasuresFor,
  given: {
    readonly rules: readonly GradeRule[];
    readonly pieces: readonly GradePiece[];
    readonly tolerances: ToleranceTable | undefined;
    /** Keys of columns, where they are chosen one by one. */
    readonly chosen: ReadonlySet<string>;
  },
): readonly MeasureColumn[] {
  switch (which) {
    case "body":
      return columnsOfZone(chart, "body", given.tolerances).map(({ column }) => column);
    case "pieces":
      return columnsMoving(chart, given.rules, given.pieces);
    case "chosen":
      return chart.measures.filter(({ key }) => given.chosen.has(key));
  }
}
