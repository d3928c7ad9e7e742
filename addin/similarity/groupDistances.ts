import type { Condensed } from "./condensed.ts";

/**
 * The distances between groups while these are joined by complete linkage: that of two groups is the distance of their
 * farthest items. Each group is in a slot; at first each item is a group.
 */
export interface GroupDistances {
  /** How far the nearest of the later slots is; Infinity when there is none. To be asked of each slot before any is joined. */
  least(slot: number): number;
  /** The first later slot at a distance that `least` or `join` gave for this slot; −1 when none is so near any more. */
  placeOf(slot: number, distance: number): number;
  /**
   * Puts the group of slot `high` into the slot `low` before it, and gives `least(low)`. The slot `high` is no longer in use
   * and infinitely far from all others; nothing may be asked about it.
   */
  join(low: number, high: number): number;
  /** Moves these slots to the front, in their rising order, and forgets the others. */
  keep(slots: Int32Array): void;
  /** The distances as they are. */
  condensed(): Condensed;
}
