import type { Condensed } from "./condensed.ts";
import { createCondensed } from "./condensed.ts";
import type { Readings } from "./readings.ts";
import { isEnough } from "./readings.ts";

/** Writes the distances of figure `i` to each later figure into `values`, from `start` on. Missing readings are NaN. */
export type RowDistances = (i: number, values: Float64Array, start: number) => void;

/** All distances of a chart, row by row; then those that rest on too few readings become not known (NaN). */
export function pairwise(readings: Readings, rowDistances: RowDistances): Condensed {
  const { size } = readings;
  const distances = createCondensed(size);
  for (let i = 0, start = 0; i < size; i++) {
    rowDistances(i, distances.values, start);
    start += size - 1 - i;
  }
  clearNotKnown(readings, distances.values);
  return distances;
}

const bits = 30;

/** Only figures with a missing reading are looked at, so that a complete chart costs nothing. */
function clearNotKnown(readings: Readings, values: Float64Array): void {
  const { size, columns } = readings;
  const words = Math.ceil(columns.length / bits);
  const taken = takenBits(readings, words);
  const required = requiredBits(readings, words);
  const gaps = Array.from({ length: size }, (_, i) => hasGap(readings, i));

  for (let i = 0, at = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++, at++) {
      if (!(gaps[i] || gaps[j])) continue;
      let compared = 0;
      let complete = true;
      for (let w = 0; w < words; w++) {
        const both = taken[i * words + w]! & taken[j * words + w]!;
        compared += countBits(both);
        complete &&= (both & required[w]!) === required[w];
      }
      if (!complete || !isEnough(compared, columns.length)) values[at] = Number.NaN;
    }
  }
}

function hasGap({ width, mm }: Readings, i: number): boolean {
  return width === 0 || mm.subarray(i * width, (i + 1) * width).some(Number.isNaN);
}

/** One bit a measure, set where the figure has a reading. */
function takenBits({ size, width, mm }: Readings, words: number): Int32Array {
  const taken = new Int32Array(size * words);
  for (let i = 0; i < size; i++) {
    for (let c = 0; c < width; c++) {
      if (!Number.isNaN(mm[i * width + c])) taken[i * words + Math.floor(c / bits)]! |= 1 << (c % bits);
    }
  }
  return taken;
}

function requiredBits({ columns }: Readings, words: number): Int32Array {
  const required = new Int32Array(words);
  columns.forEach((column, c) => {
    if (column.required) required[Math.floor(c / bits)]! |= 1 << (c % bits);
  });
  return required;
}

/** Number of set bits of a 32-bit whole number: sums of 2, then 4, then 8 bits at a time. */
function countBits(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
