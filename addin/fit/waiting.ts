import type { CompiledPattern, OpeningCheck } from "./compilePattern.ts";
import type { EaseCheck } from "./patternChecks.ts";
import { counts, judgeEase, judgeOpening, judgePair, judgeRoute } from "./judgePair.ts";
import type { Fitting } from "./match.ts";
import { isWearable, rank, verdictOf } from "./verdict.ts";

/** A reading that a figure lacks, and the verdicts that wait for it. */
export interface WaitedFor {
  /** Row in `fitting.view.chart.figures`. */
  readonly figure: number;
  /** The id of the measure. */
  readonly measure: string;
  /** Rows in `fitting.patterns` of those whose verdict is not known, and would be with this reading alone. */
  readonly settles: readonly number[];
  /** Of those whose verdict waits for it among others, or holds “unless” it says otherwise. */
  readonly others: readonly number[];
}

/**
 * The missing readings that verdicts wait for: those that are not known without them, and those of garments that can be worn,
 * unless a measure that was not taken says otherwise.
 *
 * Time grows with patterns × figures, as that of `matchAll`.
 */
export function waitedFor(fitting: Fitting): readonly WaitedFor[] {
  const { view, patterns, readingError } = fitting;
  const found = new Map<string, { figure: number; measure: string; settles: number[]; others: number[] }>();
  for (const [row, compiled] of patterns.entries()) {
    for (let figure = 0; figure < view.size; figure++) {
      const verdict = judgePair(compiled, figure, readingError);
      const isOpen = verdict === rank["not known"];
      if (!isOpen && !isWearable(verdictOf(verdict))) continue;
      const { measures, isOfGarmentToo } = isOpen
        ? lackingOf(compiled, figure, fitting)
        : { measures: unlessOf(compiled, figure, fitting), isOfGarmentToo: false };
      for (const measure of measures) {
        const key = `${String(figure)} ${measure}`;
        const known = found.get(key) ?? { figure, measure, settles: [], others: [] };
        const isSettled = isOpen && measures.size === 1 && !isOfGarmentToo;
        (isSettled ? known.settles : known.others).push(row);
        found.set(key, known);
      }
    }
  }
  const needed = ({ settles, others }: WaitedFor): number => settles.length + others.length;
  return [...found.values()].sort(
    (a, b) => b.settles.length - a.settles.length || needed(b) - needed(a) || a.figure - b.figure,
  );
}

/** What a verdict that is not known waits for: of the figure, and whether something of the garment is wanting too. */
function lackingOf(
  compiled: CompiledPattern,
  figure: number,
  { view, readingError }: Fitting,
): { readonly measures: ReadonlySet<string>; readonly isOfGarmentToo: boolean } {
  const measures = new Set<string>();
  let isOfGarmentToo = false;
  const take = (lacking: readonly string[]): void => {
    if (lacking.length === 0) isOfGarmentToo = true;
    for (const measure of lacking) measures.add(measure);
  };
  for (const check of compiled.eases) {
    const found = judgeEase(check, compiled, figure, readingError);
    if (found === rank["not known"] && counts(check, found)) {
      take(bodyLacking(check, figure));
      if (Number.isNaN(check.garmentMm)) isOfGarmentToo = true;
    }
  }
  const ofOpening = (check: OpeningCheck): void => {
    if (judgeOpening(check, figure, readingError) !== rank["not known"]) return;
    take(view.obstacle(check.obstacle, figure).lacking);
    if (Number.isNaN(check.shutMm)) isOfGarmentToo = true;
  };
  compiled.limbs.forEach(ofOpening);
  const open = compiled.routes.map((route) => judgeRoute(route, figure, readingError));
  const best = Math.min(...open);
  if (best === rank["not known"]) compiled.routes[open.indexOf(best)]?.openings.forEach(ofOpening);
  return { measures, isOfGarmentToo };
}

/** What a garment that can be worn was not judged by, since the figure lacks it. */
function unlessOf(compiled: CompiledPattern, figure: number, { readingError }: Fitting): ReadonlySet<string> {
  const measures = new Set<string>();
  for (const check of compiled.eases) {
    if (Number.isNaN(check.garmentMm)) continue;
    const lacking = bodyLacking(check, figure);
    if (lacking.length === 0) continue;
    if (!counts(check, judgeEase(check, compiled, figure, readingError)))
      for (const measure of lacking) measures.add(measure);
  }
  return measures;
}

function bodyLacking(check: EaseCheck, figure: number): readonly string[] {
  const uses = check.ends?.uses ?? [{ measure: check.rule.measure, mm: check.bodies }];
  return uses.flatMap(({ measure, mm }) => (Number.isNaN(mm[figure] ?? Number.NaN) ? [measure] : []));
}
