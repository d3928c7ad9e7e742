import type { Fitting, Match } from "../../addin/fit/match.ts";
import { matchAll } from "../../addin/fit/match.ts";
import type { SoundRanks } from "../../addin/fit/restsOn.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { rank, verdictOf } from "../../addin/fit/verdict.ts";

/** Pairs that are judged before the page may breathe: a few milliseconds of work. */
const pairsAtOnce = 10_000;

/**
 * As `matchAll`, in steps that let the page breathe.
 *
 * @yields the share done, 0 to 1
 */
export function* matchInSteps(fitting: Fitting): Generator<number, Match> {
  const { patterns, view } = fitting;
  const ranks = new Uint8Array(patterns.length * view.size);
  const atOnce = Math.max(1, Math.floor(pairsAtOnce / Math.max(1, view.size)));
  for (let from = 0; from < patterns.length; from += atOnce) {
    const part = matchAll({ ...fitting, patterns: patterns.slice(from, from + atOnce) });
    ranks.set(part.ranks, from * view.size);
    yield Math.min(1, (from + atOnce) / patterns.length);
  }
  return {
    patterns: patterns.map(({ pattern }) => pattern),
    figures: view.chart.figures,
    ranks,
    verdict: (pattern, figure) => verdictOf(ranks[pattern * view.size + figure] ?? Number.NaN),
  };
}

export interface MatrixFilter {
  /** Name of a garment class; `undefined` is every class. */
  readonly garmentClass: string | undefined;
  readonly verdict: Verdict | undefined;
}

/** The rows and columns of a matrix that are shown: places in `match.patterns` and `match.figures`. */
export interface MatrixPart {
  readonly patterns: readonly number[];
  readonly figures: readonly number[];
}

/**
 * The patterns of the class with at least one verdict of the kind, and the figures on which one of them has it. Tables
 * keep their order.
 */
export function filterMatrix(match: Match, { garmentClass, verdict }: MatrixFilter): MatrixPart {
  const { ranks } = match;
  const size = match.figures.length;
  const every = Array.from({ length: size }, (_, figure) => figure);
  const ofClass = match.patterns.flatMap((pattern, p) =>
    garmentClass === undefined || pattern.garmentClass.name === garmentClass ? [p] : [],
  );
  if (verdict === undefined) return { patterns: ofClass, figures: every };
  const wanted = rank[verdict];
  const onFigure = new Uint8Array(size);
  const patterns = ofClass.filter((p) => {
    let found = false;
    for (let figure = 0; figure < size; figure++) {
      if (ranks[p * size + figure] !== wanted) continue;
      found = true;
      onFigure[figure] = 1;
    }
    return found;
  });
  return { patterns, figures: every.filter((figure) => onFigure[figure] === 1) };
}

/** How many pairs of a part have each rank of `verdicts`. */
export function countRanks(match: Match, { patterns, figures }: MatrixPart): readonly number[] {
  const counts = Array.from(Object.keys(rank), () => 0);
  const size = match.figures.length;
  for (const p of patterns) {
    for (const figure of figures) {
      const found = match.ranks[p * size + figure] ?? rank["not known"];
      counts[found] = (counts[found] ?? 0) + 1;
    }
  }
  return counts;
}

/** How many verdicts of a part rest on doubtful readings, and how many of these would be others without them, or with them mended. */
export function countDoubtful(
  match: Match,
  { patterns, figures }: MatrixPart,
  { rests, ranks }: SoundRanks,
): { readonly resting: number; readonly changing: number } {
  const counts = { resting: 0, changing: 0 };
  const size = match.figures.length;
  for (const p of patterns) {
    for (const figure of figures) {
      const at = p * size + figure;
      if (!rests[at]) continue;
      counts.resting++;
      if (ranks[at] !== match.ranks[at]) counts.changing++;
    }
  }
  return counts;
}
