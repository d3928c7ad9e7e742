import type { Chart } from "../../addin/chart/chart.ts";
import type { GradePiece, GradeRule } from "../../addin/chart/gradeRule.ts";
import { columnsMoving, commonestUnit } from "../../addin/grading/columnsMoving.ts";
import type { Movement } from "../../addin/grading/grade.ts";
import { grade, outline, prepareGrading } from "../../addin/grading/grade.ts";
import type { PieceOutlines } from "../../addin/grading/pieceOutlines.ts";
import { pieceOutlines } from "../../addin/grading/pieceOutlines.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { missingWords } from "../../functions/gradeWords.ts";
import { movementWords } from "./movementWords.ts";

/** What becomes of one point of a piece. */
export interface GradedPoint {
  readonly point: string;
  /** How far it moves, in mm; NaN where a measure is missing. */
  readonly movement: Movement;
  /** Where it lies on the base piece, in mm from the origin of the piece. */
  readonly base: Movement;
  readonly words: string;
}

/** One piece on its way from one figure to another. */
export interface GradedPiece {
  readonly name: string;
  readonly garment: string;
  /** Empty corners where a measure is missing. */
  readonly outlines: PieceOutlines;
  readonly points: readonly GradedPoint[];
  readonly unit: LengthUnit;
  /** What is missing, and of whom: a sentence each. */
  readonly missing: readonly string[];
}

/** How every point of some pieces moves from one figure to another, with their outlines. */
export function gradedPieces(
  chart: Chart,
  rules: readonly GradeRule[],
  pieces: readonly GradePiece[],
  base: number,
  target: number,
): readonly GradedPiece[] {
  const outlines = pieceOutlines(chart, rules, pieces, base, target);
  return pieces.flatMap((piece, i): GradedPiece[] => {
    const drawn = outlines[i];
    if (!drawn) return [];
    const grading = prepareGrading(chart, rules, [piece]);
    const unit = commonestUnit(columnsMoving(chart, rules, [piece]));
    const from = outline(grading, base);
    const points = grade(grading, base, target).flatMap((movement, p): GradedPoint[] => {
      const at = from[p];
      if (!at) return [];
      const words = movementWords(movement, at.acrossMm, unit);
      return [{ point: movement.point, movement, base: at, words }];
    });
    return [
      {
        ...{ name: piece.name, garment: piece.garment, outlines: drawn, points, unit },
        missing: drawn.missing.map((measure) => missingWords(measure, chart, [base, target])),
      },
    ];
  });
}
