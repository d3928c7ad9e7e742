import type { Check } from "../../addin/fit/check.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { Tick } from "../drawing/ticks.ts";
import { ticksOf } from "../drawing/ticks.ts";

/** From where to where something reaches, as shares of the width, 0 to 1. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * One check on a scale that is drawn as large as it can be: it begins and ends a little outside of what is allowed and what the
 * garment has, not at 0. Shares of the width, 0 to 1.
 */
export interface CheckDrawing {
  /** What the body measures under a girth or length; left out where that is what is needed. */
  readonly body: { readonly at: number; readonly words: string } | undefined;
  /** What fits; to the right end where there is no limit. */
  readonly fits: Span;
  /** What is snug or loose, and can be worn; left out where there is none. */
  readonly snug: Span | undefined;
  readonly loose: Span | undefined;
  /** What the garment measures with its cloth at rest. */
  readonly atRest: number;
  /** The same, stretched as far as is comfortable. */
  readonly has: number;
  readonly ticks: readonly Tick[];
  readonly needsWords: string;
  /** The limits of snug and loose. */
  readonly limitWords: string | undefined;
  readonly hasWords: string;
  /** The whole drawing in a sentence. */
  readonly description: string;
}

/** Room at both ends, as a share of what is drawn. */
const room = 0.08;
/** The least that is drawn, as a share of what is needed: a tenth of a millimetre is not to look like a gap. */
const leastShare = 0.06;

/** The drawing of a check; `undefined` where body or garment is not known. */
export function drawCheck(check: Check): CheckDrawing | undefined {
  const {
    kind,
    place,
    bodyMm,
    needsMm,
    mostMm,
    snugMm,
    looseMm,
    hasMm,
    atRestMm = hasMm,
    unit,
    says,
  } = check;
  if (![bodyMm, needsMm, hasMm].every(Number.isFinite)) return undefined;
  const isBodyDrawn = kind !== "opening" && Math.abs(needsMm - bodyMm) > 0.05;
  const drawn = [needsMm, mostMm, snugMm, looseMm, hasMm, atRestMm, isBodyDrawn ? bodyMm : undefined];
  const known = drawn.filter((mm): mm is number => mm !== undefined && Number.isFinite(mm));
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const spanMm = Math.max(most - least, leastShare * Math.abs(needsMm), 0.5);
  const fromMm = Math.max(0, (least + most) / 2 - spanMm * (0.5 + room));
  const toMm = fromMm + spanMm * (1 + 2 * room);
  const at = (mm: number): number => Math.min(1, Math.max(0, (mm - fromMm) / (toMm - fromMm)));
  const hasSnug = snugMm !== undefined && snugMm < needsMm - 0.05;
  const hasLoose = mostMm !== undefined && looseMm !== undefined && looseMm > mostMm + 0.05;
  const needsWords = neededWords(check);
  const limits = [
    ...(hasSnug ? [`snug from ${lengthWords(snugMm, unit)}`] : []),
    ...(hasLoose ? [`loose to ${lengthWords(looseMm, unit)}`] : []),
  ];
  const limitWords = limits.length === 0 ? undefined : limits.join(", ");
  const hasWords = `has ${lengthWords(atRestMm, unit)}${
    hasMm > atRestMm + 0.01 ? `, stretched ${lengthWords(hasMm, unit)}` : ""
  }`;
  return {
    body: isBodyDrawn ? { at: at(bodyMm), words: `body ${lengthWords(bodyMm, unit)}` } : undefined,
    fits: { from: at(needsMm), to: mostMm === undefined ? 1 : at(Math.max(mostMm, needsMm)) },
    snug: hasSnug ? { from: at(snugMm), to: at(needsMm) } : undefined,
    loose: hasLoose ? { from: at(Math.max(mostMm, needsMm)), to: at(looseMm) } : undefined,
    atRest: at(atRestMm),
    has: at(hasMm),
    ticks: ticksOf(fromMm, toMm, unit),
    ...{ needsWords, limitWords, hasWords },
    description: `${place}: ${[needsWords, limitWords, hasWords].filter((words) => words !== undefined).join(", ")}; ${says}.`,
  };
}

/** “needs 98 to 104 mm”, “needs at least 98 mm” */
export function neededWords({ needsMm, mostMm, unit }: Check): string {
  if (!Number.isFinite(needsMm)) {
    return mostMm !== undefined && Number.isFinite(mostMm)
      ? `may have ${lengthWords(mostMm, unit)}`
      : "needs not known";
  }
  return mostMm === undefined
    ? `needs at least ${lengthWords(needsMm, unit)}`
    : `needs ${lengthWords(needsMm, unit)} to ${lengthWords(mostMm, unit)}`;
}
