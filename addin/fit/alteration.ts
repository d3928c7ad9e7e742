import type { LengthUnit } from "../measures/units.ts";
import { lengthWords } from "../measures/lengthWords.ts";
import { isSewable } from "../measures/sewable.ts";

/** What to change on the pattern so that a check says yes. */
export interface Alteration {
  /** mm over the whole girth, length or opening; positive is more. */
  readonly totalMm: number;
  /** Cut edges that a girth is spread over, and mm on each. */
  readonly edges?: number;
  readonly perEdgeMm?: number;
  /** In words, with the amounts in the unit of the measure. */
  readonly words: string;
}

/** The change of a girth, in total and at each seam edge; undefined when it is too large to sew. */
export function girthAlteration(
  totalMm: number,
  garmentMm: number,
  edges: number,
  unit: LengthUnit,
): Alteration | undefined {
  if (!isSewable(totalMm, garmentMm)) return undefined;
  const perEdgeMm = totalMm / edges;
  const verb = totalMm > 0 ? "Let out" : "Take in";
  return {
    totalMm,
    edges,
    perEdgeMm,
    words: `${verb} ${size(totalMm, unit)} in all: ${size(perEdgeMm, unit)} at each of ${String(edges)} seam edges.`,
  };
}

export const lengthVerbs = { more: "Lengthen", less: "Shorten" } as const;
export const widthVerbs = { more: "Widen", less: "Narrow" } as const;

/** The change of a length or width; undefined when it is too large to sew. */
export function lengthAlteration(
  totalMm: number,
  garmentMm: number,
  verbs: typeof lengthVerbs | typeof widthVerbs,
  unit: LengthUnit,
): Alteration | undefined {
  if (!isSewable(totalMm, garmentMm)) return undefined;
  const verb = totalMm > 0 ? verbs.more : verbs.less;
  return { totalMm, words: `${verb} by ${size(totalMm, unit)}.` };
}

/**
 * The change of an opening.
 *
 * @param missingMm what the opening lacks when stretched
 * @param comfort what one mm of opening gives when stretched
 * @param otherwise the other way to do it, in words
 */
export function openingAlteration(
  missingMm: number,
  comfort: number,
  otherwise: string,
  unit: LengthUnit,
): Alteration {
  const totalMm = missingMm / comfort;
  return { totalMm, words: `Make the opening ${size(totalMm, unit)} larger, or ${otherwise}.` };
}

function size(mm: number, unit: LengthUnit): string {
  return lengthWords(Math.abs(mm), unit);
}
