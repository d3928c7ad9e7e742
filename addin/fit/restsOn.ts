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
  return concerned.flatMap((doubt) => {
    const { cells, corrections } = doubt;
    const without = cells.map(({ row, column }) => ({ row, column }));
    if (isSame(judged, judgedOn(chartWith(chart, without)))) return [];
    const mended = corrections.length > 0 ? judgedOn(chartWith(chart, corrections)).verdict : undefined;
    return [{ says: saysOf(doubt, judged), verdict, mended }];
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

/** A pair and its answer. */
export interface AnsweredPair {
  /** Row in `fitting.patterns`. */
  readonly pattern: number;
  /** Row in `fitting.view.chart.figures`. */
  readonly figure: number;
  readonly explanation: Explanation;
}

/**
 * The same for many pairs at once, in a few words each: all are judged anew once, without any doubtful reading. The words are
 * empty where the answer stays what it is; where several readings are doubtful, they do not say which of them it rests on.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 * @param rules those that the fitting was prepared with
 */
export function restMarks(
  fitting: Fitting,
  pairs: readonly AnsweredPair[],
  doubtful: readonly Doubt[],
  rules: readonly EaseRule[],
): readonly string[] {
  if (doubtful.length === 0) return pairs.map(() => "");
  const { chart } = fitting.view;
  const worn = new Map(
    [...new Set(pairs.map(({ pattern }) => pattern))].map((row) => [row, wornTogether(fitting, row)]),
  );
  const garments = [...new Set([...worn.values()].flat())];
  const places = new Map(garments.map((garment, place) => [garment, place]));
  const without = chartWith(
    chart,
    doubtful.flatMap(({ cells }) => cells.map(({ row, column }) => ({ row, column }))),
  );
  const sound = prepareFitting(garments, without, { rules, readingError: fitting.readingError });
  const ofRow = doubtsByRow(doubtful);
  return pairs.map(({ pattern, figure, explanation }) => {
    const together = worn.get(pattern) ?? [];
    const figures = [figure, ...together.flatMap(({ draftedFor }) => draftedFor ?? [])];
    const concerned = new Set(figures.flatMap((place) => ofRow.get(chart.rows[place] ?? -1) ?? []));
    const [first] = concerned;
    if (!first || isSame(explanation, explainPair(sound, places.get(together[0]!) ?? 0, figure))) return "";
    return concerned.size === 1
      ? `Rests on a doubtful reading: ${saysOf(first, explanation)}.`
      : "Rests on doubtful readings: see REASONS.";
  });
}

function doubtsByRow(doubtful: readonly Doubt[]): ReadonlyMap<number, readonly Doubt[]> {
  const ofRow = new Map<number, Doubt[]>();
  for (const doubt of doubtful)
    for (const row of new Set(doubt.cells.map((cell) => cell.row))) {
      const known = ofRow.get(row);
      if (known) known.push(doubt);
      else ofRow.set(row, [doubt]);
    }
  return ofRow;
}

/** What a doubt says, with the name of its figure where the answer is about another one. */
function saysOf({ figure, says }: Doubt, answer: Explanation): string {
  return figure === "" || figure === answer.figure ? says : `${figure}, ${says}`;
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
