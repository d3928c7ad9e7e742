import type { Doubt } from "../../addin/chart/doubt.ts";
import type { EaseRule } from "../../addin/chart/easeRule.ts";
import type { Explanation } from "../../addin/fit/explainPair.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { restMarks, soundVerdicts, soundWords } from "../../addin/fit/restsOn.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { bestFirst } from "../../functions/listed.ts";

/** A pattern on a figure: their places in the fitting. */
export interface Pair {
  readonly pattern: number;
  readonly figure: number;
}

export interface RankedPair extends Pair {
  readonly explanation: Explanation;
}

/** Every figure with the verdict of one pattern, best first; of equal verdicts the one that is less far off. */
export function wearersOf(fitting: Fitting, pattern: number): readonly RankedPair[] {
  return ranked(
    fitting,
    Array.from({ length: fitting.view.size }, (_, figure) => ({ pattern, figure })),
  );
}

/** Every pattern with its verdict on one figure, in the same order. */
export function wardrobeOf(fitting: Fitting, figure: number): readonly RankedPair[] {
  return ranked(
    fitting,
    fitting.patterns.map((_, pattern) => ({ pattern, figure })),
  );
}

/** How often each verdict is among the pairs, from the best to the worst; those that are not there are left out. */
export function countVerdicts(
  found: readonly Verdict[],
): readonly { readonly verdict: Verdict; readonly count: number }[] {
  return verdicts
    .map((verdict) => ({ verdict, count: found.filter((each) => each === verdict).length }))
    .filter(({ count }) => count > 0);
}

/**
 * What each pair rests on, and what its verdict would be if that were mended, by pair; nothing for those that rest on sound
 * readings.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 * @param rules those that the fitting was prepared with; the project’s own when left out
 */
export function doubtsOfPairs(
  fitting: Fitting,
  pairs: readonly RankedPair[],
  doubtful: readonly Doubt[],
  rules?: readonly EaseRule[],
): ReadonlyMap<RankedPair, string> {
  const marks = restMarks(fitting, pairs, doubtful, rules, "open it to see which");
  const marked = pairs.flatMap((pair, i) => (marks[i] ? [{ pair, mark: marks[i] }] : []));
  const after = soundVerdicts(
    fitting,
    marked.map(({ pair }) => pair),
    doubtful,
    rules,
  );
  return new Map(
    marked.map(({ pair, mark }, i) => [
      pair,
      `${mark} The verdict: ${soundWords(after[i]!, pair.explanation.verdict)}.`,
    ]),
  );
}

function ranked(fitting: Fitting, pairs: readonly Pair[]): readonly RankedPair[] {
  return pairs
    .map((pair) => ({ ...pair, explanation: explainPair(fitting, pair.pattern, pair.figure) }))
    .sort((a, b) => bestFirst(a.explanation, b.explanation));
}
