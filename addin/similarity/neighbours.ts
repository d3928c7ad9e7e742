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
const mostTried = 250;

export function sweepOrder(readings: Readings, reach: number): SweepOrder {
  const { size, width, mm } = readings;
  const near = Math.min(reach, 1);
  const step = Math.max(1, Math.ceil(size / mostTried));
  const some = Int32Array.from({ length: Math.ceil(size / step) }, (_, at) => at * step);
  const close = Array.from({ length: width }, (_, c) =>
    closePairs(readings, sortedBy(readings, c, some), c, near),
  );
  const column = close.reduce((best, pairs, c) => (pairs < close[best]! ? c : best), 0);
  const { figures, sorted } = sortedBy(
    readings,
    column,
    Int32Array.from({ length: size }, (_, i) => i),
  );
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

interface Sorted {
  /** Figures by their reading, smallest first; those without one at the end. */
  readonly figures: Int32Array;
  /** Number of those with a reading. */
  readonly sorted: number;
}

function sortedBy({ width, mm }: Readings, c: number, figures: Int32Array): Sorted {
  const readingOf = (i: number) => mm[i * width + c] ?? Number.NaN;
  const known = figures.filter((i) => !Number.isNaN(readingOf(i)));
  const lacking = figures.filter((i) => Number.isNaN(readingOf(i)));
  known.sort((i, j) => readingOf(i) - readingOf(j) || i - j);
  const all = new Int32Array(figures.length);
  all.set(known);
  all.set(lacking, known.length);
  return { figures: all, sorted: known.length };
}

/** How many pairs the column alone leaves: those within reach of each other, and all with a figure that has no reading. */
function closePairs(readings: Readings, { figures, sorted }: Sorted, c: number, reach: number): number {
  const { width, mm } = readings;
  let pairs = (figures.length - sorted) * figures.length;
  for (let at = 0, first = 0; at < sorted; at++) {
    const b = mm[figures[at]! * width + c]!;
    for (; first < at; first++) {
      const a = mm[figures[first]! * width + c]!;
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
