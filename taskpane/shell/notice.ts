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
  return `Something went wrong that should not have. Nothing was changed. It said: ${messageOf(error)}`;
}

/** Of an action that was done, and could only not be shown: what was written is there. */
export function notShown(done: string, error: unknown): Notice {
  return { kind: "done", text: `${done} It could not be shown: ${messageOf(error)}` };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
