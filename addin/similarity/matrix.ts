import { InputError } from "../measures/inputError.ts";
import type { ComparedColumn } from "./columns.ts";
import { distanceBetween, readingsOf, roundDistance } from "./pair.ts";

/**
 * The distances between all pairs of some items, each pair once: (0,1), (0,2) … (0,n−1), (1,2) … row by row.
 * NaN is a pair that is not known.
 */
export interface Condensed {
  /** Number of items. */
  readonly size: number;
  /** size · (size − 1) / 2 distances. */
  readonly values: Float64Array;
}

/** More figures than this would need over a gigabyte of memory for their pairs. */
export const mostFigures = 12_000;

/**
 * Distances between `size` items, all 0 at first.
 *
 * @throws {InputError} when there are more than `mostFigures` items
 */
export function createCondensed(size: number): Condensed {
  checkSize(size);
  return { size, values: new Float64Array((size * Math.max(0, size - 1)) / 2) };
}

/** @throws {InputError} when there are more figures than every pair can be compared of */
export function checkSize(size: number): void {
  if (size <= mostFigures) return;
  throw new InputError(
    `The chart has ${String(size)} figures. Every pair can be compared among at most ${String(mostFigures)} at a time: give a part of the chart.`,
  );
}

/**
 * Where the pair of two different items stands among the values.
 *
 * @param i an item, from 0
 * @param j another item, from 0
 */
export function pairIndex(size: number, i: number, j: number): number {
  const low = Math.min(i, j);
  return low * size - (low * (low + 1)) / 2 + Math.max(i, j) - low - 1;
}

/** The distance of two items: 0 of an item to itself, NaN when it is not known. */
export function pairDistance(distances: Condensed, i: number, j: number): number {
  return i === j ? 0 : (distances.values[pairIndex(distances.size, i, j)] ?? Number.NaN);
}

/**
 * The distance of every pair of figures, see `apart`, for trees and pictures of the whole. Time and memory grow with
 * the square of the number of figures.
 *
 * @param columns see `comparedColumns`
 * @param size number of figures
 * @throws {InputError} when there are too many figures
 */
export function toleranceDistances(columns: readonly ComparedColumn[], size: number): Condensed {
  const distances = createCondensed(size);
  const byColumn = packed(columns, size);
  for (let i = 0, start = 0; i < size - 1; start += size - 1 - i, i++) fillRow(i, start, distances, byColumn);
  mendGaps(distances, columns);
  return distances;
}

/** A figure is compared with this many others at once. */
const abreast = 4;

/** Readings, column by column, with room behind each column for reading whole steps. */
interface Packed {
  readonly mm: Float64Array;
  readonly stride: number;
  readonly floorMm: Float64Array;
  readonly halfShare: Float64Array;
}

function packed(columns: readonly ComparedColumn[], size: number): Packed {
  const stride = size + abreast;
  const mm = new Float64Array(columns.length * stride);
  columns.forEach(({ column }, c) => mm.set(column.mm.subarray(0, size), c * stride));
  const { floorMm, halfShare } = readingsOf(columns, 0);
  return { mm, stride, floorMm, halfShare };
}

/**
 * Writes the distances of figure i to each later one, from `start` on; those of figures with gaps come out wrong. Written for
 * speed: processors cannot foresee which measure is worst, so the greater of two is taken without a branch, as
 * max(w, p) = (w + p + |w − p|) / 2. What a row writes behind its end is overwritten by the next row, and falls away
 * behind the last.
 */
function fillRow(
  i: number,
  start: number,
  { size, values }: Condensed,
  { mm, stride, floorMm, halfShare }: Packed,
): void {
  for (let j = i + 1, at = start; j < size; j += abreast, at += abreast) {
    let w0 = 0;
    let w1 = 0;
    let w2 = 0;
    let w3 = 0;
    for (let c = 0, atI = i, atJ = j; c < floorMm.length; c++, atI += stride, atJ += stride) {
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
  const readings = readingsOf(columns, size);
  const hasGap = Array.from(
    { length: size },
    (_, i) => columns.length === 0 || columns.some(({ column }) => Number.isNaN(column.mm[i] ?? Number.NaN)),
  );
  hasGap.forEach((isGap, i) => {
    if (!isGap) return;
    for (let j = 0; j < size; j++) {
      const isDone = j === i || (j < i && hasGap[j]);
      if (!isDone) values[pairIndex(size, i, j)] = distanceBetween(readings, i, j);
    }
  });
}
