import type { Chart } from "../chart/chart.ts";
import type { Certainty, Uncertainty } from "./certainty.ts";
import { certainty, usualUncertainty } from "./certainty.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { compareNames } from "./nameOrder.ts";

/** Two figures of which it is not sure whether they share a body, though all needed readings are there. */
export interface DoubtfulPair extends Certainty {
  readonly figure: string;
  readonly other: string;
}

/** A pair is in doubt when its probability lies between this and 1 less this. The project’s own starting value. */
export const surelyNot = 0.05;

/**
 * The pairs on the fence, the most doubtful first; of equal ones the first by name. The first figure of a pair is the first
 * by name.
 *
 * @param columns see `comparedColumns`
 */
export function onTheFence(
  chart: Chart,
  columns: readonly ComparedColumn[],
  uncertainty: Uncertainty = usualUncertainty,
): readonly DoubtfulPair[] {
  const order = chart.figures.map((_, i) => i).sort((i, j) => compareNames(chart, i, j));
  const pairs: DoubtfulPair[] = [];
  for (const [at, i] of order.entries()) {
    for (const j of order.slice(at + 1)) {
      const found = certainty(columns, i, j, uncertainty);
      if (found.probability > surelyNot && found.probability < 1 - surelyNot) {
        pairs.push({ figure: chart.figures[i]!, other: chart.figures[j]!, ...found });
      }
    }
  }
  return pairs.sort((a, b) => Math.abs(a.probability - 0.5) - Math.abs(b.probability - 0.5));
}
