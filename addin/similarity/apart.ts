import { toleranceMm } from "../measures/toleranceMm.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { isKnown } from "./known.ts";
import { roundDistance } from "./roundDistance.ts";

/** How far two figures are apart, and what that rests on. */
export interface Apart {
  /** The worst difference in tolerances, at most 1 for one shared body; NaN when it is not known. */
  readonly distance: number;
  /** Number of measures that both figures have. */
  readonly compared: number;
  /** Number of measures that were asked for. */
  readonly of: number;
  /** The measure of the worst difference among those compared; absent when none differs. */
  readonly worst?: ComparedColumn;
  /** The second figure’s reading of it less the first’s, in mm. */
  readonly deltaMm?: number;
  /** The measures without which the distance is not known; empty when it is, or when too few could be compared. */
  readonly lacking: readonly ComparedColumn[];
}

/**
 * The distance of two figures as in `toleranceDistances`, with its reasons. Of equally bad measures the first column
 * is named.
 *
 * @param columns see `comparedColumns`
 * @param i row of the first figure among the figures, from 0
 * @param j row of the second figure
 */
export function apart(columns: readonly ComparedColumn[], i: number, j: number): Apart {
  let compared = 0;
  let distance = 0;
  let worst: ComparedColumn | undefined;
  const lacking: ComparedColumn[] = [];
  for (const column of columns) {
    const delta = differenceMm(column, i, j);
    if (Number.isNaN(delta)) {
      if (column.required) lacking.push(column);
      continue;
    }
    compared++;
    const ofTolerance = shareOfTolerance(column, i, j);
    if (ofTolerance > distance) {
      distance = ofTolerance;
      worst = column;
    }
  }
  return {
    distance: isKnown(compared, columns.length, lacking.length > 0) ? distance : Number.NaN,
    compared,
    of: columns.length,
    ...(worst && { worst, deltaMm: differenceMm(worst, i, j) }),
    lacking,
  };
}

/** The second figure’s reading less the first’s, in mm; NaN when one is missing. */
function differenceMm({ column }: ComparedColumn, i: number, j: number): number {
  return (column.mm[j] ?? Number.NaN) - (column.mm[i] ?? Number.NaN);
}

/** How much of its tolerance the difference in one measure uses: 1 is all of it. NaN when a reading is missing. */
function shareOfTolerance(compared: ComparedColumn, i: number, j: number): number {
  const difference = Math.abs(differenceMm(compared, i, j));
  if (difference === 0) return 0;
  const { mm } = compared.column;
  return roundDistance(
    difference / toleranceMm(compared.tolerance, mm[i] ?? Number.NaN, mm[j] ?? Number.NaN),
  );
}
