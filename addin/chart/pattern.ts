import { z } from "zod";
import type { GarmentClass } from "./garmentClass.ts";
import { garmentClassSchema } from "./garmentClass.ts";

export const closures = ["none", "neck", "side", "waist", "full length"] as const;
/** Where a garment opens: from the neck down, at the side, from the waist down, or down its whole length. */
export type Closure = (typeof closures)[number];

const length = z.number().positive().finite();

export const patternSchema = z.object({
  /** How other rows name it: its code. */
  code: z.string().min(1),
  title: z.string(),
  garmentClass: garmentClassSchema,
  /** Row of the figure it was drafted for, in `chart.figures`. */
  draftedFor: z.number().int().nonnegative().optional(),
  /** How far the cloth stretches, as a fraction (0.25 is 25 %). */
  stretch: z.number().min(0).max(2),
  /** mm of one layer of its cloth */
  thicknessMm: z.number().nonnegative(),
  /** Codes of the patterns worn directly under it. */
  wornOver: z.array(z.string()),
  closure: z.enum(closures),
  /** mm; undefined when there is none or its length is not known */
  closureMm: length.optional(),
  /** Girths of the openings in mm, not stretched, with closures shut. */
  neckMm: length.optional(),
  cuffMm: length.optional(),
  hemMm: length.optional(),
  waistMm: length.optional(),
  /** Finished girths and lengths in mm, by the dictionary’s id of the measure. A heel height may be 0. */
  finished: z.map(z.string(), z.number().nonnegative()),
});

/** One pattern: what the garment is, how it opens, and what it measures finished. */
export type Pattern = Readonly<
  Omit<z.infer<typeof patternSchema>, "garmentClass" | "finished" | "wornOver">
> & {
  readonly garmentClass: GarmentClass;
  readonly wornOver: readonly string[];
  readonly finished: ReadonlyMap<string, number>;
};

/** A row that cannot be used, in words that name row and column. */
export interface PatternProblem {
  /** Row within the range, from 0 (row 0 is the headings). */
  readonly row: number;
  /** The code in that row; "" when it has none. */
  readonly code: string;
  readonly message: string;
}

/** Patterns in the order of the table, and the rows that cannot be used. */
export interface PatternTable {
  readonly patterns: readonly Pattern[];
  readonly problems: readonly PatternProblem[];
}
