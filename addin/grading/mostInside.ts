import type { Tolerance } from "../measures/measure.ts";
import { printableFactor } from "./printSetting.ts";
import type { Scales } from "./printSetting.ts";

/** One measure that a print has to meet. */
export interface Aim {
  /** On the pattern before printing, above 0, in mm. */
  readonly baseMm: number;
  /** Wanted, above 0, in mm. */
  readonly targetMm: number;
  readonly tolerance: Tolerance;
}

/** Readings in inches have binary dust: two measures that meet at one scale exactly must not miss each other by it. */
const dust = 5e-10;

/**
 * The scales at which a measure is printed within so many tolerances: from |target − printed| ≤ times · max(floor, share ·
 * (printed + target) / 2), solved for the printed length.
 *
 * @param times 1 for the tolerance itself
 */
export function scalesWithin({ baseMm, targetMm, tolerance }: Aim, times = 1): Scales {
  const floorMm = times * (1 + dust) * tolerance.floorMm;
  const half = (times * (1 + dust) * tolerance.percent) / 200;
  const leastMm = Math.min(targetMm - floorMm, (targetMm * (1 - half)) / (1 + half));
  const mostMm = half < 1 ? Math.max(targetMm + floorMm, (targetMm * (1 + half)) / (1 - half)) : Infinity;
  return { least: leastMm / baseMm, most: mostMm / baseMm };
}

/**
 * The scale from 50 to 200 % at which most measures are printed within tolerance, exactly. Each measure has its scales from a
 * least to a most; the scale that most of them share begins where one of them begins, so that it is enough to ask at each
 * beginning. Where several sets of measures are as large, the one that leaves the others least far out (in tolerances) is
 * taken, then the one nearest to 100 %. Within the scales that a set shares, the worst of the set is made least.
 *
 * Where no measure can be met from 50 to 200 %, the scale that makes the worst least, whatever it is.
 *
 * Source: the point that lies in most of some intervals, found by a sweep over their ends, is a textbook exercise; that the
 * worst is least where two limits meet is linear programming in one unknown.
 *
 * @returns NaN without aims
 */
export function mostInside(aims: readonly Aim[]): number {
  const within = aims.map((aim) => clipped(scalesWithin(aim)));
  const possible = within.filter(isPossible);
  if (possible.length === 0) return aims.length === 0 ? Number.NaN : leastWorst(aims);
  const sets = [...new Set(possible.map(({ least }) => least))].map((at) =>
    aims.filter((_, i) => within[i]!.least <= at && at <= within[i]!.most),
  );
  const most = Math.max(...sets.map(({ length }) => length));
  const scales = sets
    .filter(({ length }) => length === most)
    .map((set) => {
      const shared = set.map((aim) => clipped(scalesWithin(aim)));
      const least = Math.max(...shared.map((each) => each.least));
      const factor = Math.max(least, Math.min(leastWorst(set), ...shared.map((each) => each.most)));
      return { factor, worst: Math.max(...aims.map((aim) => timesOut(aim, factor))) };
    });
  scales.sort(
    (a, b) =>
      a.worst - b.worst || Math.abs(Math.log(a.factor)) - Math.abs(Math.log(b.factor)) || a.factor - b.factor,
  );
  return scales[0]!.factor;
}

function clipped({ least, most }: Scales): Scales {
  return { least: Math.max(least, printableFactor.least), most: Math.min(most, printableFactor.most) };
}

function isPossible({ least, most }: Scales): boolean {
  return least <= most;
}

/** How many tolerances a measure is out at a scale. */
function timesOut({ baseMm, targetMm, tolerance }: Aim, factor: number): number {
  const printedMm = baseMm * factor;
  const allowedMm = Math.max(tolerance.floorMm, (tolerance.percent / 200) * (printedMm + targetMm));
  return Math.abs(targetMm - printedMm) / allowedMm;
}

/** Halvings that bring the number of tolerances to the last digit of a double. */
const halvings = 60;

/** The scale that makes the worst of some measures least, in tolerances: where the least and the most scales of two meet. */
function leastWorst(aims: readonly Aim[]): number {
  const shared = (times: number): Scales => {
    const each = aims.map((aim) => scalesWithin(aim, times));
    return {
      least: Math.max(...each.map(({ least }) => least)),
      most: Math.min(...each.map(({ most }) => most)),
    };
  };
  let enough = 1;
  while (!isPossible(shared(enough))) enough *= 2;
  let tooFew = 0;
  for (let halving = 0; halving < halvings; halving++) {
    const times = (tooFew + enough) / 2;
    if (isPossible(shared(times))) enough = times;
    else tooFew = times;
  }
  const { least, most } = shared(enough);
  return (least + most) / 2;
}
