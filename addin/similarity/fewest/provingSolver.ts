import { fewestByCover, leastAlteration } from "./coverBases.ts";
import { fewestCliques } from "./coverGroups.ts";
import type { Solver } from "./solver.ts";

/** A solver with the proofs that rest on one. Handed in whole, so that worksheet functions, which have none, carry none of it. */
export interface ProvingSolver extends Solver {
  readonly fewestCliques: typeof fewestCliques;
  readonly fewestByCover: typeof fewestByCover;
  readonly leastAlteration: typeof leastAlteration;
}

export function proving(solver: Solver): ProvingSolver {
  return { ...solver, fewestCliques, fewestByCover, leastAlteration };
}
