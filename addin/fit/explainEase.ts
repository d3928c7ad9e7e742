import { easeMm } from "../chart/easeRule.ts";
import { measureById } from "../measures/dictionary.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Alteration } from "./alteration.ts";
import { girthAlteration, lengthAlteration, lengthVerbs, widthVerbs } from "./alteration.ts";
import type { Check } from "./check.ts";
import type { CompiledPattern } from "./compilePattern.ts";
import { bandWidth } from "./judge.ts";
import { counts, isAround, judgeEase } from "./judgePair.ts";
import { girthOverGarments } from "./layers.ts";
import { lengthWords } from "../measures/lengthWords.ts";
import type { ReadingError } from "./readingError.ts";
import { readingErrorMm } from "./readingError.ts";
import type { Verdict } from "./verdict.ts";
import { verdictOf } from "./verdict.ts";
import type { EaseCheck } from "./patternChecks.ts";

/** A finished measure on one figure, in words and numbers. */
export function explainEase(
  check: EaseCheck,
  compiled: CompiledPattern,
  figure: { readonly index: number; readonly name: string; readonly unit: LengthUnit },
  error: ReadingError,
): Check {
  const found = judgeEase(check, compiled, figure.index, error);
  const verdict = verdictOf(found);
  const { unit } = figure;
  const bare = check.bodies[figure.index] ?? Number.NaN;
  const isGirth = check.kind === "girth";
  const isHard = check.contained !== undefined;
  const comfort = isGirth || isHard ? compiled.comfort : 1;
  const bodyMm = isGirth ? girthOverGarments(bare, check.layers) : bare;
  const least = easeMm(check.rule.least, bare, -Infinity);
  const most = easeMm(check.rule.most, bare, Infinity);
  const outerMm = (check.ends ? (check.ends.from[figure.index] ?? Number.NaN) : bodyMm) + check.ownMm;
  const hardMm = (check.contained?.[figure.index] ?? Number.NaN) + outerMm - bare;
  const needsMm =
    verdict === "will not go on"
      ? hardMm
      : isGirth || isHard
        ? leastGirthMm(outerMm, least, compiled)
        : outerMm + least;
  const hasMm = check.garmentMm * comfort;
  const mostMm = (check.ends ? (check.ends.to[figure.index] ?? Number.NaN) : outerMm) + most;
  const isOver = check.garmentMm > mostMm;
  const band = bandWidth(least, most) / (isAround(check.kind) || isHard ? 1 : 2);
  const snugMm = isHard
    ? hardMm
    : isGirth
      ? snuggestGirthMm(outerMm, least, band, compiled)
      : outerMm + least - band;
  const differenceMm = isOver ? check.garmentMm - mostMm : hasMm - needsMm;
  const alteration = alterationOf(verdict, differenceMm / (isOver ? 1 : comfort), check, compiled, unit);
  const nameOf = (measure: string): string => measureById(measure)?.name ?? measure;
  const name = nameOf(check.rule.measure);
  const uses = check.ends?.uses ?? [{ measure: check.rule.measure, mm: check.bodies }];
  const lacking = uses.filter(({ mm }) => Number.isNaN(mm[figure.index] ?? Number.NaN));
  const take = [
    ...lacking.map(({ measure }) => `${nameOf(measure)} of ${figure.name}`),
    ...(Number.isNaN(check.garmentMm) ? [`finished ${name.toLowerCase()} of ${compiled.pattern.code}`] : []),
  ];
  return {
    kind: isGirth ? "girth" : "length",
    place: check.place ?? name,
    measure: check.rule.measure,
    uses: uses.map(({ measure }) => measure),
    lacking: lacking.map(({ measure }) => measure),
    bodyMm: check.ends ? outerMm : bodyMm,
    needsMm,
    ...(most === Infinity ? {} : { mostMm, looseMm: mostMm + band }),
    ...(Number.isFinite(snugMm) && { snugMm: Math.min(snugMm, needsMm) }),
    hasMm,
    ...(comfort > 1 && { atRestMm: check.garmentMm }),
    differenceMm,
    verdict,
    counts: counts(check, found),
    says: words(verdict, {
      isAround: isAround(check.kind),
      easeMm: check.garmentMm - outerMm,
      stretchedMm: comfort > 1 ? hasMm - outerMm : undefined,
      differenceMm,
      errorMm: readingErrorMm(error, bare, check.rule.measure, figure.index),
      isCounted: counts(check, found),
      gives: compiled.pattern.stretch > 0 ? "when stretched" : "with its lacing open",
      take,
      unit,
    }),
    ...(alteration ? { alteration } : {}),
    unit,
    take: verdict === "too close to call" ? [`${name} of ${figure.name}`] : take,
    source: check.rule.source,
  };
}

/**
 * The least that a girth must reach with the comfortable share of its stretch. A negative least ease is measured unstretched,
 * and the body must be reached all the same; without a lower limit it must close with all its stretch.
 */
function leastGirthMm(outerMm: number, least: number, { comfort, full }: CompiledPattern): number {
  if (least === -Infinity) return (outerMm * comfort) / full;
  return least < 0 ? Math.max(outerMm, (outerMm + least) * comfort) : outerMm + least;
}

/** The least that can still be worn, snug, measured like {@link leastGirthMm}. It must close with all its stretch. */
function snuggestGirthMm(
  outerMm: number,
  least: number,
  band: number,
  { comfort, full }: CompiledPattern,
): number {
  const closesMm = (outerMm * comfort) / full;
  if (least === -Infinity) return closesMm;
  return least < 0
    ? Math.max((outerMm + least - band) * comfort, outerMm - band, closesMm)
    : Math.max(outerMm + least - band, closesMm);
}

interface Said {
  readonly isAround: boolean;
  readonly easeMm: number;
  /** Ease with the comfortable share of the stretch; undefined for a cloth that does not stretch. */
  readonly stretchedMm: number | undefined;
  readonly differenceMm: number;
  readonly errorMm: number;
  readonly isCounted: boolean;
  /** How it gets to its stretched ease. */
  readonly gives: string;
  readonly take: readonly string[];
  readonly unit: LengthUnit;
}

function words(verdict: Verdict, said: Said): string {
  const by = lengthWords(Math.abs(said.differenceMm), said.unit);
  const stretched =
    said.stretchedMm === undefined ? "" : `, ${lengthWords(said.stretchedMm, said.unit)} ${said.gives}`;
  const ease = `${lengthWords(said.easeMm, said.unit)} of ease${stretched}`;
  switch (verdict) {
    case "fits":
      return said.isAround ? `fits: ${ease}` : "fits";
    case "snug":
      return said.isAround ? `snug: ${ease}, ${by} less than usual` : `a little short, by ${by}`;
    case "loose":
      return said.isAround ? `loose: ${ease}, ${by} more than usual` : `a little long, by ${by}`;
    case "too close to call":
      return `too close to call: the tape may be off by ${lengthWords(said.errorMm, said.unit)}. Measure again`;
    case "not known":
      return said.isCounted
        ? `not known: measure ${said.take.join(" and ")}`
        : `not checked: ${said.take.join(" and ")} is not known`;
    case "will not go on":
      return `will not go on: ${by} too ${said.isAround ? "small" : "short"}`;
    default:
      return `${verdict} by ${by}`;
  }
}

function alterationOf(
  verdict: Verdict,
  differenceMm: number,
  { garmentMm, kind }: EaseCheck,
  { pattern }: CompiledPattern,
  unit: LengthUnit,
): Alteration | undefined {
  const isWrong = ["too tight", "too loose", "too short", "too long", "will not go on"].includes(verdict);
  if (!isWrong) return undefined;
  return kind === "girth"
    ? girthAlteration(-differenceMm, garmentMm, pattern.garmentClass.seamEdges, unit)
    : lengthAlteration(-differenceMm, garmentMm, kind === "width" ? widthVerbs : lengthVerbs, unit);
}
