import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { GradePiece, GradeRule } from "../chart/gradeRule.ts";

/** The columns of a chart by which some pieces move, in the order of the chart. */
export function columnsMoving(
  { measures }: Chart,
  rules: readonly GradeRule[],
  pieces: readonly Pick<GradePiece, "name">[],
): readonly MeasureColumn[] {
  const names = new Set(pieces.map(({ name }) => name));
  const moving = new Set(rules.filter(({ piece }) => names.has(piece)).map(({ measure }) => measure));
  return measures.filter(({ key }) => moving.has(key));
}
