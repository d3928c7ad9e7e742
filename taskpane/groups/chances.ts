import { certainty, groupCertainty } from "../../addin/similarity/certainty/certainty.ts";
import type { Sharing } from "../../addin/similarity/certainty/sharing.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { Uncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

/** How sure a group is. */
export interface Sureness {
  /** That every two of its figures share, from 0 to 1. */
  readonly ofAll: number;
  readonly least: LeastSure | undefined;
}

/**
 * @param places where the figures of the group stand in the chart, from 0
 * @param sharing how the pairs of the chart come about
 */
export function sureness(
  columns: readonly ComparedColumn[],
  places: readonly number[],
  uncertainty: Uncertainty,
  sharing: Sharing,
): Sureness {
  return {
    ofAll: groupCertainty(columns, places, uncertainty, sharing),
    least: leastSure(columns, places, uncertainty, sharing),
  };
}

/** The two figures of a group of which it is least sure that they share. */
export interface LeastSure {
  /** From 0 to 1. */
  readonly probability: number;
  /** Places in the chart, from 0. */
  readonly pair: readonly [number, number];
  /** The measure that leaves most doubt; absent when there is none. */
  readonly doubt?: ComparedColumn;
}

/** The first of equals; `undefined` for a figure by itself, or when no pair is known. */
function leastSure(
  columns: readonly ComparedColumn[],
  places: readonly number[],
  uncertainty: Uncertainty,
  sharing: Sharing,
): LeastSure | undefined {
  let least: LeastSure | undefined;
  for (const [at, i] of places.entries()) {
    for (const j of places.slice(at + 1)) {
      const { probability, doubt } = certainty(columns, i, j, uncertainty, sharing);
      if (probability < (least?.probability ?? Infinity)) {
        least = { probability, pair: [i, j], ...(doubt && { doubt }) };
      }
    }
  }
  return least;
}
