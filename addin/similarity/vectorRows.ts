import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { lanes } from "./wasm/fillRows.ts";
import { scratch } from "./wasm/scratch.ts";

/** Writes the distance of every pair. */
export type Fill = (distances: Condensed) => void;

/** Fewer take no time worth saving. */
const fewestFigures = 256;

/**
 * The worst difference in tolerances, for tolerances without a percent part, by vector instructions; `undefined` where
 * there are none, or too few figures. A missing reading leaves the pair without a meaning.
 *
 * Only two rows of distances at a time are in the memory that the instructions work on, since that is kept: see `scratch`.
 */
export function vectorRows(columns: readonly ComparedColumn[], size: number): Fill | undefined {
  if (size < fewestFigures || columns.length === 0) return undefined;
  const stride = size + lanes;
  const rowAt = columns.length * stride;
  const nextRowAt = rowAt + stride;
  const ready = scratch(byteAt(nextRowAt + stride));
  if (!ready) return undefined;

  const { memory, loops } = ready;
  return ({ values }) => {
    const numbers = new Float64Array(memory.buffer);
    columns.forEach(({ column, tolerance }, c) => {
      const perMm = 1 / tolerance.floorMm;
      for (let i = 0, at = c * stride; i < size; i++, at++) numbers[at] = column.mm[i]! * perMm;
    });
    for (let i = 0, start = 0; i < size - 1; i += 2) {
      const length = size - 1 - i;
      loops.fillRows(
        byteAt(i),
        byteAt(i + 1),
        byteAt(rowAt + i),
        byteAt(stride),
        byteAt(rowAt),
        byteAt(nextRowAt),
        byteAt(rowAt + length),
      );
      values.set(numbers.subarray(rowAt, rowAt + length), start);
      // The next row begins with the next figure itself.
      values.set(numbers.subarray(nextRowAt + 1, nextRowAt + length), start + length);
      start += 2 * length - 1;
    }
  };
}

function byteAt(index: number): number {
  return index * Float64Array.BYTES_PER_ELEMENT;
}
