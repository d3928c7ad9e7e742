import type { Check } from "../fit/check.ts";
import { explainPair } from "../fit/explainPair.ts";
import type { Fitting } from "../fit/match.ts";
import type { Verdict } from "../fit/verdict.ts";
import { isWearable } from "../fit/verdict.ts";
import type { MeasureKind } from "../measures/measure.ts";
import { measureById } from "../measures/dictionary.ts";
import type { ChangeToMake, LengthName, OpeningName, Reason, VerdictWords, FitKind } from "./words/words.ts";
import type { WornOn } from "../chart/garmentTerms.ts";
import { groupedBy } from "../chart/groupedBy.ts";

/** A pattern on a figure, as buyers read it. */
export interface PairAnswer {
  /** That of the fit engine, as it is. */
  readonly verdict: Verdict;
  readonly kind: FitKind;
  /** Why not, or what to change; "" where it fits. */
  readonly says: string;
  /** What it has in common with other figures: where it does not fit the worst place, without amounts; snug or loose where that is so. */
  readonly gist: string;
  /** Ids of the measures of the figure that would decide. */
  readonly take: readonly string[];
}

/** How answers are told. */
export interface Telling {
  readonly words: VerdictWords;
  /** An amount with its unit; undefined where it is too small to be told. */
  amount(mm: number): string | undefined;
  /** Whether amounts may be told that a reading of the measure could be worked out from. */
  mayTell(measure: string): boolean;
}

/** An opening that lacks more than this share of itself is a new draft. The project’s own starting value, as for girths. */
const largestOpeningShare = 0.1;

/**
 * The verdict of `matchAll` for a pair, with its reasons in the words of the buyers.
 *
 * “With a change” is what the engine calls wrong in a way that can be altered everywhere it counts, with nothing left to
 * measure.
 */
export function answerPair(fitting: Fitting, pattern: number, figure: number, telling: Telling): PairAnswer {
  const { verdict, checks } = explainPair(fitting, pattern, figure);
  const counted = checks.filter((check) => check.counts);
  const wrong = counted.filter((check) => !isWearable(check.verdict) && !isOpen(check));
  const open = counted.filter(isOpen);
  const { wornOn } = fitting.patterns[pattern]!.pattern.garmentClass;
  if (isWearable(verdict)) {
    const gist = verdict === "fits" ? "" : wearableWords(verdict, counted, telling.words);
    return { verdict, kind: "fits", says: "", gist, take: [] };
  }
  if (wrong.length === 0) {
    const reasons = open.map((check) => reasonOf(check, wornOn, telling));
    const says = sentence(joined(reasons).map(telling.words.reason));
    return { verdict, kind: "unsure", says, gist: says, take: toTake(open) };
  }
  if (open.length === 0 && wrong.every(canBeAltered)) {
    const says = sentence(wrong.map((check) => telling.words.change(changeOf(check, wornOn, telling))));
    return { verdict, kind: "change", says, gist: says, take: [] };
  }
  const worst = wrong.filter((check) => check.verdict === verdict);
  const others = wrong.filter((check) => check.verdict !== verdict);
  const told = [...worst, ...others].slice(0, mostReasons);
  const reasons = (checks: readonly Check[], how: Telling): string =>
    sentence(checks.map((check) => how.words.reason(reasonOf(check, wornOn, how))));
  const gist = reasons(told.slice(0, 1), { ...telling, mayTell: () => false });
  return { verdict, kind: "not", says: reasons(told, telling), gist, take: [] };
}

/** Snug or loose of a garment whose length alone is off is a little short or long. */
function wearableWords(verdict: Verdict, counted: readonly Check[], words: VerdictWords): string {
  const off = counted.filter((check) => check.verdict === verdict);
  const isOfLength =
    off.length > 0 && off.every((check) => check.kind === "length" && kindOf(check) === "length");
  if (!isOfLength) return words.verdicts[verdict];
  return verdict === "snug" ? words.littleShort : words.littleLong;
}

/** What is not known of the body in one reason; where there is no reason at all, that. */
function joined(reasons: readonly Reason[]): readonly Reason[] {
  const measures = reasons.flatMap((reason) => (reason.kind === "body unknown" ? reason.measures : []));
  const others = reasons.filter(({ kind }) => kind !== "body unknown");
  const unknown: readonly Reason[] =
    measures.length > 0 ? [{ kind: "body unknown", measures: [...new Set(measures)] }] : [];
  return reasons.length > 0 ? [...unknown, ...others] : [{ kind: "nothing to judge by" }];
}

/** More would be read by nobody. */
const mostReasons = 2;

function isOpen({ verdict }: Check): boolean {
  return verdict === "not known" || verdict === "too close to call";
}

function canBeAltered({ alteration, kind, hasMm }: Check): boolean {
  if (!alteration) return false;
  return kind !== "opening" || Math.abs(alteration.totalMm) <= largestOpeningShare * hasMm;
}

function toTake(open: readonly Check[]): readonly string[] {
  const ids = open.flatMap(({ verdict, uses = [], lacking = [], opening }) => {
    if (verdict === "too close to call") return opening ? [opening.passes] : uses;
    return opening ? opening.lacking : lacking;
  });
  return [...new Set(ids)].filter((id) => id !== "");
}

/** What an opening is called on a garment of this kind. */
function openingName(place: NonNullable<Check["opening"]>["place"], wornOn: WornOn): OpeningName {
  if (place === "cuff") return wornOn === "hand" ? "wrist" : "sleeve";
  if (place === "waist" && isOfTrunk(wornOn)) return "narrowest";
  if (place !== "hem") return place;
  if (wornOn === "hips and legs" || wornOn === "body and legs") return "leg";
  return wornOn === "leg" || wornOn === "foot" ? "ankle" : "hem";
}

/** The length of a garment that goes by a name of its own: a skirt has a length, not an outside leg. */
function lengthName({ kind, measure = "" }: Check, wornOn: WornOn): LengthName | undefined {
  if (kind !== "length") return undefined;
  switch (wornOn) {
    case "hips":
    case "upper body":
    case "whole body":
    case "arm":
      return measure === "armLength" ? "sleeve" : measure === "outsideLeg" ? "hem" : undefined;
    case "body and legs":
      return measure === "armLength" ? "sleeve" : isOfLeg(measure) ? "leg" : undefined;
    default:
      return isOfLeg(measure) ? "leg" : undefined;
  }
}

/** Worn on the trunk, and put on from its neck or hem. */
function isOfTrunk(wornOn: WornOn): boolean {
  return wornOn === "upper body" || wornOn === "whole body" || wornOn === "body and legs";
}

function isOfLeg(measure: string): boolean {
  return measure === "insideLeg" || measure === "outsideLeg";
}

function kindOf({ kind, measure = "" }: Check): MeasureKind {
  return measureById(measure)?.kind ?? (kind === "girth" ? "girth" : "length");
}

function termOf(check: Check, wornOn: WornOn, { measure, lengths }: VerdictWords): string {
  const { measure: id = "" } = check;
  const name = lengthName(check, wornOn);
  // Trousers are called by the measures of the leg, of which they can have two.
  return name === undefined || name === "leg" ? (measure(id) ?? id) : lengths[name];
}

function reasonOf(check: Check, wornOn: WornOn, { words, amount, mayTell }: Telling): Reason {
  const { verdict, measure, lacking = [], opening, hasMm, differenceMm } = check;
  const namesOf = (ids: readonly string[]): readonly string[] => ids.map((id) => words.measure(id) ?? id);
  if (verdict === "not known") {
    if (opening && opening.lacking.length > 0)
      return { kind: "body unknown", measures: namesOf(opening.lacking) };
    if (opening) return { kind: "opening unknown", place: openingName(opening.place, wornOn) };
    if (lacking.length > 0) return { kind: "body unknown", measures: namesOf(lacking) };
    if (measure !== undefined && Number.isNaN(hasMm))
      return { kind: "garment unknown", measure: termOf(check, wornOn, words) };
  }
  const by = restsOn(check).every(mayTell) ? amount(Math.abs(differenceMm)) : undefined;
  if (opening) {
    const { place, passes } = opening;
    return { kind: "opening", place: openingName(place, wornOn), passes, verdict, by };
  }
  return { kind: "measure", measure: termOf(check, wornOn, words), of: kindOf(check), verdict, by };
}

/** The measures of the body that an amount could be turned back into. */
function restsOn({ opening, uses = [] }: Check): readonly string[] {
  return opening ? [opening.passes] : uses;
}

function changeOf(check: Check, wornOn: WornOn, { words, amount, mayTell }: Telling): ChangeToMake {
  const { kind, opening, alteration } = check;
  const { totalMm = 0, edges = 0, perEdgeMm = 0 } = alteration ?? {};
  const total = restsOn(check).every(mayTell) ? amount(Math.abs(totalMm)) : undefined;
  if (opening) return { kind: "opening", place: openingName(opening.place, wornOn), total };
  const named = { measure: termOf(check, wornOn, words), isMore: totalMm > 0 };
  const of = kindOf(check);
  if (kind !== "girth" && of !== "girth") return { kind: of, ...named, at: lengthName(check, wornOn), total };
  const perEdge = amount(Math.abs(perEdgeMm));
  const amounts = total === undefined || perEdge === undefined ? undefined : { total, edges, perEdge };
  return { kind: "girth", ...named, amounts };
}

function sentence(parts: readonly string[]): string {
  return [...new Set(parts)].join("; ");
}

/** Figures with the same answer together, in the order of the chart. */
export function groupedAnswers(
  kind: FitKind,
  answers: readonly PairAnswer[],
): readonly { readonly gist: string; readonly members: readonly number[] }[] {
  const those = [...answers.keys()].filter((at) => answers[at]!.kind === kind);
  return [...groupedBy(those, (at) => answers[at]!.gist)].map(([gist, members]) => ({ gist, members }));
}
