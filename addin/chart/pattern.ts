import type { z } from "zod";
import type { patternSchema } from "./fitSchemas.ts";

/** One pattern: what the garment is, how it opens, and what it measures finished. */
export type Pattern = Readonly<Omit<z.infer<typeof patternSchema>, "finished">> & {
  readonly finished: ReadonlyMap<string, number>;
};

/** A row that cannot be used, in words that name row and column. */
export interface PatternProblem {
  /** Row within the range, from 0 (row 0 is the headings). */
  readonly row: number;
  /** The code in that row; "" when it has none. */
  readonly code: string;
  readonly message: string;
}

/** Patterns in the order of the table, and the rows that cannot be used. */
export interface PatternTable {
  readonly patterns: readonly Pattern[];
  readonly problems: readonly PatternProblem[];
}
