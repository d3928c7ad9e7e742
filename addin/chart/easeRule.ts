import { z } from "zod";

const amount = z.object({
  /** percent of the body’s measure */
  percent: z.number().finite(),
  /** mm, the same at every size */
  mm: z.number().finite(),
});

/** The wrist of a small figure and the hip of a large person: a rule must make sense on one of them. */
const bodiesMm = [10, 2000];

export const easeRuleSchema = z
  .object({
    garmentClass: z.string().min(1),
    /** id of the dictionary */
    measure: z.string().min(1),
    /** The smallest ease that fits; undefined is no limit. */
    least: amount.optional(),
    /** The largest ease that fits; undefined is no limit. */
    most: amount.optional(),
    /** True when the verdict is not known without this measure. */
    required: z.boolean(),
    /** Where the values come from: published, or the project’s own. */
    source: z.string(),
  })
  .refine(({ least, most }) => !least || !most || bodiesMm.some((body) => reaches(least, most, body)), {
    message: "the least ease is above the most ease",
  });

/** An amount of ease: percent / 100 · body + mm, so that one rule holds for small and for full size. */
export type EaseAmount = Readonly<z.infer<typeof amount>>;

/** How much larger than the body a class of garment is at one measure. */
export type EaseRule = Readonly<z.infer<typeof easeRuleSchema>>;

/** Ease in mm that an amount gives on a body; `none` where the amount is missing. */
export function easeMm(amountOf: EaseAmount | undefined, bodyMm: number, none: number): number {
  return amountOf ? (amountOf.percent / 100) * bodyMm + amountOf.mm : none;
}

function reaches(least: EaseAmount, most: EaseAmount, bodyMm: number): boolean {
  return easeMm(least, bodyMm, 0) <= easeMm(most, bodyMm, 0) + 1e-9;
}
