import * as z from "zod/mini";

const mark = z.object({ id: z.string(), times: z.number() });

const key = "measure-book-opening";

/** So many openings of a save that never came to an end are enough. */
const enough = 2;

/**
 * Notes which save is being opened: one that makes the page stop or the browser end it would otherwise be opened again
 * at every visit. Where the browser keeps nothing, nothing is noted.
 */
export const unfinished = {
  /** Whether the last openings of that save did not come to an end. */
  isToBeLeft(id: string): boolean {
    const found = read();
    return found?.id === id && found.times >= enough;
  },
  begin(id: string): void {
    const found = read();
    write({ id, times: found?.id === id ? found.times + 1 : 1 });
  },
  /** It was opened, or failed with a word, or the user went away. */
  end(): void {
    write(undefined);
  },
};

function read(): z.infer<typeof mark> | undefined {
  try {
    return mark.safeParse(JSON.parse(localStorage.getItem(key) ?? "null")).data;
  } catch {
    return undefined;
  }
}

function write(value: z.infer<typeof mark> | undefined): void {
  try {
    if (value) localStorage.setItem(key, JSON.stringify(value));
    else localStorage.removeItem(key);
  } catch {
    // Without it, the save is opened as usual.
  }
}
