import { InputError } from "../measures/inputError.ts";

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
  if (size > mostFigures) {
    throw new InputError(
      `The chart has ${String(size)} figures. Groups can be found among at most ${String(mostFigures)} at a time: give a part of the chart.`,
    );
  }
  return { size, values: new Float64Array((size * Math.max(0, size - 1)) / 2) };
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

/** Calls `work` with each item and the place of its first pair, but for the last item, which begins no pair. */
export function forEachRow(size: number, work: (item: number, start: number) => void): void {
  for (let item = 0, start = 0; item < size - 1; start += size - 1 - item, item++) work(item, start);
}

/** The distance of two items: 0 of an item to itself, NaN when it is not known. */
export function pairDistance(distances: Condensed, i: number, j: number): number {
  return i === j ? 0 : (distances.values[pairIndex(distances.size, i, j)] ?? Number.NaN);
}
