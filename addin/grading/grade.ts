import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { GradePiece, GradeRule } from "../chart/gradeRule.ts";
import { groupedBy } from "../chart/groupedBy.ts";

/** How far a point of a piece moves from one figure to another, in mm; NaN where a measure that it needs is missing. */
export interface Movement {
  readonly piece: string;
  readonly point: string;
  /** To the right on the piece as drawn. */
  readonly acrossMm: number;
  /** Upwards on the piece as drawn. */
  readonly alongMm: number;
  /** ids of the measures that are missing on one side, or not in the chart */
  readonly missing: readonly string[];
}

interface Share {
  readonly measure: string;
  readonly column: MeasureColumn | undefined;
  readonly across: number;
  readonly along: number;
}

interface GradedPoint {
  readonly piece: string;
  readonly point: string;
  readonly shares: readonly Share[];
}

/** Pieces whose rules are matched with the columns of a chart, once for many pairs of figures. */
export type Grading = readonly GradedPoint[];

/** Matches the rules of some pieces with the columns of a chart. */
export function prepareGrading(
  chart: Chart,
  rules: readonly GradeRule[],
  pieces: readonly GradePiece[],
): Grading {
  const columns = new Map(chart.measures.map((column) => [column.key, column]));
  const byPoint = groupedBy(rules, ({ piece, point }) => `${piece}\n${point}`);
  return pieces.flatMap(({ name: piece, points }) =>
    points.map(({ name: point }) => ({
      piece,
      point,
      shares: (byPoint.get(`${piece}\n${point}`) ?? []).map(({ measure, across, along }) => ({
        ...{ measure, across, along },
        column: columns.get(measure),
      })),
    })),
  );
}

/**
 * The movement of every point from one figure to another: Σ share · (target − base) over the measures that move it. A
 * point without rules does not move.
 *
 * @param base row of the figure that the pattern was drafted for, in `chart.figures`
 * @param target row of the other figure
 */
export function grade(grading: Grading, base: number, target: number): readonly Movement[] {
  return grading.map((point) =>
    summed(point, ({ mm }) => (mm[target] ?? Number.NaN) - (mm[base] ?? Number.NaN)),
  );
}

/**
 * Where the points of the pieces lie for one figure, in mm from the origin of each piece: a diagram of the pieces by the
 * rules alone, without ease, curves and allowance; not a pattern that is ready to cut. The outlines of two figures differ by
 * what {@link grade} gives.
 */
export function outline(grading: Grading, figure: number): readonly Movement[] {
  return grading.map((point) => summed(point, ({ mm }) => mm[figure] ?? Number.NaN));
}

function summed(
  { piece, point, shares }: GradedPoint,
  amountMm: (column: MeasureColumn) => number,
): Movement {
  let acrossMm = 0;
  let alongMm = 0;
  const missing: string[] = [];
  for (const { measure, column, across, along } of shares) {
    const mm = column ? amountMm(column) : Number.NaN;
    if (Number.isNaN(mm)) missing.push(measure);
    // A measure that is missing leaves the other direction known.
    if (across !== 0) acrossMm += across * mm;
    if (along !== 0) alongMm += along * mm;
  }
  return { piece, point, acrossMm, alongMm, missing };
}
