import * as z from "zod/mini";
import type { Workbook } from "../../addin/workbook/port.ts";
import type { Rounds } from "./rounds.ts";

/**
 * What a session of measuring has come to before it is written, and what it is kept with. It stands among the preferences of the
 * workbook, where Publish keeps what it remembers: in both hosts it is there again when the pane is opened the next time.
 */
const draftSchema = z.object({
  figure: z.string(),
  /** The day of the last reading, as 2026-11-12. */
  day: z.string().check(z.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/u)),
  /** mm by the key of the column, a round each. */
  rounds: z.array(z.record(z.string(), z.number().check(z.nonnegative()))),
});

const measuringSchema = z.object({
  by: z.string(),
  tool: z.string(),
  keeps: z.boolean(),
  table: z.optional(z.string()),
  draft: z.optional(draftSchema),
});

export interface Draft {
  readonly figure: string;
  readonly day: string;
  readonly rounds: Rounds;
}

/** What is remembered of measuring. */
export interface Remembered {
  readonly by: string;
  readonly tool: string;
  /** True where every reading is kept in the table Readings. */
  readonly keeps: boolean;
  /** The table that is measured into, where somebody chose it among several charts. */
  readonly table?: string | undefined;
  readonly draft?: Draft | undefined;
}

export const nothingRemembered: Remembered = { by: "", tool: "", keeps: true };

const key = "measuring";

type Memory = Pick<Workbook, "preference" | "setPreference">;

/** What cannot be read is as if it were not there: a draft of another version is no reason to stop measuring. */
export async function readRemembered(workbook: Memory): Promise<Remembered> {
  const read = measuringSchema.safeParse(await workbook.preference(key));
  if (!read.success) return nothingRemembered;
  const { draft } = read.data;
  return { ...read.data, draft: draft && hasReadings(draft) ? draft : undefined };
}

export function remember(workbook: Memory, remembered: Remembered): Promise<void> {
  const { draft } = remembered;
  return workbook.setPreference(key, {
    ...remembered,
    draft: draft && hasReadings(draft) ? draft : undefined,
  });
}

/** How many readings there are in a draft. */
export function readingsIn({ rounds }: Pick<Draft, "rounds">): number {
  return rounds.reduce((sum, taken) => sum + Object.keys(taken).length, 0);
}

function hasReadings(draft: Pick<Draft, "rounds">): boolean {
  return readingsIn(draft) > 0;
}
