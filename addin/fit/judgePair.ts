import { easeMm } from "../chart/easeRule.ts";
import type { CompiledPattern, OpeningCheck, Route } from "./compilePattern.ts";
import { girthOverLayers } from "./girthOverLayers.ts";
import type { MeasureKind } from "../measures/measure.ts";
import { judgeClearance, judgeContained, judgeGirth, judgeLength } from "./judge.ts";
import { girthOverGarments } from "./layers.ts";
import type { ReadingError } from "./readingError.ts";
import { readingErrorMm } from "./readingError.ts";
import { rank } from "./verdict.ts";
import type { EaseCheck } from "./patternChecks.ts";

/**
 * The verdict of a pattern on a figure, as a rank: the worst of its governing measures, its limb openings and the best
 * way of putting it on. Makes nothing, so that a million pairs take about a second.
 */
export function judgePair(compiled: CompiledPattern, figure: number, error: ReadingError): number {
  let worst = rank.fits;
  let judged = false;
  for (const check of compiled.eases) {
    const found = judgeEase(check, compiled, figure, error);
    if (!counts(check, found)) continue;
    judged = true;
    worst = Math.max(worst, found);
  }
  // Openings alone do not say that a garment fits.
  if (!judged) worst = rank["not known"];
  for (const check of compiled.limbs) worst = Math.max(worst, judgeOpening(check, figure, error));
  let best = rank["will not go on"];
  for (const route of compiled.routes) best = Math.min(best, judgeRoute(route, figure, error));
  return Math.max(worst, best);
}

/** A measure that is not required counts only where garment and body are known. */
export function counts({ rule }: EaseCheck, found: number): boolean {
  return rule.required || found !== rank["not known"];
}

/** The rank of a finished measure on a figure. */
export function judgeEase(
  check: EaseCheck,
  { comfort, full }: CompiledPattern,
  figure: number,
  error: ReadingError,
): number {
  const bare = check.bodies[figure] ?? Number.NaN;
  const least = easeMm(check.rule.least, bare, -Infinity);
  const most = easeMm(check.rule.most, bare, Infinity);
  const errorMm = readingErrorMm(error, bare, check.rule.measure, figure);
  const { garmentMm, ownMm, kind } = check;
  const over = girthOverGarments(bare, check.layers) + ownMm;
  const atRest = check.ends ? beyondEnds(garmentMm, check.ends, figure) : garmentMm - over;
  if (check.contained) {
    const hard = over - bare + (check.contained[figure] ?? Number.NaN);
    const found = judgeContained(garmentMm * comfort - hard, atRest, least, most, errorMm);
    return isAround(kind) ? found : asLength(found);
  }
  return isAround(kind)
    ? judgeGirth(atRest, garmentMm * comfort - over, garmentMm * full - over, least, most, errorMm)
    : asLength(judgeLength(atRest, least, most, errorMm));
}

/** mm by which a length ends below (above zero) or above (below zero) where it is to end. */
function beyondEnds(mm: number, { from, to }: NonNullable<EaseCheck["ends"]>, figure: number): number {
  const short = mm - (from[figure] ?? Number.NaN);
  return short < 0 ? short : Math.max(0, mm - (to[figure] ?? Number.NaN));
}

/** Girths and widths are tight or loose, lengths and heights short or long. */
export function isAround(kind: MeasureKind): boolean {
  return kind === "girth" || kind === "width";
}

function asLength(found: number): number {
  if (found === rank["too tight"]) return rank["too short"];
  return found === rank["too loose"] ? rank["too long"] : found;
}

/** The rank of an opening on a figure. */
export function judgeOpening(check: OpeningCheck, figure: number, error: ReadingError): number {
  const obstacle = check.obstacles[figure] ?? Number.NaN;
  const shut = check.shutMm - passMm(check, obstacle);
  const errorMm = readingErrorMm(error, obstacle, check.measures[figure], figure);
  const atLeast = judgeClearance(shut + check.placket.leastMm, errorMm);
  if (check.placket.leastMm === check.placket.mostMm || atLeast === rank.fits) return atLeast;
  const atMost = judgeClearance(shut + check.placket.mostMm, errorMm);
  return atMost === rank["will not go on"] ? atMost : rank["not known"];
}

/** What has to pass an opening, in mm: the obstacle over what is worn on it, and the garment’s own cloth turned in. */
export function passMm({ layers, thicknessMm }: OpeningCheck, obstacleMm: number): number {
  return girthOverLayers(girthOverGarments(obstacleMm, layers), thicknessMm);
}

/** The worst rank on a way of putting a garment on. */
export function judgeRoute({ openings }: Route, figure: number, error: ReadingError): number {
  let worst = rank.fits;
  for (const check of openings) worst = Math.max(worst, judgeOpening(check, figure, error));
  return worst;
}
