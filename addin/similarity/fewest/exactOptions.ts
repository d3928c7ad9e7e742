import type { ProvingSolver } from "./provingSolver.ts";

/** How long and by what means an exact answer is looked for. */
export interface ExactOptions<Found> {
  /** Without one, a search of our own is used, which is proved for small charts only. */
  readonly solver?: ProvingSolver;
  /** Milliseconds left before the work must end; without it, only steps are counted, so that results are repeatable. */
  readonly leftMs?: () => number;
  /** Called with every better answer or bound, the first answer first. */
  readonly onProgress?: (found: Found) => void;
}

/** In larger sets that hang together, a step of the search takes too long: the first answer stays. */
export const mostSearched = 1000;

/** Smaller sets are solved so fast that it is not worth telling of them one by one. */
export const leastReported = 50;
