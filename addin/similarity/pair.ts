import { toleranceMm } from "../measures/toleranceMm.ts";
import type { ComparedColumn } from "./columns.ts";

/*
 * How far two figures are apart: max |aᵢ − bᵢ| / tolᵢ over the measures that both have, with
 * tolᵢ = max(floor, percent · mean). At most 1 means “within tolerance everywhere”.
 */

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
 * The distance of two figures with its reasons. Of equally bad measures the first column is named.
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
    const difference = Math.abs(differenceMm(column, i, j));
    if (Number.isNaN(difference)) {
      if (column.required) lacking.push(column);
      continue;
    }
    compared++;
    const ofTolerance = difference === 0 ? 0 : roundDistance(difference / allowedMm(column, i, j));
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

function allowedMm({ column, tolerance }: ComparedColumn, i: number, j: number): number {
  return toleranceMm(tolerance, column.mm[i]!, column.mm[j]!);
}

/** Readings figure by figure, so that a pair is compared along two runs of memory. */
export interface Readings {
  readonly size: number;
  /** Number of columns. */
  readonly width: number;
  /** Reading of figure i in column c at i · width + c, in mm; NaN where it is missing. */
  readonly mm: Float64Array;
  /** By column. Never 0, so that two readings of 0 are no tolerances apart, not 0 / 0. */
  readonly floorMm: Float64Array;
  /** By column half of percent / 100, since it multiplies the sum of two readings. */
  readonly halfShare: Float64Array;
  readonly isRequired: readonly boolean[];
}

/** @param size number of figures */
export function readingsOf(columns: readonly ComparedColumn[], size: number): Readings {
  const width = columns.length;
  const mm = new Float64Array(size * width);
  columns.forEach(({ column }, c) => {
    for (let i = 0, at = c; i < size; i++, at += width) mm[at] = column.mm[i] ?? Number.NaN;
  });
  return {
    size,
    width,
    mm,
    floorMm: Float64Array.from(columns, ({ tolerance }) => Math.max(tolerance.floorMm, Number.EPSILON)),
    halfShare: Float64Array.from(columns, ({ tolerance }) => tolerance.percent / 200),
    isRequired: columns.map(({ required }) => required),
  };
}

/**
 * The distance alone, for work on many pairs: the same as that of `apart`.
 *
 * @param limit infinite instead once one measure is beyond this, whatever is missing
 */
export function distanceBetween(readings: Readings, i: number, j: number, limit = Infinity): number {
  const { width, mm, floorMm, halfShare, isRequired } = readings;
  let worst = 0;
  let compared = 0;
  let lacksRequired = false;
  for (let c = 0, atI = i * width, atJ = j * width; c < width; c++, atI++, atJ++) {
    const a = mm[atI]!;
    const b = mm[atJ]!;
    const difference = Math.abs(a - b);
    if (Number.isNaN(difference)) {
      lacksRequired ||= isRequired[c]!;
      continue;
    }
    compared++;
    const ofTolerance = difference / Math.max(floorMm[c]!, halfShare[c]! * (a + b));
    if (ofTolerance > worst) {
      worst = ofTolerance;
      if (!isWithin(worst, limit)) return Infinity;
    }
  }
  return isKnown(compared, width, lacksRequired) ? roundDistance(worst) : Number.NaN;
}

/**
 * Two figures count as compared when both have readings of at least this share of the measures. The project’s own
 * starting value.
 */
export const leastComparedShare = 0.5;

/**
 * True when the distance of two figures is known.
 *
 * @param compared number of measures that both figures have
 * @param of number of measures that were asked for
 * @param lacksRequired true when one has no reading of a required measure
 */
export function isKnown(compared: number, of: number, lacksRequired: boolean): boolean {
  return !lacksRequired && compared > 0 && compared >= of * leastComparedShare;
}

/** At this size neighbouring floating-point numbers are 2⁻³⁶ apart. */
const grid = 1.5 * 2 ** 16;

/**
 * A distance in tolerances to the nearest 2⁻³⁶ (about 0.000000000015; coarser above 32,768 tolerances). Readings such as
 * 4 7/8 in have no exact value in millimetres; with their noise rounded away, equal distances are equal, whatever the unit
 * and the order of columns, and a difference of exactly one tolerance is 1.
 */
export function roundDistance(distance: number): number {
  return distance + grid - grid;
}

/**
 * Readings such as 5 1/4 in have no exact value in millimetres, so a difference of exactly one tolerance may come
 * out a hair above it. This share of the reach is let pass.
 */
export const roundingShare = 1e-9;

/** True when a distance is at most `reach`. A distance that is not known (NaN) is not. */
export function isWithin(distance: number, reach: number): boolean {
  return distance <= reach + Math.abs(reach) * roundingShare;
}
