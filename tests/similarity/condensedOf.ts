import type { Condensed } from "../../addin/similarity/matrix.ts";

/** Distances from the rows of the upper triangle: `[[d01, d02], [d12]]`. */
export function condensedOf(rows: readonly (readonly number[])[]): Condensed {
  return { size: rows.length + 1, values: Float64Array.from(rows.flat()) };
}

/** Seeded pseudo-random numbers from 0 to below 1 (mulberry32), so that a failure can be repeated. */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
