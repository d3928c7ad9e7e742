import type { Tolerance } from "../../../addin/measures/measure.ts";
import { certainty } from "../../../addin/similarity/certainty/certainty.ts";
import type { Sharing } from "../../../addin/similarity/certainty/sharing.ts";
import { seenOfPair, sharingOf } from "../../../addin/similarity/certainty/sharing.ts";
import type { SharingKind } from "./sharedBodies.ts";
import { sharedBodies } from "./sharedBodies.ts";
import { usualUncertainty } from "../../../addin/similarity/certainty/uncertainty.ts";

/** Pairs that were said to share with a probability from `from` to below `to`. */
export interface Said {
  readonly from: number;
  readonly to: number;
  pairs: number;
  /** How many of them do: their bodies, without the error of reading, are within tolerance in every measure. */
  share: number;
  /** Sum of what was said. */
  sum: number;
}

const tolerance: Tolerance = { floorMm: 2, percent: 2 };

/** Pairs so many standard deviations apart in some measure, more than three tolerances, are counted as said not to share, unasked. */
const farApart = 20;

/** What the sureness says of all pairs of invented charts beside what is true, in tenths. */
export function calibration(kind: SharingKind, seeds: readonly number[], known?: Sharing): readonly Said[] {
  const table = Array.from({ length: 10 }, (_, k) => ({
    ...{ from: k / 10, to: (k + 1) / 10, pairs: 0, share: 0, sum: 0 },
  }));
  for (const seed of seeds) {
    const { chart, bodies } = sharedBodies(kind, seed);
    const columns = chart.measures.map((column) => ({ column, tolerance, required: false }));
    const sharing = known ?? sharingOf(chart, columns, usualUncertainty);
    for (let i = 0; i < bodies.length; i++) {
      for (let j = i + 1; j < bodies.length; j++) {
        const { squares } = seenOfPair(columns, i, j, usualUncertainty);
        const isFar = squares.some((square) => square > farApart ** 2);
        const probability = isFar ? 0 : certainty(columns, i, j, usualUncertainty, sharing).probability;
        const said = table[Math.min(9, Math.floor(10 * probability))]!;
        said.pairs++;
        said.sum += probability;
        if (doShare(bodies[i]!, bodies[j]!)) said.share++;
      }
    }
  }
  return table;
}

/** Whether two bodies are within tolerance in every measure. */
export function doShare(one: readonly number[], other: readonly number[]): boolean {
  return one.every((a, c) => {
    const b = other[c]!;
    return Math.abs(a - b) <= Math.max(tolerance.floorMm, ((tolerance.percent / 100) * (a + b)) / 2);
  });
}
