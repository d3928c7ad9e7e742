import { InputError } from "../../addin/measures/inputError.ts";

/** What the pane has to say after an action. */
export interface Notice {
  readonly kind: "done" | "failed";
  readonly text: string;
  /** Further lines: what was read, what was left out. */
  readonly more?: readonly string[];
}

/** What went wrong, in words. Only an `InputError` is worded for the reader; anything else is said to be our fault. */
export function failureText(error: unknown): string {
  if (error instanceof InputError) return error.message;
  const detail = error instanceof Error ? error.message : String(error);
  return `Something went wrong that should not have. Nothing was changed. It said: ${detail}`;
}
