import type { Chart } from "../chart/chart.ts";
import type { GradePiece, GradeRule } from "../chart/gradeRule.ts";
import { outline, prepareGrading } from "./grade.ts";

/** A corner of a piece for two figures, in mm from the origin of the piece; across to the right, along upwards. */
export interface OutlineCorner {
  readonly point: string;
  readonly base: readonly [acrossMm: number, alongMm: number];
  readonly target: readonly [acrossMm: number, alongMm: number];
}

/** The outlines of one piece over each other: a diagram, not a pattern that is ready to cut. */
export interface PieceOutlines {
  readonly piece: string;
  /** Where 0 across and 0 along are, in words. */
  readonly origin: string;
  /** In order around the piece; empty where a measure is missing. */
  readonly corners: readonly OutlineCorner[];
  /** ids of the measures that are missing of either figure; the piece cannot be drawn without them. */
  readonly missing: readonly string[];
}

/**
 * The outlines of pieces for two figures by the grade rules alone: straight lines between the points, without ease, curves
 * and seam allowance. Each corner moves from base to target by what the grade says.
 *
 * @param base row of the figure that the pattern was drafted for, in `chart.figures`
 * @param target row of the other figure
 */
export function pieceOutlines(
  chart: Chart,
  rules: readonly GradeRule[],
  pieces: readonly GradePiece[],
  base: number,
  target: number,
): readonly PieceOutlines[] {
  return pieces.map((piece) => {
    const grading = prepareGrading(chart, rules, [piece]);
    const [from, to] = [outline(grading, base), outline(grading, target)];
    const missing = [...new Set([...from, ...to].flatMap((corner) => corner.missing))];
    const corners = from.flatMap(({ point, acrossMm, alongMm }, i): OutlineCorner[] => {
      const moved = to[i];
      if (!moved) return [];
      return [{ point, base: [acrossMm, alongMm], target: [moved.acrossMm, moved.alongMm] }];
    });
    return { piece: piece.name, origin: piece.origin, corners: missing.length > 0 ? [] : corners, missing };
  });
}
