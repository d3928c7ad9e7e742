import * as z from "zod/mini";
import { crc32 } from "./crc32.ts";

/** A workbook as it is kept: its text, with what is needed to trust it. */
const generation = z.object({
  format: z.literal(1),
  /** A name for this one save; a save is based on the one before it. */
  id: z.string(),
  /** The page that made it, from opening to closing. */
  session: z.string(),
  /** Milliseconds since 1970. */
  savedAt: z.number(),
  checksum: z.string(),
  text: z.string(),
});

export type Generation = z.infer<typeof generation>;

export function newGeneration(text: string, session: string): Generation {
  return { format: 1, id: randomName(), session, savedAt: Date.now(), checksum: crc32(text), text };
}

export function randomName(): string {
  return crypto.getRandomValues(new Uint32Array(4)).join("-");
}

/** What lies under a key, if it is whole; `undefined` when it is damaged. */
export function readGeneration(found: unknown): Generation | undefined {
  const { data } = generation.safeParse(found);
  return data && crc32(data.text) === data.checksum ? data : undefined;
}

/** The text of a damaged save as far as there is one, whatever was found. */
export function textOf(found: unknown): string {
  if (typeof found === "string") return found;
  if (typeof found === "object" && found !== null && "text" in found && typeof found.text === "string")
    return found.text;
  try {
    const text: unknown = JSON.stringify(found, (_, value: unknown) =>
      typeof value === "bigint" ? String(value) : value,
    );
    return typeof text === "string" ? text : String(found);
  } catch {
    return String(found);
  }
}
