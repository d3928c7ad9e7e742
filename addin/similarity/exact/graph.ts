import type { Condensed } from "../condensed.ts";
import { isWithin } from "../within.ts";
import type { Bits } from "./bits.ts";
import { addBit, emptyBits, firstItem, hasBit, removeBit } from "./bits.ts";

/** Which items are within reach of one another. */
export interface Graph {
  readonly size: number;
  /** By item: the others within its reach, without itself. */
  readonly near: readonly Bits[];
}

/** The pairs at most `reach` apart. A distance that is not known (NaN) is not. */
export function graphOf({ size, values }: Condensed, reach: number): Graph {
  const near = Array.from({ length: size }, () => emptyBits(size));
  for (let i = 0, at = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++, at++) {
      if (!isWithin(values[at]!, reach)) continue;
      addBit(near[i]!, j);
      addBit(near[j]!, i);
    }
  }
  return { size, near };
}

/** The same pairs among some items only, which are numbered anew in the order given. */
export function partOf({ near }: Graph, items: readonly number[]): Graph {
  const size = items.length;
  return {
    size,
    near: items.map((item) => {
      const bits = emptyBits(size);
      items.forEach((other, at) => {
        if (hasBit(near[item]!, other)) addBit(bits, at);
      });
      return bits;
    }),
  };
}

/** Items that hang together over any number of pairs: sets by their lowest item, each lowest first. */
export function components({ size, near }: Graph): readonly (readonly number[])[] {
  const left = emptyBits(size);
  for (let item = 0; item < size; item++) addBit(left, item);
  const found: number[][] = [];
  for (let first = firstItem(left); first >= 0; first = firstItem(left)) {
    removeBit(left, first);
    const items = [first];
    // The list grows while it is walked through.
    for (const item of items) {
      const row = near[item]!;
      for (let word = 0; word < row.length; word++) {
        for (let fresh = row[word]! & left[word]!; fresh !== 0; fresh &= fresh - 1) {
          items.push(word * 32 + 31 - Math.clz32(fresh & -fresh));
        }
        left[word]! &= ~row[word]!;
      }
    }
    found.push(items.sort((a, b) => a - b));
  }
  return found;
}
