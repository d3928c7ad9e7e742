import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { doubtSays, restsOnWords } from "../../addin/chart/doubt.ts";
import { lineDoubts } from "../../addin/chart/doubtfulLines.ts";
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
  const found = lineDoubts(chart, concerned, (on) =>
    answersOn(on, asked).map(({ todo, moves, rest }, i) => ({
      key: String(i),
      figures: [base, targets[i]!],
      answers: [
        ["the answer", todo],
        ["the movement", moves],
        ["what is left", rest],
      ],
    })),
  );
  /** By what they rest on: how the answers would change, and whether anybody knows. */
  const says = new Map<string, { readonly isMended: boolean; readonly told: string[] }>();
  found.forEach((line, i) => {
    if (!line) return;
    const { grounds, isMended, changes = [] } = line;
    const rests = restsOnWords(grounds.map((doubt) => doubtSays(doubt)));
    const to = targets.length > 1 ? ` for ${chart.figures[targets[i]!] ?? ""}` : "";
    const told = changes.flatMap(([what, answer]) => {
      if (what === "the answer") return [`the answer would be “${answer}”${to}`];
      return what === "the movement" ? [`points would move otherwise${to}`] : [];
    });
    says.set(rests, { isMended, told: [...(says.get(rests)?.told ?? []), ...told] });
  });
  return [...says].map(([rests, { isMended, told }]) =>
    isMended
      ? `${rests} Mended as Check suggests, ${told.length > 0 ? someOf(told) : "nothing changes"}.`
      : `${rests} Measure it again.`,
  );
}

interface Answer {
  readonly todo: string;
  readonly moves: string;
  /** Why, and what is left at each measure. */
  readonly rest: string;
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
    return { todo, moves, rest: `${why}\n${left}` };
  });
}
