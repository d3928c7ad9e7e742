import type { Bits } from "./bits.ts";
import { addBit, bitsOf, emptyBits, firstItem, hasBit, itemsOf, removeBit } from "./bits.ts";
import { forEachNearPair } from "../neighbours.ts";
import type { Readings } from "../pair.ts";

/** Which items are within reach of one another. */
export interface Graph {
  readonly size: number;
  /** By item: the others within its reach, without itself. */
  readonly near: readonly Bits[];
}

/** The pairs of figures at most `reach` apart. A distance that is not known is not. */
export function nearGraph(readings: Readings, reach: number): Graph {
  const { size } = readings;
  const near = Array.from({ length: size }, () => emptyBits(size));
  forEachNearPair(readings, reach, (i, j) => {
    addBit(near[i]!, j);
    addBit(near[j]!, i);
  });
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

/** What is left of a graph, and which items may follow another. */
export interface Undominated {
  /** The items that stay, lowest first. */
  readonly stays: readonly number[];
  /** In the order in which they were left out: an item that may join the group of another, whichever that is. */
  readonly follows: readonly { readonly item: number; readonly whom: number }[];
}

/**
 * Leaves out items that need no look of their own: all that is within reach of some other item is within their reach too, so
 * they can join its group, whichever that is.
 */
export function undominated({ near, size }: Graph): Undominated {
  const stays = bitsOf(size, Array(size).keys());
  const follows: { item: number; whom: number }[] = [];
  const open = Array.from({ length: size }, (_, item) => item);
  const isOpen = new Uint8Array(size).fill(1);
  // The list grows while it is walked through: what lies near an item that went has less to go with now.
  for (const whom of open) {
    isOpen[whom] = 0;
    if (!hasBit(stays, whom)) continue;
    for (const item of itemsOf(near[whom]!)) {
      if (!hasBit(stays, item) || !canFollow(near, stays, item, whom)) continue;
      stays[item >>> 5]! &= ~(1 << (item & 31));
      follows.push({ item, whom });
      for (const each of itemsOf(near[item]!)) {
        if (isOpen[each] === 1 || !hasBit(stays, each)) continue;
        isOpen[each] = 1;
        open.push(each);
      }
    }
  }
  return { stays: itemsOf(stays), follows };
}

function canFollow(near: Graph["near"], stays: Uint32Array, item: number, whom: number): boolean {
  const wanted = near[whom]!;
  const given = near[item]!;
  for (let word = 0; word < wanted.length; word++) {
    const itself = word === item >>> 5 ? 1 << (item & 31) : 0;
    if ((wanted[word]! & stays[word]! & ~given[word]! & ~itself) !== 0) return false;
  }
  return true;
}

/** Each item in the first of its groups only. */
export function disjoint(groups: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const isTaken = new Set<number>();
  return groups.map((group) => group.filter((item) => !isTaken.has(item) && isTaken.add(item)));
}
