import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { GradePiece, GradeRule } from "../chart/gradeRule.ts";
import type { LengthUnit } from "../measures/units.ts";

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

/** The unit that most columns are in, of several the first; mm where there are none. */
export function commonestUnit(columns: readonly Pick<MeasureColumn, "unit">[]): LengthUnit {
  const of = (unit: LengthUnit) => columns.filter((column) => column.unit === unit).length;
  return columns
    .map(({ unit }) => unit)
    .reduce((most, unit) => (of(unit) > of(most) ? unit : most), columns[0]?.unit ?? "mm");
}
