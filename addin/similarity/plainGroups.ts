import type { Condensed } from "./condensed.ts";
import type { GroupDistances } from "./groupDistances.ts";

/** Works within the memory of the distances. NaN counts as infinitely far. */
export function plainGroups({ size, values }: Condensed): GroupDistances {
  const state: State = { slots: size, far: values, nearest: new Int32Array(size) };
  return {
    least: (slot) => findNearest(slot, state),
    placeOf: (slot, distance) => {
      const { slots, far, nearest } = state;
      const place = nearest[slot]!;
      return place >= 0 && far[rowAt(slots, slot) + place] === distance ? place : -1;
    },
    join: (low, high) => join(low, high, state),
    keep: (kept) => {
      keep(kept, state);
    },
    condensed: () => ({ size: state.slots, values: state.far }),
  };
}

interface State {
  slots: number;
  /** Distances between slots, condensed. Those to a slot that is no longer in use are infinite, but for its own row. */
  far: Float64Array;
  /** The nearest of the later slots, of equals the first, when it was last looked for; −1 where there was none. */
  nearest: Int32Array;
}

/** `far[rowAt(slots, i) + j]` is the distance of slots i < j. */
function rowAt(slots: number, slot: number): number {
  return slot * slots - (slot * (slot + 1)) / 2 - slot - 1;
}

/** On the way NaN becomes Infinity, so that `join` finds none. */
function findNearest(slot: number, { slots, far, nearest }: State): number {
  const row = rowAt(slots, slot);
  let distance = Infinity;
  let found = -1;
  for (let other = slot + 1; other < slots; other++) {
    const each = far[row + other]!;
    if (each < distance) {
      distance = each;
      found = other;
    } else if (Number.isNaN(each)) {
      far[row + other] = Infinity;
    }
  }
  nearest[slot] = found;
  return distance;
}

/**
 * Most of the time of a clustering is spent here, so there is a loop for each run of memory. The farther is taken by its
 * place, without a branch, which processors cannot foresee: −1 as a mask keeps the step to the other, 0 drops it.
 * Places are cut to 32 bits, which saves a check of each sum.
 */
function join(low: number, high: number, { slots, far, nearest }: State): number {
  const gap = high - low;
  let row = -1;
  for (let slot = 0; slot < low; slot++) {
    const at = (row + low) | 0;
    far[at] = far[(at + (gap & -Number(far[(at + gap) | 0]! > far[at]!))) | 0]!;
    far[(at + gap) | 0] = Infinity;
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
    row += slots - slot - 2;
  }
  const down = row - rowLow;
  for (let slot = high + 1; slot < slots; slot++) {
    const at = (rowLow + slot) | 0;
    const each = far[(at + (down & -Number(far[(at + down) | 0]! > far[at]!))) | 0]!;
    far[at] = each;
    if (each < distance) {
      distance = each;
      found = slot;
    }
  }
  nearest[low] = found;
  return distance;
}

function keep(kept: Int32Array, state: State): void {
  const { slots, far, nearest } = state;
  const movedTo = new Int32Array(slots).fill(-1);
  kept.forEach((slot, to) => (movedTo[slot] = to));
  let to = 0;
  for (let i = 0; i < kept.length; i++) {
    const row = rowAt(slots, kept[i]!);
    for (let j = i + 1; j < kept.length; j++) far[to++] = far[row + kept[j]!]!;
  }
  state.slots = kept.length;
  state.far = far.subarray(0, to);
  state.nearest = kept.map((slot) => movedTo[nearest[slot]!] ?? -1);
}
