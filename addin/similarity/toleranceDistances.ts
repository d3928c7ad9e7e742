import { toleranceMm } from "../measures/toleranceMm.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { createCondensed, forEachRow, pairIndex } from "./condensed.ts";
import { isKnown } from "./known.ts";
import { canBeScaled, lanes, pairedRows } from "./pairedColumns.ts";
import { roundDistance } from "./roundDistance.ts";
import type { Fill } from "./vectorRows.ts";
import { vectorRows } from "./vectorRows.ts";

/**
 * The worst difference of each pair of figures, in tolerances: max |aᵢ − bᵢ| / tolᵢ with
 * tolᵢ = max(floor, percent · mean). At most 1 means “within tolerance everywhere”. Rounded as `roundDistance` says.
 *
 * Measures missing on either side are left out. A pair is not known (NaN) when a required measure is missing or less
 * than `leastComparedShare` of the measures could be compared.
 *
 * @param columns see `comparedColumns`
 * @param size number of figures
 * @throws {InputError} when there are too many figures
 */
export function toleranceDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const distances = createCondensed(size);
  filler(columns, size)(distances);
  mendGaps(distances, columns);
  return distances;
}

/** The fastest way that these columns and this machine allow. */
function filler(columns: readonly ComparedColumn[], size: number): Fill {
  if (!canBeScaled(columns)) {
    const readings = packed(columns, size);
    return (distances) => {
      forEachRow(size, (i, start) => {
        fillRelative(i, start, distances, readings);
      });
    };
  }
  return vectorRows(columns, size) ?? pairedRows(columns, size);
}

/** Readings, column by column, with room behind each column for reading whole lanes. */
interface Packed {
  readonly mm: Float64Array;
  readonly stride: number;
  readonly end: number;
  readonly floorMm: Float64Array;
  /** Half of percent / 100, since it multiplies the sum of two readings. */
  readonly halfShare: Float64Array;
}

function packed(columns: readonly ComparedColumn[], size: number): Packed {
  const stride = size + lanes;
  const mm = new Float64Array(columns.length * stride);
  columns.forEach(({ column }, c) => mm.set(column.mm.subarray(0, size), c * stride));
  // Never 0, so that two readings of 0 are no tolerances apart, not 0 / 0.
  const floorMm = Float64Array.from(columns, ({ tolerance }) => Math.max(tolerance.floorMm, Number.EPSILON));
  return {
    mm,
    stride,
    end: mm.length,
    floorMm,
    halfShare: Float64Array.from(columns, ({ tolerance }) => tolerance.percent / 200),
  };
}

/**
 * Writes the distances of figure i to each later one, from `start` on; see `pairedRows`. Here the worst so far is kept by
 * max(w, |p|) = (|w + p| + |w − p|) / 2. What a row writes behind its end is overwritten by the next row, and falls away
 * behind the last.
 */
function fillRelative(
  i: number,
  start: number,
  { size, values }: Condensed,
  { mm, stride, end, floorMm, halfShare }: Packed,
): void {
  for (let j = i + 1, at = start; j < size; j += lanes, at += lanes) {
    let w0 = 0;
    let w1 = 0;
    let w2 = 0;
    let w3 = 0;
    for (let c = 0, atI = i, atJ = j; atJ < end; c++, atI += stride, atJ += stride) {
      const a = mm[atI]!;
      const floor = floorMm[c]!;
      const share = halfShare[c]!;
      const p0 = ofTolerance(a, mm[atJ]!, floor, share);
      const p1 = ofTolerance(a, mm[atJ + 1]!, floor, share);
      const p2 = ofTolerance(a, mm[atJ + 2]!, floor, share);
      const p3 = ofTolerance(a, mm[atJ + 3]!, floor, share);
      w0 = 0.5 * (Math.abs(w0 + p0) + Math.abs(w0 - p0));
      w1 = 0.5 * (Math.abs(w1 + p1) + Math.abs(w1 - p1));
      w2 = 0.5 * (Math.abs(w2 + p2) + Math.abs(w2 - p2));
      w3 = 0.5 * (Math.abs(w3 + p3) + Math.abs(w3 - p3));
    }
    values[at] = roundDistance(w0);
    values[at + 1] = roundDistance(w1);
    values[at + 2] = roundDistance(w2);
    values[at + 3] = roundDistance(w3);
  }
}

/** The difference in tolerances, with its sign; the tolerance as the greater of two without a branch. */
function ofTolerance(a: number, b: number, floor: number, halfShare: number): number {
  const relative = halfShare * (a + b);
  return (b - a) / (0.5 * (relative + floor + Math.abs(relative - floor)));
}

/** Pairs in which a figure lacks a reading, one by one. */
function mendGaps({ size, values }: Condensed, columns: readonly ComparedColumn[]): void {
  const hasGap = Array.from(
    { length: size },
    (_, i) => columns.length === 0 || columns.some(({ column }) => Number.isNaN(column.mm[i] ?? Number.NaN)),
  );
  hasGap.forEach((isGap, i) => {
    if (!isGap) return;
    for (let j = 0; j < size; j++) {
      const isDone = j === i || (j < i && hasGap[j]);
      if (!isDone) values[pairIndex(size, i, j)] = distanceOf(columns, i, j);
    }
  });
}

/** One distance, when readings may be missing. */
function distanceOf(columns: readonly ComparedColumn[], i: number, j: number): number {
  let worst = 0;
  let compared = 0;
  let lacksRequired = false;
  for (const { column, tolerance, required } of columns) {
    const a = column.mm[i]!;
    const b = column.mm[j]!;
    const difference = Math.abs(a - b);
    if (Number.isNaN(difference)) {
      lacksRequired ||= required;
      continue;
    }
    compared++;
    if (difference > 0) worst = Math.max(worst, difference / toleranceMm(tolerance, a, b));
  }
  return isKnown(compared, columns.length, lacksRequired) ? roundDistance(worst) : Number.NaN;
}
