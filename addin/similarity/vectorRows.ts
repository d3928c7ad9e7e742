import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { lanes, vectorCode } from "./vectorCode.ts";

/** Writes the distance of every pair. */
export type Fill = (distances: Condensed) => void;

/** For fewer figures it takes longer to make ready than it saves. */
const fewestFigures = 256;

/**
 * The worst difference in tolerances, for tolerances without a percent part, by vector instructions; `undefined` where
 * there are none, or too few figures. A missing reading leaves the pair without a meaning.
 *
 * Only two rows of distances at a time are in the memory that the instructions work on: memory for all of them is costly to
 * ask for, and could not be given back at will.
 */
export function vectorRows(columns: readonly ComparedColumn[], size: number): Fill | undefined {
  if (size < fewestFigures || columns.length === 0) return undefined;
  const stride = size + lanes;
  const rowAt = columns.length * stride;
  const nextRowAt = rowAt + stride;
  const ready = load(nextRowAt + stride);
  if (!ready) return undefined;

  const { numbers, fillRows } = ready;
  columns.forEach(({ column, tolerance }, c) => {
    const perMm = 1 / tolerance.floorMm;
    for (let i = 0, at = c * stride; i < size; i++, at++) numbers[at] = column.mm[i]! * perMm;
  });
  return ({ values }) => {
    for (let i = 0, start = 0; i < size - 1; i += 2) {
      const length = size - 1 - i;
      fillRows(
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

/** See `parameters` in vectorCode.ts. */
type FillRows = (
  one: number,
  others: number,
  end: number,
  stride: number,
  out: number,
  outNext: number,
  outEnd: number,
) => void;

const pageBytes = 2 ** 16;

/** Compiled once; `undefined` where the browser has no vector instructions or the page must not bring code. */
const compiled = compile();

function compile(): WebAssembly.Module | undefined {
  try {
    return new WebAssembly.Module(vectorCode);
  } catch {
    return undefined;
  }
}

function load(length: number): { readonly numbers: Float64Array; readonly fillRows: FillRows } | undefined {
  if (!compiled) return undefined;
  try {
    const memory = new WebAssembly.Memory({ initial: Math.ceil(byteAt(length) / pageBytes) });
    const { fillRows } = new WebAssembly.Instance(compiled, { numbers: { memory } }).exports;
    return isFill(fillRows) ? { numbers: new Float64Array(memory.buffer), fillRows } : undefined;
  } catch {
    // No memory is left for it. The plain loop needs less.
    return undefined;
  }
}

function isFill(exported: unknown): exported is FillRows {
  return typeof exported === "function";
}
