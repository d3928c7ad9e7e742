import * as z from "zod/mini";
import type { Book } from "./books.ts";
import { readBook } from "./books.ts";
import type { Generation } from "./generation.ts";
import { readGeneration } from "./generation.ts";

const word = z.object({
  book: z.optional(z.unknown()),
  basedOn: z.optional(z.string()),
  generation: z.unknown(),
});

export interface LastWord {
  /** Missing where it was left before the page kept books. */
  readonly book: Book | undefined;
  readonly basedOn: string | undefined;
  readonly generation: Generation;
  forget(): void;
}

/**
 * Saves that are written while the page goes away. The database answers too late for that, so they go where a page
 * can write without waiting, one a book, and are taken over from there when the page opens next.
 */
export function lastWords(name: string) {
  const prefix = `${name}-last-word`;
  return {
    leave({ book, basedOn, generation }: Omit<LastWord, "forget">): void {
      try {
        const kept = book && { ...book, versions: [] };
        localStorage.setItem(
          `${prefix} ${book?.id ?? ""}`,
          JSON.stringify({ book: kept, basedOn, generation }),
        );
      } catch {
        // No room: the save under way in the database has to do.
      }
    },
    /** What was left. What is damaged is forgotten. */
    all(): LastWord[] {
      return keysWith(prefix).flatMap((key) => {
        const forget = (): void => {
          try {
            localStorage.removeItem(key);
          } catch {
            // What cannot be written cannot be read again either.
          }
        };
        const { data } = word.safeParse(parse(read(key)));
        const generation = readGeneration(data?.generation);
        if (data && generation)
          return [{ book: readBook(data.book), basedOn: data.basedOn, generation, forget }];
        forget();
        return [];
      });
    },
  };
}

function keysWith(prefix: string): string[] {
  try {
    return Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "").filter((key) =>
      key.startsWith(prefix),
    );
  } catch {
    return [];
  }
}

function read(key: string): string {
  try {
    return localStorage.getItem(key) ?? "";
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
