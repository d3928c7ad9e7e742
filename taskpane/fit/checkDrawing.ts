import type { Check } from "../../addin/fit/check.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { Tick } from "../drawing/ticks.ts";
import { ticksOf } from "../drawing/ticks.ts";

/** One check as bars on one scale that begins at 0. Shares of the width, 0 to 1. */
export interface CheckDrawing {
  /** What the body measures under a girth or length; left out where that is what is needed. */
  readonly body: { readonly at: number; readonly words: string } | undefined;
  /** The least that is needed. */
  readonly needs: number;
  /** The most that is allowed; undefined without a limit. */
  readonly most: number | undefined;
  /** What the garment measures with its cloth at rest. */
  readonly atRest: number;
  /** The same, stretched as far as is comfortable. */
  readonly has: number;
  readonly ticks: readonly Tick[];
  readonly needsWords: string;
  readonly hasWords: string;
  /** The whole drawing in a sentence. */
  readonly description: string;
}

/** Room right of the longest bar. */
const room = 1.04;

/**
 * The bars of a check; `undefined` where body or garment is not known.
 *
 * @param comfort 1 + the share of the stretch that is comfortable, of the pattern’s cloth
 */
export function drawCheck(check: Check, comfort: number): CheckDrawing | undefined {
  const { kind, place, bodyMm, needsMm, mostMm, hasMm, unit, says } = check;
  if (![bodyMm, needsMm, hasMm].every(Number.isFinite)) return undefined;
  const atRestMm = kind === "girth" ? hasMm / comfort : hasMm;
  const fullMm = Math.max(bodyMm, needsMm, mostMm ?? 0, hasMm) * room || 1;
  const at = (mm: number): number => Math.max(0, mm) / fullMm;
  const needsWords = neededWords(check);
  const hasWords = `has ${lengthWords(atRestMm, unit)}${
    hasMm > atRestMm + 0.01 ? `, stretched ${lengthWords(hasMm, unit)}` : ""
  }`;
  return {
    body:
      kind !== "opening" && Math.abs(needsMm - bodyMm) > 0.05
        ? { at: at(bodyMm), words: `body ${lengthWords(bodyMm, unit)}` }
        : undefined,
    needs: at(needsMm),
    most: mostMm === undefined ? undefined : at(mostMm),
    atRest: at(atRestMm),
    has: at(hasMm),
    ticks: ticksOf(fullMm, unit),
    needsWords,
    hasWords,
    description: `${place}: ${needsWords}, ${hasWords}; ${says}.`,
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
