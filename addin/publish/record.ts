import { z } from "zod";
import { verdicts } from "../fit/verdict.ts";
import type { Publication } from "./publication.ts";
import { publicationSchema } from "./publication.ts";
import type { PublicationAtWork } from "./published.ts";

/**
 * What was published on a day, as far as a later chart is compared with it. It stays with the maker: readings are kept as they
 * were measured, so that another rounding is not taken for another reading.
 */
export const publicationRecordSchema = z
  .object({
    /** The day of the maker, as 2026-11-12. */
    day: z.iso.date(),
    publication: publicationSchema,
    figures: z.array(z.string()).readonly(),
    /** Readings in mm, one a figure; null where nothing was published. */
    measures: z
      .array(z.object({ key: z.string(), term: z.string(), mm: z.array(z.number().nullable()).readonly() }))
      .readonly(),
    /** The rank of the verdict for each figure, see `verdicts`. */
    patterns: z
      .array(
        z.object({
          code: z.string(),
          ranks: z
            .array(
              z
                .int()
                .min(0)
                .max(verdicts.length - 1),
            )
            .readonly(),
        }),
      )
      .readonly(),
  })
  .refine(
    ({ figures, measures, patterns }) =>
      measures.every(({ mm }) => mm.length === figures.length) &&
      patterns.every(({ ranks }) => ranks.length === figures.length),
    { message: "Readings and verdicts do not go with the figures." },
  );
export type PublicationRecord = Readonly<z.infer<typeof publicationRecordSchema>>;

/** The last two publications that differ, the latest first: what changed can still be told after it has been published. */
export const publicationHistorySchema = z.array(publicationRecordSchema).max(2).readonly();
export type PublicationHistory = z.infer<typeof publicationHistorySchema>;

/**
 * What is published, for comparing it with what will be published later.
 *
 * @param publication as the maker has set it, where that is not what was published to the letter: without the day’s date
 */
export function recordOf(
  { published, measured }: Pick<PublicationAtWork, "published" | "measured">,
  day: string,
  publication: Publication = published.publication,
): PublicationRecord {
  return {
    ...{ day, publication },
    figures: published.figures,
    measures: published.columns.map(({ key, term }, at) => ({
      key,
      term,
      mm: Array.from(measured[at]?.mm ?? [], (mm) => (Number.isNaN(mm) ? null : Number(mm.toFixed(4)))),
    })),
    patterns: published.patterns.map(({ code, answers }) => ({
      code,
      ranks: answers.map(({ verdict }) => verdicts.indexOf(verdict)),
    })),
  };
}

/**
 * Characters of a record as JSON that a workbook is asked to keep: about 1,000 figures with 20 measures and 50 patterns. No limit
 * of Excel is documented for a setting; this one is the project’s own, so that a workbook does not grow by more than it holds.
 */
export const mostRecordCharacters = 300_000;

export function isTooLarge(record: PublicationRecord): boolean {
  return JSON.stringify(record).length > mostRecordCharacters;
}
