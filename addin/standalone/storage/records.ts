/** Parts of the place where the page keeps things. `workbooks` holds what earlier versions of the page kept. */
export const parts = ["books", "versions", "aside", "workbooks"] as const;

export type Part = (typeof parts)[number];

/** One step that is done as a whole or not at all. */
export interface Step {
  get(part: Part, key: string): Promise<unknown>;
  put(part: Part, key: string, value: unknown): void;
  delete(part: Part, key: string): void;
}

/** Named records, as the browser’s database holds them. What is read is not trusted: it is checked by whoever reads. */
export interface Records {
  /** False where nothing outlives the page, for example in a private window. */
  readonly keeps: boolean;
  keys(part: Part): Promise<readonly string[]>;
  get(part: Part, key: string): Promise<unknown>;
  /**
   * @throws {StorageError} when it was not done; then nothing of it was
   */
  write<T>(work: (step: Step) => Promise<T>): Promise<T>;
}

/** Why something could not be kept or read, in words for the page. */
export class StorageError extends Error {
  override readonly name = "StorageError";

  constructor(
    readonly reason: "full" | "other tab" | "silent" | "failed",
    message: string,
  ) {
    super(message);
  }
}

/** Stands in where the browser keeps nothing: books can be gone back to as long as the page is open. */
export function memoryRecords(): Records {
  const held = new Map<Part, Map<string, unknown>>(parts.map((part) => [part, new Map<string, unknown>()]));
  const of = (part: Part): Map<string, unknown> => held.get(part) ?? new Map<string, unknown>();
  return {
    keeps: false,
    keys: (part) => Promise.resolve([...of(part).keys()].sort()),
    get: (part, key) => Promise.resolve(of(part).get(key)),
    write: (work) =>
      work({
        get: (part, key) => Promise.resolve(of(part).get(key)),
        put: (part, key, value) => void of(part).set(key, value),
        delete: (part, key) => void of(part).delete(key),
      }),
  };
}
