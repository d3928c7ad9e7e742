import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { chartWith } from "../chart/doubt.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { Pattern } from "../chart/pattern.ts";
import { codeKey } from "../chart/readPatterns.ts";
import { underLayers } from "../chart/underLayers.ts";
import type { Explanation } from "./explainPair.ts";
import { explainPair } from "./explainPair.ts";
import type { Fitting } from "./match.ts";
import { prepareFitting } from "./match.ts";
import type { Verdict } from "./verdict.ts";

/** A doubtful reading that the answer about a pair rests on: without it the answer is another one. */
export interface DoubtfulGround {
  /** “Waist 129 mm (digits swapped)”, with the name of the figure where it is another one */
  readonly says: string;
  /** The verdict as it is. */
  readonly verdict: Verdict;
  /** What it would be with the reading mended; `undefined` where nobody knows what it ought to be. */
  readonly mended: Verdict | undefined;
}

/**
 * Which doubtful readings the answer about a pair rests on: of the figure itself, and of those that the pattern and what is worn
 * under it were drafted for. The pair is judged anew for each, nothing else is.
 *
 * @param pattern row in `fitting.patterns`
 * @param figure row in `fitting.view.chart.figures`
 * @param doubtful the doubts about the chart, see `doubts`
 * @param rules those that the fitting was prepared with; the project’s own when left out
 */
export function restsOn(
  fitting: Fitting,
  pattern: number,
  figure: number,
  doubtful: readonly Doubt[],
  rules?: readonly EaseRule[],
): readonly DoubtfulGround[] {
  const { chart } = fitting.view;
  const worn = wornTogether(fitting, pattern);
  const figures = [figure, ...worn.flatMap(({ draftedFor }) => draftedFor ?? [])];
  const rows = new Set(figures.map((place) => chart.rows[place]));
  const concerned = doubtful.filter(({ cells }) => cells.some(({ row }) => rows.has(row)));
  if (concerned.length === 0) return [];
  const { readingError } = fitting;
  const judgedOn = (other: Chart): Explanation =>
    explainPair(prepareFitting(worn, other, { rules, readingError }), 0, figure);
  const judged = judgedOn(chart);
  const { verdict } = judged;
  return concerned.flatMap(({ cells, figure: whose, says, corrections }) => {
    const without = cells.map(({ row, column }) => ({ row, column }));
    if (isSame(judged, judgedOn(chartWith(chart, without)))) return [];
    const mended = corrections.length > 0 ? judgedOn(chartWith(chart, corrections)).verdict : undefined;
    const isOther = whose !== "" && whose !== judged.figure;
    return [{ says: isOther ? `${whose}, ${says}` : says, verdict, mended }];
  });
}

/**
 * “Rests on a doubtful reading: Waist 13.4 mm (wrong unit). Mended as FLAGS suggests, the verdict would be “fits”.”
 *
 * @param by what the reader looks at to mend readings
 */
export function restWords({ says, verdict, mended }: DoubtfulGround, by: "FLAGS" | "Check"): string {
  const rests = `Rests on a doubtful reading: ${says}.`;
  if (mended === undefined) return `${rests} Measure it again.`;
  return `${rests} Mended as ${by} suggests, ${mended === verdict ? "the verdict stays" : `the verdict would be “${mended}”`}.`;
}

/** The pattern, and what is worn under it. */
function wornTogether({ patterns }: Fitting, row: number): readonly Pattern[] {
  const outer = patterns[row]?.pattern;
  if (!outer) throw new RangeError(`There is no pattern ${String(row)}.`);
  const patternOf = (code: string): Pattern | undefined =>
    patterns.find(({ pattern }) => codeKey(pattern.code) === codeKey(code))?.pattern;
  return [outer, ...underLayers(outer, patternOf)];
}

function isSame(one: Explanation, other: Explanation): boolean {
  return (
    one.verdict === other.verdict &&
    one.checks.length === other.checks.length &&
    one.checks.every((check, i) => check.says === other.checks[i]?.says)
  );
}
