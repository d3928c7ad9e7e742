import { afterPublishing, changesBetween } from "../../addin/publish/changes.ts";
import type { PublicationAtWork } from "../../addin/publish/published.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import type { PublicationHistory } from "../../addin/publish/record.ts";
import { isTooLarge, publicationHistorySchema, recordOf } from "../../addin/publish/record.ts";
import type { Workbook } from "../../addin/workbook/port.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { Since } from "./sinceWords.ts";
import { historyKey } from "./sinceWords.ts";

type Memory = Pick<Workbook, "preference" | "setPreference">;

/**
 * What the workbook remembers to have been published, the latest first.
 *
 * @throws {InputError} when it cannot be read
 */
export async function readHistory(workbook: Memory): Promise<PublicationHistory> {
  const kept = await workbook.preference(historyKey);
  if (kept === undefined) return [];
  const read = publicationHistorySchema.safeParse(kept);
  if (read.success) return read.data;
  throw new InputError(
    "What this workbook remembers of the last publication cannot be read, so what changed since cannot be told. It is remembered anew when you save the page or the PDF.",
  );
}

/**
 * Makes the workbook remember that something was published. What is too large is not remembered, nor is what went before it:
 * that is no longer what buyers have.
 *
 * @param day the maker’s, as 2026-11-12
 * @returns what has to be said about it; "" where it is remembered
 */
export async function rememberPublished(
  workbook: Memory,
  work: Pick<PublicationAtWork, "published" | "measured">,
  day: string,
  publication?: Publication,
): Promise<string> {
  const record = recordOf(work, day, publication);
  if (isTooLarge(record)) {
    await workbook.setPreference(historyKey, undefined);
    return "It is too large for the workbook to remember, so what changes after today cannot be told.";
  }
  const history = await readHistory(workbook).catch(() => []);
  await workbook.setPreference(historyKey, afterPublishing(history, record));
  return "";
}

/** What changed since the last publication; undefined where there was none. */
export function sinceLast(
  [last, before]: PublicationHistory,
  work: Pick<PublicationAtWork, "published" | "measured">,
): Since | undefined {
  if (!last) return undefined;
  return {
    day: last.day,
    changes: changesBetween(last, recordOf(work, last.day)),
    before: before && { day: before.day, changes: changesBetween(before, last) },
  };
}
