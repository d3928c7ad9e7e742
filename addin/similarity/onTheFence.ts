import type { Chart } from "../chart/chart.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import type { Certainty, Uncertainty } from "./certainty.ts";
import { certainty, usualUncertainty } from "./certainty.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { compareNames } from "./nameOrder.ts";

/** Two figures of which it is not sure whether they share a body, though all needed readings are there. */
export interface DoubtfulPair extends Certainty {
  readonly figure: string;
  readonly other: string;
  /** Where the two stand in the chart, from 0. */
  readonly places: readonly [number, number];
}

/** A pair is in doubt when its probability lies between this and 1 less this. The project’s own starting value. */
export const surelyNot = 0.05;
/** Φ(−1.644854) = 0.05: with the limit so many uncertainties short of a difference, it is within it as seldom as that. */
const surelyNotZ = 1.644854;

/**
 * The pairs on the fence, the most doubtful first; of equal ones the first by name. The first figure of a pair is the first
 * by name. Pairs that are too far apart in one measure are passed over before probabilities are worked out.
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
      if (isSurelyNot(columns, i, j, uncertainty)) continue;
      const found = certainty(columns, i, j, uncertainty);
      if (found.probability > surelyNot && found.probability < 1 - surelyNot) {
        pairs.push({ figure: chart.figures[i]!, other: chart.figures[j]!, places: [i, j], ...found });
      }
    }
  }
  return pairs.sort((a, b) => Math.abs(a.probability - 0.5) - Math.abs(b.probability - 0.5));
}

/** True when one measure alone makes it less probable than `surelyNot`: P(|X| ≤ tol) ≤ Φ((tol − |δ|) / u). */
function isSurelyNot(
  columns: readonly ComparedColumn[],
  i: number,
  j: number,
  uncertainty: Uncertainty,
): boolean {
  for (const compared of columns) {
    const a = compared.column.mm[i]!;
    const b = compared.column.mm[j]!;
    const beyond = Math.abs(a - b) - toleranceMm(compared.tolerance, a, b);
    if (!(beyond > 0)) continue;
    const ofA = uncertainty(compared, a);
    const ofB = uncertainty(compared, b);
    if (beyond * beyond > surelyNotZ * surelyNotZ * (ofA * ofA + ofB * ofB)) return true;
  }
  return false;
}
