import { z } from "zod";
import type { Generation } from "./generation.ts";
import { readGeneration } from "./generation.ts";

const word = z.object({ basedOn: z.string().optional(), generation: z.unknown() });

/**
 * A save that is written while the page goes away. The database answers too late for that, so it goes where a page
 * can write without waiting, and is taken over from there when the page opens next.
 */
export function lastWord(name: string) {
  const key = `${name}-last-word`;
  return {
    leave(generation: Generation, basedOn: string | undefined): void {
      try {
        localStorage.setItem(key, JSON.stringify({ basedOn, generation }));
      } catch {
        // No room: the save under way in the database has to do.
      }
    },
    /** What was left, if it is newer than what the database holds. It is forgotten either way. */
    take(kept: Generation | undefined): Generation | undefined {
      const text = readAndForget(key);
      const { data } = word.safeParse(parse(text));
      const left = readGeneration(data?.generation);
      if (!data || !left) return undefined;
      const follows = kept === undefined || data.basedOn === kept.id;
      const continues = kept?.session === left.session && left.savedAt > kept.savedAt;
      return follows || continues ? left : undefined;
    },
  };
}

function readAndForget(key: string): string {
  try {
    const text = localStorage.getItem(key) ?? "";
    localStorage.removeItem(key);
    return text;
  } catch {
    return "";
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
