import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { chartWith, doubtSays, doubtsByRow, mended, placesOf, restsOnWords } from "../chart/doubt.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { Pattern } from "../chart/pattern.ts";
import { codeKey } from "../chart/readPatterns.ts";
import { someOf } from "../measures/quote.ts";
import { underLayers } from "../chart/underLayers.ts";
import type { Explanation } from "./explainPair.ts";
import { explainPair } from "./explainPair.ts";
import { judgePair } from "./judgePair.ts";
import type { Fitting, Match } from "./match.ts";
import { prepareFitting } from "./match.ts";
import type { Verdict } from "./verdict.ts";
import { verdictOf } from "./verdict.ts";

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
    const { corrections } = doubt;
    if (isSame(judged, judgedOn(chartWith(chart, placesOf(doubt))))) return [];
    const other = corrections.length > 0 ? judgedOn(chartWith(chart, corrections)).verdict : undefined;
    return [{ says: doubtSays(doubt, judged.figure), verdict, mended: other }];
  });
}

/**
 * “Rests on a doubtful reading: Waist 13.4 mm (wrong unit). Mended as FLAGS suggests, the verdict would be “fits”.”
 *
 * @param by what the reader looks at to mend readings
 */
export function restWords({ says, verdict, mended: other }: DoubtfulGround, by: "FLAGS" | "Check"): string {
  const rests = restsOnWords([says]);
  if (other === undefined) return `${rests} Measure it again.`;
  return `${rests} Mended as ${by} suggests, ${other === verdict ? "the verdict stays" : `the verdict would be “${other}”`}.`;
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
 * @param rules those that the fitting was prepared with; the project’s own when left out
 * @param where they are told one by one
 */
export function restMarks(
  fitting: Fitting,
  pairs: readonly AnsweredPair[],
  doubtful: readonly Doubt[],
  rules?: readonly EaseRule[],
  where = "see REASONS",
): readonly string[] {
  if (doubtful.length === 0) return pairs.map(() => "");
  const { chart } = fitting.view;
  const worn = new Map(
    [...new Set(pairs.map(({ pattern }) => pattern))].map((row) => [row, wornTogether(fitting, row)]),
  );
  const garments = [...new Set([...worn.values()].flat())];
  const places = new Map(garments.map((garment, place) => [garment, place]));
  const without = chartWith(chart, doubtful.flatMap(placesOf));
  const sound = prepareFitting(garments, without, { rules, readingError: fitting.readingError });
  const ofRow = doubtsByRow(doubtful);
  return pairs.map(({ pattern, figure, explanation }) => {
    const together = worn.get(pattern) ?? [];
    const figures = [figure, ...together.flatMap(({ draftedFor }) => draftedFor ?? [])];
    const concerned = new Set(figures.flatMap((place) => ofRow.get(chart.rows[place] ?? -1) ?? []));
    const [first] = concerned;
    if (!first || isSame(explanation, explainPair(sound, places.get(together[0]!) ?? 0, figure))) return "";
    return concerned.size === 1
      ? restsOnWords([doubtSays(first, explanation.figure)])
      : `Rests on doubtful readings: ${where}.`;
  });
}

/** What a verdict would be without doubt. */
export interface SoundVerdict {
  readonly verdict: Verdict;
  /** False where nobody knows what one of the readings ought to be, so that it is taken out. */
  readonly isMended: boolean;
}

/** The verdicts of some pairs with all doubtful readings mended, those without a correction taken out. */
export function soundVerdicts(
  fitting: Fitting,
  pairs: readonly Pick<AnsweredPair, "pattern" | "figure">[],
  doubtful: readonly Doubt[],
  rules?: readonly EaseRule[],
): readonly SoundVerdict[] {
  if (pairs.length === 0) return [];
  const { view, readingError } = fitting;
  const { chart } = view;
  const patterns = fitting.patterns.map(({ pattern }) => pattern);
  const sound = prepareFitting(patterns, mended(chart, doubtful), { rules, readingError });
  const ofRow = doubtsByRow(doubtful);
  return pairs.map(({ pattern, figure }) => ({
    verdict: verdictOf(judgePair(sound.patterns[pattern]!, figure, readingError)),
    isMended: [figure, ...draftedFor(fitting, pattern)].every((place) =>
      areMendable(ofRow.get(chart.rows[place] ?? -1) ?? []),
    ),
  }));
}

/** “fits if mended”, “not known without”. */
export function soundWords({ verdict, isMended }: SoundVerdict, before: Verdict): string {
  return `${verdict === before ? "the same" : verdict} ${isMended ? "if mended" : "without"}`;
}

/** What the verdicts on a figure rest on, in few words. */
export interface FigureMark {
  /** “Waist 13.4 mm (wrong unit)” */
  readonly doubtful: string;
  /** “D-1 fits, S-2 on 3 others”; begins with “without it:” where nobody knows what the reading ought to be. */
  readonly mended: string;
}

/**
 * Which doubtful readings of each figure verdicts rest on, and which verdicts would be others if all of them were mended as FLAGS
 * suggests, or not there where it suggests nothing; `undefined` where no verdict would change. Only figures with a doubtful reading, and patterns drafted for such a one, are judged anew.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 * @param rules those that the fitting was prepared with
 */
export function matchMarks(
  fitting: Fitting,
  doubtful: readonly Doubt[],
  rules: readonly EaseRule[],
): readonly (FigureMark | undefined)[] {
  const { view, readingError } = fitting;
  const { chart, size } = view;
  const ofRow = doubtsByRow(doubtful);
  const doubtsOf = (figure: number) => ofRow.get(chart.rows[figure] ?? -1) ?? [];
  if (!chart.figures.some((_, figure) => doubtsOf(figure).length > 0))
    return chart.figures.map(() => undefined);
  const patterns = fitting.patterns.map(({ pattern }) => pattern);
  const sound = prepareFitting(patterns, mended(chart, doubtful), { rules, readingError });
  const drafted = new Map<number, number[]>();
  patterns.forEach((_, row) => {
    for (const { draftedFor } of wornTogether(fitting, row))
      if (draftedFor !== undefined && doubtsOf(draftedFor).length > 0)
        drafted.set(draftedFor, [...(drafted.get(draftedFor) ?? []), row]);
  });
  const other = (row: number, figure: number): number | undefined => {
    const after = judgePair(sound.patterns[row]!, figure, readingError);
    return after === judgePair(fitting.patterns[row]!, figure, readingError) ? undefined : after;
  };
  return chart.figures.map((name, figure) => {
    const own = doubtsOf(figure);
    if (own.length === 0) return undefined;
    const turned = patterns.flatMap(({ code }, row) => {
      const after = other(row, figure);
      return after === undefined ? [] : [`${code} ${verdictOf(after)}`];
    });
    const elsewhere = [...new Set(drafted.get(figure))].flatMap((row) => {
      const count = Array.from({ length: size }, (_, each) => each).filter(
        (each) => each !== figure && other(row, each) !== undefined,
      ).length;
      return count === 0 ? [] : [`${patterns[row]!.code} on ${String(count)} other${count === 1 ? "" : "s"}`];
    });
    const changes = [...turned, ...elsewhere];
    if (changes.length === 0) return undefined;
    // What is about the figure alone says more than what is about a whole column.
    const first = [...own].sort((a, b) => Number(a.figure === "") - Number(b.figure === ""));
    const told = someOf(
      first.map((doubt) => doubtSays(doubt, name)),
      roomForMark,
    );
    return {
      doubtful: told,
      mended: `${areMendable(own) ? "" : "without it: "}${someOf(changes, roomForMark)}`,
    };
  });
}

const roomForMark = 40;

/** What the verdicts of all pairs come to without doubt: a byte a pair, as those of a match. */
export interface SoundRanks {
  /** Where the verdict is another one without the doubtful readings, or with them mended: 1, or 2 where some have to be taken out. */
  readonly rests: Uint8Array;
  /** Ranks of the verdicts with all doubtful readings mended, those without a correction taken out. */
  readonly ranks: Uint8Array;
}

/**
 * Which verdicts of all patterns on all figures rest on doubtful readings, and what they would be. Only figures with such a
 * reading, and patterns drafted for such a one, are judged anew.
 *
 * @param match what `matchAll` gives for the fitting
 * @param doubtful the doubts about the chart, see `doubts`
 * @param rules those that the fitting was prepared with; the project’s own when left out
 */
export function soundRanks(
  fitting: Fitting,
  match: Pick<Match, "ranks">,
  doubtful: readonly Doubt[],
  rules?: readonly EaseRule[],
): SoundRanks {
  const { view, readingError } = fitting;
  const { chart, size } = view;
  const rests = new Uint8Array(match.ranks.length);
  const ranks = Uint8Array.from(match.ranks);
  if (doubtful.length === 0) return { rests, ranks };
  const ofRow = doubtsByRow(doubtful);
  const doubtsOf = chart.rows.map((row) => ofRow.get(row) ?? []);
  const patterns = fitting.patterns.map(({ pattern }) => pattern);
  const options = { rules, readingError };
  const without = prepareFitting(patterns, chartWith(chart, doubtful.flatMap(placesOf)), options);
  const sound = prepareFitting(patterns, mended(chart, doubtful), options);
  patterns.forEach((_, row) => {
    const ofGarment = draftedFor(fitting, row).flatMap((place) => doubtsOf[place] ?? []);
    for (let figure = 0; figure < size; figure++) {
      const own = doubtsOf[figure]!;
      if (own.length + ofGarment.length === 0) continue;
      const at = row * size + figure;
      ranks[at] = judgePair(sound.patterns[row]!, figure, readingError);
      const isOther =
        ranks[at] !== match.ranks[at] ||
        judgePair(without.patterns[row]!, figure, readingError) !== match.ranks[at];
      if (isOther) rests[at] = areMendable(own) && areMendable(ofGarment) ? 1 : 2;
    }
  });
  return { rests, ranks };
}

/** The figures that a pattern and what is worn under it were drafted for. */
function draftedFor(fitting: Fitting, row: number): readonly number[] {
  return wornTogether(fitting, row).flatMap((pattern) => pattern.draftedFor ?? []);
}

function areMendable(doubtful: readonly Doubt[]): boolean {
  return doubtful.every(({ corrections }) => corrections.length > 0);
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
