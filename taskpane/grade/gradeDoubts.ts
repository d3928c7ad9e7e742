import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { chartWith, doubtSays, placesOf, restsOnWords } from "../../addin/chart/doubt.ts";
import type { GradePiece, GradeRule } from "../../addin/chart/gradeRule.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { printScale } from "../../addin/grading/printScale.ts";
import { printAdvice } from "../../addin/grading/printWords.ts";
import { someOf } from "../../addin/measures/quote.ts";
import { gradedPieces } from "./gradedPieces.ts";

/** What is answered in Grade, and by what. */
export interface GradeAsked {
  readonly chart: Chart;
  readonly base: number;
  readonly targets: readonly number[];
  /** The measures that the print scale is judged by. */
  readonly columns: readonly MeasureColumn[];
  readonly rules: readonly GradeRule[];
  readonly pieces: readonly GradePiece[];
  readonly tolerances: ToleranceTable | undefined;
}

/**
 * The doubtful readings that the answers of Grade rest on, a sentence or two each: without them a print scale or the movement of a
 * point is another one. Says which of both changes when the reading is mended as the check suggests.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 */
export function gradeDoubts(asked: GradeAsked, doubtful: readonly Doubt[]): readonly string[] {
  const { chart, base, targets } = asked;
  const rows = new Set([base, ...targets].map((place) => chart.rows[place]));
  const concerned = doubtful.filter(({ cells }) => cells.some(({ row }) => rows.has(row)));
  if (concerned.length === 0) return [];
  const before = answersOn(chart, asked);
  return concerned.flatMap((doubt) => {
    const { corrections } = doubt;
    const without = answersOn(chartWith(chart, placesOf(doubt)), asked);
    if (without.every((answer, i) => answer.whole === before[i]!.whole)) return [];
    const rests = restsOnWords([doubtSays(doubt)]);
    if (corrections.length === 0) return [`${rests} Measure it again.`];
    const changes = answersOn(chartWith(chart, corrections), asked).flatMap((answer, i) => {
      const was = before[i]!;
      const to = targets.length > 1 ? ` for ${chart.figures[targets[i]!] ?? ""}` : "";
      return [
        ...(answer.todo === was.todo ? [] : [`the answer would be “${answer.todo}”${to}`]),
        ...(answer.moves === was.moves ? [] : [`points would move otherwise${to}`]),
      ];
    });
    const after = changes.length === 0 ? "nothing changes" : someOf(changes);
    return [`${rests} Mended as Check suggests, ${after}.`];
  });
}

interface Answer {
  readonly todo: string;
  readonly moves: string;
  readonly whole: string;
}

/** What is answered for each target. */
function answersOn(
  chart: Chart,
  { base, targets, columns, rules, pieces, tolerances }: GradeAsked,
): readonly Answer[] {
  const counted = columns.map((column) => chart.measures.find(({ key }) => key === column.key) ?? column);
  return targets.map((target) => {
    const scale = printScale(base, target, counted, tolerances);
    const { todo, why } = printAdvice(scale);
    const moves = gradedPieces(chart, rules, pieces, base, target)
      .flatMap(({ points, missing }) => [...points.map(({ words }) => words), ...missing])
      .join("\n");
    const left = scale.best.measures.map(({ residualMm }) => residualMm.toFixed(2)).join(" ");
    return { todo, moves, whole: [todo, why, left, moves].join("\n") };
  });
}
