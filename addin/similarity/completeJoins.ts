import type { Condensed } from "./condensed.ts";
import type { GroupDistances } from "./groupDistances.ts";
import type { LeastTree } from "./leastTree.ts";
import { createLeastTree, least, leastAt, setNumber } from "./leastTree.ts";
import type { Join } from "./nearestNeighbourChain.ts";
import { nearestNeighbourChain } from "./nearestNeighbourChain.ts";
import { plainGroups } from "./plainGroups.ts";
import { vectorGroups } from "./vectorGroups.ts";

/**
 * The joins of complete linkage, in the order in which a search for the nearest pair of all finds them: by height, and of
 * equal heights the pair with the lowest items first, as `hclust` of R takes them.
 *
 * For each group the distance of its nearest among the later ones is kept (Anderberg 1973). A join never brings groups
 * nearer, so that what was found is still the least that the distance can be, and is looked for again only when that
 * group’s turn comes and none is so near any more (Müllner 2011, “generic” algorithm). Where the same is looked for too
 * often, the nearest-neighbour chain does the rest, so that the time always grows with the square of the size.
 *
 * May work within the memory of the distances, which mean nothing afterwards. NaN counts as infinitely far.
 *
 * @param far the same distances, by the fastest way that the size and this machine allow when omitted
 * @param mostSearches for the nearest, for each item
 */
export function completeJoins(
  distances: Condensed,
  far: GroupDistances = vectorGroups(distances) ?? plainGroups(distances),
  mostSearches = usualMostSearches,
): readonly Join[] {
  const groups = start(distances.size, far);
  const joins: Join[] = [];
  let searches = Math.round(mostSearches * distances.size);
  while (least(groups.near) < Infinity && searches > 0) {
    const height = least(groups.near);
    const low = leastAt(groups.near);
    const high = far.placeOf(low, height);
    if (high >= 0) {
      joins.push({ first: groups.lowestItem[low]!, second: groups.lowestItem[high]!, height });
      setNumber(groups.near, low, far.join(low, high));
      remove(high, groups);
    } else {
      setNumber(groups.near, low, far.least(low));
      searches--;
    }
    if (groups.count < fullShare * groups.lowestItem.length) closeUp(groups, far);
  }
  if (searches === 0) joins.push(...joinsOfRest(groups, far));
  return joins.sort((a, b) => a.height - b.height || a.first - b.first || a.second - b.second);
}

/** More than enough: one or two for each item are usual. */
const usualMostSearches = 8;

/** When fewer slots than this are in use, the groups are moved together, so that less memory is walked through. */
const fullShare = 0.7;

/** The groups, each in a slot, in the order of their lowest items. */
interface Groups {
  /** Number of slots in use. */
  count: number;
  /** The lowest item of the group in each slot; −1 for a slot no longer in use. */
  lowestItem: Int32Array;
  /** How far the nearest of the later slots is at least. Infinite for a slot no longer in use. */
  near: LeastTree;
}

function start(size: number, far: GroupDistances): Groups {
  const lowestItem = Int32Array.from({ length: size }, (_, item) => item);
  return {
    count: size,
    lowestItem,
    near: createLeastTree(Float64Array.from(lowestItem, (slot) => far.least(slot))),
  };
}

function remove(slot: number, groups: Groups): void {
  groups.lowestItem[slot] = -1;
  setNumber(groups.near, slot, Infinity);
  groups.count--;
}

/** Moves the slots in use to the front. */
function closeUp(groups: Groups, far: GroupDistances): void {
  const { count, lowestItem, near } = groups;
  const kept = new Int32Array(count);
  for (let slot = 0, to = 0; slot < lowestItem.length; slot++) if (lowestItem[slot]! >= 0) kept[to++] = slot;
  far.keep(kept);
  groups.lowestItem = kept.map((slot) => lowestItem[slot]!);
  groups.near = createLeastTree(Float64Array.from(kept, (slot) => near.winners[near.leaves + slot]!));
}

function joinsOfRest(groups: Groups, far: GroupDistances): readonly Join[] {
  closeUp(groups, far);
  const { lowestItem } = groups;
  return nearestNeighbourChain(far.condensed(), "complete").map(({ first, second, height }) => ({
    first: lowestItem[first]!,
    second: lowestItem[second]!,
    height,
  }));
}
