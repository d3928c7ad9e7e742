import type { Condensed } from "./condensed.ts";
import type { LeastTree } from "./leastTree.ts";
import { createLeastTree, least, leastAt, setNumber } from "./leastTree.ts";
import type { Join } from "./nearestNeighbourChain.ts";
import { nearestNeighbourChain } from "./nearestNeighbourChain.ts";

/**
 * The joins of complete linkage, in the order in which a search for the nearest pair of all finds them: by height, and of
 * equal heights the pair with the lowest items first, as `hclust` of R takes them.
 *
 * Each group keeps its nearest among the later ones (Anderberg 1973). A join never brings groups nearer, so that what was
 * found is still the least that the distance can be, and is looked for again only when that group’s turn comes (Müllner
 * 2011, “generic” algorithm). Where the same is looked for too often, the nearest-neighbour chain does the rest, so that
 * the time always grows with the square of the size.
 *
 * Works within the memory of the distances, which mean nothing afterwards. NaN counts as infinitely far.
 *
 * @param mostSearches for the nearest, for each item
 */
export function completeJoins(
  { size, values }: Condensed,
  mostSearches = usualMostSearches,
): readonly Join[] {
  const groups = start(size, values);
  const joins: Join[] = [];
  let searches = Math.round(mostSearches * size);
  while (least(groups.near) < Infinity && searches > 0) {
    const low = leastAt(groups.near);
    const high = groups.nearest[low]!;
    if (high >= 0) {
      joins.push({
        first: groups.lowestItem[low]!,
        second: groups.lowestItem[high]!,
        height: least(groups.near),
      });
      join(low, high, groups);
    } else {
      setNumber(groups.near, low, findNearest(low, groups));
      searches--;
    }
    if (groups.count < fullShare * groups.slots) closeUp(groups);
  }
  if (searches === 0) joins.push(...joinsOfRest(groups));
  return joins.sort((a, b) => a.height - b.height || a.first - b.first || a.second - b.second);
}

/** More than enough: one or two for each item are usual. */
const usualMostSearches = 8;

/** When fewer slots than this are in use, the groups are moved together, so that less memory is walked through. */
const fullShare = 0.7;

/** The groups, each in a slot, in the order of their lowest items. */
interface Groups {
  /** Number of slots, and how many of them are in use. */
  slots: number;
  count: number;
  /** Distances between slots, condensed; infinite where a slot is no longer in use. */
  far: Float64Array;
  /** The lowest item of the group in each slot; −1 for a slot no longer in use. */
  lowestItem: Int32Array;
  /** The nearest of the later slots, of equals the first; −1 when it has to be looked for. */
  nearest: Int32Array;
  /** How far it is at least. Infinite for a slot no longer in use. */
  near: LeastTree;
}

function start(size: number, far: Float64Array): Groups {
  const near = new Float64Array(size);
  const nearest = new Int32Array(size);
  for (let slot = 0, at = 0; slot < size; slot++) {
    let distance = Infinity;
    let found = -1;
    for (let other = slot + 1; other < size; other++, at++) {
      const each = far[at]!;
      if (each < distance) {
        distance = each;
        found = other;
      } else if (Number.isNaN(each)) {
        far[at] = Infinity;
      }
    }
    near[slot] = distance;
    nearest[slot] = found;
  }
  const lowestItem = Int32Array.from({ length: size }, (_, item) => item);
  return { slots: size, count: size, far, lowestItem, nearest, near: createLeastTree(near) };
}

/** `far[rowAt(slots, i) + j]` is the distance of slots i < j. */
function rowAt(slots: number, slot: number): number {
  return slot * slots - (slot * (slot + 1)) / 2 - slot - 1;
}

function findNearest(slot: number, { slots, far, nearest }: Groups): number {
  const row = rowAt(slots, slot);
  let distance = Infinity;
  let found = -1;
  for (let other = slot + 1; other < slots; other++) {
    const each = far[row + other]!;
    if (each < distance) {
      distance = each;
      found = other;
    }
  }
  nearest[slot] = found;
  return distance;
}

/**
 * Puts the group of `high` into the slot `low`: its distance to any other is the farther of the two. Finds the nearest of
 * `low` on the way.
 *
 * Most of the time of a clustering is spent here, so there is a loop for each run of memory. The farther is taken by its
 * place, without a branch, which processors cannot foresee: −1 as a mask keeps the step to the other, 0 drops it.
 * Places are cut to 32 bits, which saves a check of each sum.
 */
function join(low: number, high: number, groups: Groups): void {
  const { slots, far, nearest, lowestItem } = groups;
  const gap = high - low;
  let row = -1;
  for (let slot = 0; slot < low; slot++) {
    const at = (row + low) | 0;
    const isFarther = Number(far[(at + gap) | 0]! > far[at]!);
    far[at] = far[(at + (gap & -isFarther)) | 0]!;
    far[(at + gap) | 0] = Infinity;
    const other = nearest[slot]!;
    if (other === high || (other === low && isFarther === 1)) nearest[slot] = -1;
    row += slots - slot - 2;
  }
  const rowLow = row;
  far[rowLow + high] = Infinity;
  let distance = Infinity;
  let found = -1;
  row += slots - low - 2;
  for (let slot = low + 1; slot < high; slot++) {
    const at = (rowLow + slot) | 0;
    const down = (row + high - at) | 0;
    const each = far[(at + (down & -Number(far[(at + down) | 0]! > far[at]!))) | 0]!;
    far[at] = each;
    far[(at + down) | 0] = Infinity;
    if (each < distance) {
      distance = each;
      found = slot;
    }
    if (nearest[slot] === high) nearest[slot] = -1;
    row += slots - slot - 2;
  }
  const down = row - rowLow;
  for (let slot = high + 1; slot < slots; slot++) {
    const at = (rowLow + slot) | 0;
    const each = far[(at + (down & -Number(far[(at + down) | 0]! > far[at]!))) | 0]!;
    far[at] = each;
    far[(at + down) | 0] = Infinity;
    if (each < distance) {
      distance = each;
      found = slot;
    }
  }
  nearest[low] = found;
  setNumber(groups.near, low, distance);
  lowestItem[high] = -1;
  setNumber(groups.near, high, Infinity);
  groups.count--;
}

/** Moves the slots in use to the front, within the same memory. */
function closeUp(groups: Groups): void {
  const { slots, count, far, lowestItem, nearest, near } = groups;
  const kept = new Int32Array(count);
  const movedTo = new Int32Array(slots);
  for (let slot = 0, to = 0; slot < slots; slot++) {
    if (lowestItem[slot]! < 0) continue;
    kept[to] = slot;
    movedTo[slot] = to++;
  }
  let to = 0;
  for (let i = 0; i < count; i++) {
    const row = rowAt(slots, kept[i]!);
    for (let j = i + 1; j < count; j++) far[to++] = far[row + kept[j]!]!;
  }
  groups.slots = count;
  groups.far = far.subarray(0, to);
  groups.lowestItem = kept.map((slot) => lowestItem[slot]!);
  groups.nearest = kept.map((slot) => movedTo[nearest[slot]!] ?? -1);
  groups.near = createLeastTree(Float64Array.from(kept, (slot) => near.winners[near.leaves + slot]!));
}

function joinsOfRest(groups: Groups): readonly Join[] {
  closeUp(groups);
  const { slots, far, lowestItem } = groups;
  return nearestNeighbourChain({ size: slots, values: far }, "complete").map(({ first, second, height }) => ({
    first: lowestItem[first]!,
    second: lowestItem[second]!,
    height,
  }));
}
