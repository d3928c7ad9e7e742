import type { Check } from "../../addin/fit/check.ts";
import type { Explanation } from "../../addin/fit/explainPair.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { isWearable } from "../../addin/fit/verdict.ts";

/** One thing to change on a pattern. */
export interface Change {
  readonly check: Check;
  /** What to do, in a sentence. */
  readonly words: string;
  /** mm with their sign in words: “+11.3 mm”; undefined where it cannot be altered. */
  readonly total: string | undefined;
  readonly perEdge: string | undefined;
  readonly edges: number | undefined;
}

/**
 * What stands in the way of a garment and can be changed on its pattern: the checks that count and say no, the way of
 * putting it on that comes nearest included. Checks that are not known are left to be measured first.
 */
export function changesOf({ checks }: Explanation): readonly Change[] {
  return checks.filter((check) => check.counts && needsChange(check)).map(changeOf);
}

/** True where a check says no; false where it says yes or cannot say. */
export function needsChange({ verdict }: Check): boolean {
  return !isWearable(verdict) && verdict !== "not known" && verdict !== "too close to call";
}

function changeOf(check: Check): Change {
  const { alteration, unit } = check;
  if (!alteration) {
    return {
      check,
      words: "That is more than a tenth of the garment: draft it anew for this figure.",
      total: undefined,
      perEdge: undefined,
      edges: undefined,
    };
  }
  const { words, totalMm, perEdgeMm, edges } = alteration;
  return {
    check,
    words,
    total: signed(totalMm, unit),
    perEdge: perEdgeMm === undefined ? undefined : signed(perEdgeMm, unit),
    edges,
  };
}

function signed(mm: number, unit: Check["unit"]): string {
  return mm > 0 ? `+${lengthWords(mm, unit)}` : lengthWords(mm, unit);
}
