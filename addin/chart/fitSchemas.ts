import { z } from "zod";
import { openingPlaces, wornOnParts, endPlaces, sleeveKinds, closures } from "./garmentTerms.ts";

/**
 * The tables Patterns, Ease rules and Garment classes as schemas. Everything inside takes its types from here; the readers
 * of the tables name the row and column of what is wrong themselves, so that the worksheet functions do without the
 * library.
 */
export const garmentClassSchema = z.object({
  name: z.string().min(1),
  /** Other names in the trade for the same class. */
  synonyms: z.array(z.string()).readonly(),
  wornOn: z.enum(wornOnParts),
  /** Cut edges at the seams that a girth is altered at: two side seams have four. */
  seamEdges: z.number().int().positive(),
  /** Openings that must be known before the garment can be said to go on. Others count where they are given. */
  openings: z.array(z.enum(openingPlaces)).readonly(),
  /** The sleeves that it usually has; undefined where that depends on the garment. */
  sleeve: z.enum(sleeveKinds).optional(),
  /** Where it usually ends; undefined where that depends on the garment. */
  endsAt: z.enum(endPlaces).optional(),
  /** The share of the body round which its lacing may stand open; undefined where its edges meet. */
  lacingGap: z.number().positive().optional(),
  /** What the class is, in words. */
  note: z.string(),
});

export const easeAmountSchema = z.object({
  /** percent of the body’s measure */
  percent: z.number(),
  /** mm, the same at every size */
  mm: z.number(),
});

export const easeRuleSchema = z.object({
  garmentClass: z.string().min(1),
  /** id of the dictionary */
  measure: z.string().min(1),
  /** The smallest ease that fits; undefined is no limit. */
  least: easeAmountSchema.optional(),
  /** The largest ease that fits; undefined is no limit. */
  most: easeAmountSchema.optional(),
  /** True when the verdict is not known without this measure. */
  required: z.boolean(),
  /** Where the values come from: published, or the project’s own. */
  source: z.string(),
});

const length = z.number().positive().optional();

export const patternSchema = z.object({
  /** How other rows name it. */
  code: z.string().min(1),
  title: z.string(),
  garmentClass: garmentClassSchema,
  /** Place in `chart.figures` of the figure that it was drafted for. */
  draftedFor: z.number().int().nonnegative().optional(),
  /** How far the cloth stretches, as a fraction (0.25 is 25 %). */
  stretch: z.number().min(0).max(2),
  /** mm of one layer of its cloth */
  thicknessMm: z.number().nonnegative(),
  /** Codes of the patterns worn directly under it. */
  wornOver: z.array(z.string()).readonly(),
  closure: z.enum(closures),
  /** mm; undefined when there is none, and for one of full length */
  closureMm: length,
  /** Girths of the openings in mm, not stretched, with closures shut. */
  neckMm: length,
  cuffMm: length,
  hemMm: length,
  waistMm: length,
  /** mm from the waist (skirts) or the back of the neck (tops, dresses, coats) to the hem */
  lengthMm: length,
  /** As the row says; undefined where it says nothing. */
  sleeve: z.enum(sleeveKinds).optional(),
  endsAt: z.enum(endPlaces).optional(),
  /** Finished girths and lengths in mm, by the dictionary’s id of the measure. A heel height may be 0. */
  finished: z.map(z.string(), z.number().nonnegative()),
});
