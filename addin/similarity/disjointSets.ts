/** A partition of items that only grows coarser (union–find with path halving). */
export interface DisjointSets {
  /** The item that stands for the set of an item: its lowest one. */
  find(item: number): number;
  /** Makes one set of two, and returns the item that stands for it. */
  join(a: number, b: number): number;
}

/** Every item of 0 … size − 1 by itself. */
export function createDisjointSets(size: number): DisjointSets {
  const parent = Int32Array.from({ length: size }, (_, item) => item);
  const find = (item: number): number => {
    let at = item;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  return {
    find,
    join(a, b) {
      const low = Math.min(find(a), find(b));
      const high = Math.max(find(a), find(b));
      parent[high] = low;
      return low;
    },
  };
}
