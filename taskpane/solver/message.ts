import type { ExactAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import type { Solved } from "./task.ts";

/** What the worker tells the page. */
export type SolverMessage =
  | { readonly kind: "progress"; readonly answer: ExactAnswer }
  | { readonly kind: "done"; readonly solved: Solved }
  /** `isInput`: the message is for the user, who can mend it. */
  | { readonly kind: "failed"; readonly message: string; readonly isInput: boolean };
