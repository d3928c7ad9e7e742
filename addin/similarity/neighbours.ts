import type { Readings } from "./pair.ts";
import { distanceBetween, isWithin, roundingShare } from "./pair.ts";

/**
 * The order in which pairs are best looked through: figures by their reading of the measure that keeps most of them apart, so
 * that those within reach of one stand beside it; and the measures by how soon they tell that two are too far apart.
 */
export interface SweepOrder {
  /** The column by which the figures are sorted. */
  readonly column: number;
  /** All figures by their reading of it, smallest first; those without one at the end. */
  readonly figures: Int32Array;
  /** Where those without a reading begin. */
  readonly sorted: number;
  /** All columns, the one that tells most pairs apart first. */
  readonly columns: Int32Array;
}

/** So many figures tell which measures keep them apart; more tell no more. */
const mostTried = 125;

export function sweepOrder(readings: Readings, reach: number): SweepOrder {
  const { size, width, mm } = readings;
  const near = Math.min(reach, 1);
  const step = Math.max(1, Math.ceil(size / mostTried));
  let column = 0;
  for (let c = 0, least = Infinity; c < width; c++) {
    const pairs = closePairs(readings, c, step, near);
    if (pairs < least) [column, least] = [c, pairs];
  }
  const { figures, sorted } = sortedBy(readings, column);
  const tellsApart = new Int32Array(width);
  for (let at = 0; at + 1 < size; at += step) {
    for (let c = 0; c < width; c++) {
      const a = mm[figures[at]! * width + c]!;
      const b = mm[figures[at + 1]! * width + c]!;
      if (Math.abs(a - b) > limitMm(readings, c, a, b, near)) tellsApart[c]!++;
    }
  }
  const columns = Int32Array.from({ length: width }, (_, c) => c).sort(
    (a, b) => tellsApart[b]! - tellsApart[a]! || a - b,
  );
  return { column, figures, sorted, columns };
}

/** All figures by their reading of a column, equals in their own order; those without one at the end. */
function sortedBy({ size, width, mm }: Readings, column: number): Pick<SweepOrder, "figures" | "sorted"> {
  const readings = new Float64Array(size);
  for (let i = 0; i < size; i++) readings[i] = mm[i * width + column] ?? Number.NaN;
  // Numbers alone sort many times faster than figures by them: each figure is put where its reading has come to stand.
  const inOrder = readings.slice().sort();
  const sorted = firstAtLeast(inOrder, Number.NaN);
  const taken = new Int32Array(size + 1);
  const figures = new Int32Array(size);
  for (let i = 0; i < size; i++) {
    const place = firstAtLeast(inOrder, readings[i]!);
    figures[place + taken[place]!] = i;
    taken[place]!++;
  }
  return { figures, sorted };
}

/** Where the first number stands that is not below a value; NaN, which stands at the end, is above all. */
function firstAtLeast(inOrder: Float64Array, value: number): number {
  let from = 0;
  let to = inOrder.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    const isBelow = Number.isNaN(value) ? !Number.isNaN(inOrder[middle]) : inOrder[middle]! < value;
    if (isBelow) from = middle + 1;
    else to = middle;
  }
  return from;
}

/**
 * How many pairs a column alone leaves of every so manieth figure: those within reach of each other, and all with a figure that has
 * no reading.
 */
function closePairs(readings: Readings, c: number, step: number, reach: number): number {
  const { size, width, mm } = readings;
  const some = new Float64Array(Math.ceil(size / step));
  for (let at = 0; at < some.length; at++) some[at] = mm[at * step * width + c]!;
  some.sort();
  const sorted = firstAtLeast(some, Number.NaN);
  let pairs = (some.length - sorted) * some.length;
  for (let at = 0, first = 0; at < sorted; at++) {
    const b = some[at]!;
    for (; first < at; first++) {
      const a = some[first]!;
      if (b - a <= limitMm(readings, c, a, b, reach)) break;
    }
    pairs += at - first;
  }
  return pairs;
}

/** The most that two readings may differ by to be within reach, and a hair more for rounding. */
export function limitMm(
  { floorMm, halfShare }: Readings,
  c: number,
  a: number,
  b: number,
  reach: number,
): number {
  return withRounding(reach) * Math.max(floorMm[c]!, halfShare[c]! * (a + b));
}

/** A reach with room for the rounding of readings and of distances. */
export function withRounding(reach: number): number {
  return reach * (1 + 2 * roundingShare) + roundingShare;
}

/**
 * Every pair of figures within reach of each other, found by sorting the figures by one measure and sweeping along it: those
 * beyond reach in that measure are never looked at.
 *
 * @param visit told of each pair once, in no particular order: the lower figure, the higher, and their distance
 */
export function forEachNearPair(
  readings: Readings,
  reach: number,
  visit: (i: number, j: number, distance: number) => void,
): void {
  const { width, mm } = readings;
  const { column, figures, sorted } = sweepOrder(readings, reach);
  const look = (one: number, other: number): void => {
    const distance = distanceBetween(readings, one, other, reach);
    if (isWithin(distance, reach)) visit(Math.min(one, other), Math.max(one, other), distance);
  };
  for (let at = 0; at < figures.length; at++) {
    const figure = figures[at]!;
    const isSorted = at < sorted;
    const b = mm[figure * width + column]!;
    for (let before = at - 1; before >= 0; before--) {
      const other = figures[before]!;
      const a = mm[other * width + column]!;
      if (isSorted && b - a > limitMm(readings, column, a, b, reach)) break;
      look(other, figure);
    }
  }
}
