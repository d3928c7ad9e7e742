import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { forEachRow } from "./condensed.ts";
import { roundDistance } from "./roundDistance.ts";
import type { Fill } from "./vectorRows.ts";

/**
 * Readings in tolerances, two columns at a time, as their sum u and difference v: the worse of two differences is
 * max(|Δa|, |Δb|) = (|Δu| + |Δv|) / 2. So two columns cost what one would.
 */
interface PairedColumns {
  /** The sums of the first two columns, their differences, the sums of the next two …, each `stride` long. */
  readonly readings: Float64Array;
  /** Number of figures, and room behind for reading whole lanes. */
  readonly stride: number;
}

/** Figures are compared with this many others at once. */
export const lanes = 4;

/** Sums of readings below so many tolerances keep their differences exact enough for `roundDistance`. */
const mostTolerances = 2 ** 13;

/** The scales of more pairs would leave the range of numbers. */
const mostColumns = 1000;

/**
 * True when readings can be divided by the tolerance before they are compared: none is in percent, and there are not
 * thousands of tolerances in a reading, so that nothing is lost.
 */
export function canBeScaled(columns: readonly ComparedColumn[]): boolean {
  return columns.length <= mostColumns && columns.every(isScalable);
}

/** Distances by columns that `canBeScaled`. A missing reading makes the pair NaN. */
export function pairedRows(columns: readonly ComparedColumn[], size: number): Fill {
  const paired = pairColumns(columns, size);
  return (distances) => {
    forEachRow(size, (i, start) => {
      fillPaired(i, start, distances, paired);
    });
  };
}

function pairColumns(columns: readonly ComparedColumn[], size: number): PairedColumns {
  const pairs = Math.ceil(columns.length / 2);
  const stride = size + lanes;
  const readings = new Float64Array(2 * pairs * stride);
  for (let pair = 0; pair < pairs; pair++) {
    // Each step of `fillPaired` doubles what came before; powers of two make up for it without rounding.
    const scale = 2 ** (pair - pairs - 1);
    const a = columns[2 * pair]!;
    const b = columns[2 * pair + 1];
    const perA = scale / a.tolerance.floorMm;
    const perB = b ? scale / b.tolerance.floorMm : 0;
    for (let i = 0, at = 2 * pair * stride; i < size; i++, at++) {
      const x = a.column.mm[i]! * perA;
      const y = b ? b.column.mm[i]! * perB : 0;
      readings[at] = x + y;
      readings[at + stride] = x - y;
    }
  }
  return { readings, stride };
}

function isScalable({ column, tolerance }: ComparedColumn): boolean {
  const most = tolerance.floorMm * mostTolerances;
  // A missing reading (NaN) is not too great.
  return tolerance.percent === 0 && tolerance.floorMm > 0 && !column.mm.some((mm) => Math.abs(mm) > most);
}

/**
 * Writes the distances of figure i to each later one, from `start` on. Written for speed: the worst so far is kept without
 * a branch, which processors cannot foresee here, by 2 max(w, m) = w + m + |w − m|. Up to three values behind the row are
 * overwritten.
 */
function fillPaired(
  i: number,
  start: number,
  { size, values }: Condensed,
  { readings, stride }: PairedColumns,
): void {
  for (let j = i + 1, at = start; j < size; j += lanes, at += lanes) {
    let w0 = 0;
    let w1 = 0;
    let w2 = 0;
    let w3 = 0;
    for (let atI = i, atU = j; atU < readings.length; atI += 2 * stride, atU += 2 * stride) {
      const u = readings[atI]!;
      const v = readings[atI + stride]!;
      const atV = atU + stride;
      const m0 = Math.abs(readings[atU]! - u) + Math.abs(readings[atV]! - v);
      const m1 = Math.abs(readings[atU + 1]! - u) + Math.abs(readings[atV + 1]! - v);
      const m2 = Math.abs(readings[atU + 2]! - u) + Math.abs(readings[atV + 2]! - v);
      const m3 = Math.abs(readings[atU + 3]! - u) + Math.abs(readings[atV + 3]! - v);
      w0 = w0 + m0 + Math.abs(w0 - m0);
      w1 = w1 + m1 + Math.abs(w1 - m1);
      w2 = w2 + m2 + Math.abs(w2 - m2);
      w3 = w3 + m3 + Math.abs(w3 - m3);
    }
    values[at] = roundDistance(w0);
    values[at + 1] = roundDistance(w1);
    values[at + 2] = roundDistance(w2);
    values[at + 3] = roundDistance(w3);
  }
}
