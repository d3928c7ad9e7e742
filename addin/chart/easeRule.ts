import type { z } from "zod";
import type { easeAmountSchema, easeRuleSchema } from "./fitSchemas.ts";

/** An amount of ease: percent / 100 · body + mm, so that one rule holds for small and for full size. */
export type EaseAmount = Readonly<z.infer<typeof easeAmountSchema>>;

/** How much larger than the body a class of garment is at one measure. */
export type EaseRule = Readonly<z.infer<typeof easeRuleSchema>>;

/** Ease in mm that an amount gives on a body; `none` where the amount is missing. */
export function easeMm(amountOf: EaseAmount | undefined, bodyMm: number, none: number): number {
  return amountOf ? (amountOf.percent / 100) * bodyMm + amountOf.mm : none;
}

/** The wrist of a small figure and the hip of a large person: a rule must make sense on one of them. */
const bodiesMm = [10, 2000];

/** True when the least ease is above the most on bodies of every size. */
export function isTurnedRound(least: EaseAmount | undefined, most: EaseAmount | undefined): boolean {
  if (!least || !most) return false;
  return bodiesMm.every((body) => easeMm(least, body, 0) > easeMm(most, body, 0) + 1e-9);
}
