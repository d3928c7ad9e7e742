import * as z from "zod/mini";

/** One save of a book: where it lies, and how large it is in characters. */
const version = z.object({
  id: z.string(),
  session: z.string(),
  savedAt: z.number(),
  size: z.number(),
});

const book = z.object({
  format: z.literal(1),
  id: z.string(),
  name: z.string(),
  /** Milliseconds since 1970, as are all times. */
  openedAt: z.number(),
  deletedAt: z.optional(z.number()),
  /** Newest first. */
  versions: z.array(version),
});

export type Version = z.infer<typeof version>;
export type Book = z.infer<typeof book>;

export function readBook(found: unknown): Book | undefined {
  return book.safeParse(found).data;
}

export const longestName = 80;

/**
 * A name as it was meant: one line, without spaces around it; `undefined` where nothing is left of it.
 */
export function tidyName(typed: string): string | undefined {
  const name = typed
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, " ")
    .trim()
    .slice(0, longestName)
    .trim();
  return name === "" ? undefined : name;
}

/** The name itself, or with the first number that makes it one of its own. */
export function nameAmong(names: readonly string[], wanted: string): string {
  const taken = new Set(names.map((name) => name.toLowerCase()));
  if (!taken.has(wanted.toLowerCase())) return wanted;
  for (let n = 2; ; n++) {
    const name = `${wanted} ${String(n)}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

/** How far apart saves may lie that are kept, by their age. */
const spacing = [
  { until: hour, apart: 10 * minute },
  { until: day, apart: hour },
  { until: 30 * day, apart: day },
] as const;

/** Characters that the saves of one book may take. */
const roomOfBook = 20_000_000;

const alwaysKept = 2;

/**
 * The saves worth keeping, newest first as they are given: the last two; then the last of every ten minutes of an hour,
 * of every hour of a day, of every day of a month, as far as there is room.
 */
export function worthKeeping(
  versions: readonly Version[],
  now: number,
  room: number = roomOfBook,
): readonly Version[] {
  const slots = new Set<string>();
  let taken = 0;
  return versions.filter(({ savedAt, size }, i) => {
    if (i >= alwaysKept) {
      const apart = spacing.find(({ until }) => now - savedAt < until)?.apart;
      if (apart === undefined || taken + size > room) return false;
      const slot = `${String(apart)} ${String(Math.floor(savedAt / apart))}`;
      if (slots.has(slot)) return false;
      slots.add(slot);
    }
    taken += size;
    return true;
  });
}

/** Deleted books can be brought back for so long. */
export const keptAfterDeleting = 30 * day;
