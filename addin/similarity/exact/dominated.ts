import { bitsOf, hasBit, itemsOf } from "./bits.ts";
import type { Graph } from "./graph.ts";

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
