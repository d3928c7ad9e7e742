import type { Join } from "./linkage.ts";
import { inOrder } from "./linkage.ts";
import { sweepOrder, withRounding } from "./neighbours.ts";
import type { Readings } from "./pair.ts";
import { isKnown, isWithin, roundDistance } from "./pair.ts";

/**
 * The joins of complete linkage by the worst difference in tolerances, up to a reach, without the distances of all pairs.
 *
 * A group is as far from another as its farthest member. A difference in tolerances grows with the difference in mm, so in each
 * measure that is the smallest reading of one group against the largest of the other: the smallest and the largest
 * readings of a group are all that has to be kept of it. The groups stand in the order of one measure, and a search for the
 * nearest goes outwards from a group only as far as the nearest found so far allows; every member of a group within reach is
 * within reach of every member of the other, so that one member of each can stand for its group there.
 *
 * The joins are those of the nearest-neighbour chain, see `nearestNeighbourChain`, with equals in the same order. Time grows with
 * the pairs of groups that are near in that measure; memory with the number of figures.
 *
 * Two groups never join when any pair between them is not known.
 *
 * @param reach how far the farthest two of a group may be apart, in tolerances
 * @returns by height, equally high ones by their lowest items: so the search through all pairs finds them, and `hclust` of R
 */
export function completeJoins(readings: Readings, reach = Infinity): readonly Join[] {
  const groups = start(readings, reach);
  const joins: Join[] = [];
  const chain: number[] = [];
  for (;;) {
    if (chain.length === 0) {
      const first = groups.next[groups.size]!;
      if (first === groups.size) return joins.sort(inOrder);
      chain.push(first);
    }
    const tip = chain.at(-1)!;
    const previous = chain.at(-2);
    const nearest = nearestTo(tip, previous, reach, groups);
    if (nearest.slot < 0) {
      chain.pop();
      remove(tip, groups);
    } else if (nearest.slot === previous) {
      chain.length -= 2;
      joins.push(join(tip, previous, nearest.distance, groups));
    } else {
      chain.push(nearest.slot);
    }
  }
}

/** The groups that can still be joined, each in a slot. Slots stand in the order of the sweep. */
interface Groups {
  /** Number of slots. Slot `size` is none: it begins and ends the list of those in use. */
  readonly size: number;
  readonly width: number;
  /** The next and the previous slot in use. */
  readonly next: Int32Array;
  readonly before: Int32Array;
  /** Where the slots begin that have no reading of the measure by which they are sorted. */
  readonly sorted: number;
  /** The measure by which slots are sorted, and two that tell most of the others apart: readings that lie close together in memory. */
  readonly keys: readonly [Key, Key, Key];
  /** The smallest and the largest reading of each group, slot by slot, columns in the order of the sweep; NaN where it has none. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly floorMm: Float64Array;
  readonly halfShare: Float64Array;
  readonly lowestItem: Int32Array;
  readonly gaps: Gaps | undefined;
  /** False where no tolerance is a percentage of the reading. */
  readonly hasShares: boolean;
}

interface Key {
  /** By slot; of a group, that of one member. */
  readonly mm: Float64Array;
  readonly floorMm: number;
  readonly halfShare: number;
}

function start(readings: Readings, reach: number): Groups {
  const { size, width, mm, floorMm, halfShare } = readings;
  const { column, columns: telling, figures, sorted } = sweepOrder(readings, reach);
  const first = Int32Array.of(column, ...telling.subarray(0, 2));
  // What the keys have told need not be asked of all the readings but at last.
  const columns = Int32Array.of(...telling.filter((c) => !first.includes(c)), ...new Set(first));
  const inOrder = new Float64Array(size * width);
  for (let slot = 0, at = 0; slot < size; slot++) {
    for (let c = 0; c < width; c++, at++) inOrder[at] = mm[figures[slot]! * width + columns[c]!]!;
  }
  const keyOf = (c = 0): Key => ({
    mm: Float64Array.from(figures, (figure) => mm[figure * width + c] ?? Number.NaN),
    floorMm: floorMm[c] ?? 0,
    halfShare: halfShare[c] ?? 0,
  });
  return {
    size,
    width,
    next: Int32Array.from({ length: size + 1 }, (_, slot) => (slot + 1) % (size + 1)),
    before: Int32Array.from({ length: size + 1 }, (_, slot) => (slot + size) % (size + 1)),
    sorted,
    keys: [keyOf(column), keyOf(telling[0]), keyOf(telling[1])],
    low: inOrder,
    high: inOrder.slice(),
    floorMm: Float64Array.from(columns, (c) => floorMm[c]!),
    halfShare: Float64Array.from(columns, (c) => halfShare[c]!),
    lowestItem: figures,
    gaps: gapsOf(readings, figures),
    hasShares: halfShare.some((share) => share > 0),
  };
}

function remove(slot: number, { next, before }: Groups): void {
  next[before[slot]!] = next[slot]!;
  before[next[slot]!] = before[slot]!;
}

/** The nearest group found so far. */
interface Nearest {
  /** −1 while there is none. */
  slot: number;
  distance: number;
  /** No group farther than this need be looked at: the distance, or the reach while there is none. */
  limit: number;
}

/**
 * The nearest other group within reach, of equals the one with the lowest item; slot −1 when there is none.
 *
 * @param guess a group that may be near, to be looked at first
 */
function nearestTo(tip: number, guess: number | undefined, reach: number, groups: Groups): Nearest {
  const { size, sorted, next, before } = groups;
  const nearest = { slot: -1, distance: reach, limit: withRounding(reach) };
  if (guess !== undefined) consider(guess, tip, nearest, groups);
  if (tip < sorted) {
    scan(tip, before[tip]!, before, true, nearest, groups);
    scan(tip, next[tip]!, next, true, nearest, groups);
    // Those without a reading stand at the end.
    for (let slot = before[size]!; slot !== size && slot >= sorted; slot = before[slot]!) {
      consider(slot, tip, nearest, groups);
    }
  } else {
    scan(tip, before[tip]!, before, false, nearest, groups);
    scan(tip, next[tip]!, next, false, nearest, groups);
  }
  return nearest;
}

/** Looks along a list of slots; where they are in order, as far as the nearest so far allows. */
function scan(
  tip: number,
  from: number,
  list: Int32Array,
  isInOrder: boolean,
  nearest: Nearest,
  groups: Groups,
): void {
  const { size, sorted, keys } = groups;
  const [first, second, third] = keys;
  // Held here, since whatever is called could change what lies in memory.
  const { mm: mm1, floorMm: floor1, halfShare: share1 } = first;
  const { mm: mm2, floorMm: floor2, halfShare: share2 } = second;
  const { mm: mm3, floorMm: floor3, halfShare: share3 } = third;
  const a1 = mm1[tip]!;
  const a2 = mm2[tip]!;
  const a3 = mm3[tip]!;
  let { limit } = nearest;
  for (let slot = from; slot !== size; slot = list[slot]!) {
    if (isInOrder && (slot >= sorted || isBeyond(a1, mm1[slot]!, floor1, share1, limit))) break;
    if (isBeyond(a2, mm2[slot]!, floor2, share2, limit)) continue;
    if (isBeyond(a3, mm3[slot]!, floor3, share3, limit)) continue;
    if (areBeyond(tip, slot, limit, groups)) continue;
    consider(slot, tip, nearest, groups);
    limit = nearest.limit;
  }
}

function consider(slot: number, tip: number, nearest: Nearest, groups: Groups): void {
  const { lowestItem } = groups;
  const distance = distanceOf(tip, slot, groups);
  if (!(nearest.slot < 0 ? isWithin(distance, nearest.distance) : distance <= nearest.distance)) return;
  const isEqual = nearest.slot >= 0 && distance === nearest.distance;
  if (isEqual && lowestItem[slot]! > lowestItem[nearest.slot]!) return;
  if (!areKnown(tip, slot, groups)) return;
  nearest.slot = slot;
  nearest.distance = distance;
  nearest.limit = withRounding(distance);
}

/** True when the readings of two members, one of each group, are too far apart. */
function isBeyond(a: number, b: number, floorMm: number, halfShare: number, limit: number): boolean {
  const relative = halfShare * (a + b);
  return Math.abs(a - b) > limit * (relative > floorMm ? relative : floorMm);
}

/** True when some measure shows that the farthest two of two groups are beyond the limit. */
function areBeyond(
  one: number,
  other: number,
  limit: number,
  { width, low, high, floorMm, halfShare, hasShares }: Groups,
): boolean {
  if (!hasShares) {
    for (let c = 0, i = one * width, j = other * width; c < width; c++, i++, j++) {
      const most = limit * floorMm[c]!;
      if (high[i]! - low[j]! > most || high[j]! - low[i]! > most) return true;
    }
    return false;
  }
  for (let c = 0, i = one * width, j = other * width; c < width; c++, i++, j++) {
    const floor = floorMm[c]!;
    const share = halfShare[c]!;
    const above = share * (high[i]! + low[j]!);
    if (high[i]! - low[j]! > limit * (above > floor ? above : floor)) return true;
    const below = share * (high[j]! + low[i]!);
    if (high[j]! - low[i]! > limit * (below > floor ? below : floor)) return true;
  }
  return false;
}

/** How far the farthest two of two groups are apart. */
function distanceOf(one: number, other: number, { width, low, high, floorMm, halfShare }: Groups): number {
  let worst = 0;
  for (let c = 0, i = one * width, j = other * width; c < width; c++, i++, j++) {
    const above = (high[i]! - low[j]!) / Math.max(floorMm[c]!, halfShare[c]! * (high[i]! + low[j]!));
    const below = (high[j]! - low[i]!) / Math.max(floorMm[c]!, halfShare[c]! * (high[j]! + low[i]!));
    if (above > worst) worst = above;
    if (below > worst) worst = below;
  }
  return roundDistance(worst);
}

function join(one: number, other: number, height: number, groups: Groups): Join {
  const { width, low, high, lowestItem, gaps } = groups;
  const kept = Math.min(one, other);
  const gone = Math.max(one, other);
  for (let c = 0, i = kept * width, j = gone * width; c < width; c++, i++, j++) {
    if (Number.isNaN(low[i]) || low[j]! < low[i]!) low[i] = low[j]!;
    if (Number.isNaN(high[i]) || high[j]! > high[i]!) high[i] = high[j]!;
  }
  const first = Math.min(lowestItem[kept]!, lowestItem[gone]!);
  const second = Math.max(lowestItem[kept]!, lowestItem[gone]!);
  lowestItem[kept] = first;
  if (gaps) {
    gaps.patternsOf[kept] = [...new Set([...gaps.patternsOf[kept]!, ...gaps.patternsOf[gone]!])];
  }
  remove(gone, groups);
  return { first, second, height };
}

/** Which readings figures lack, and which of these patterns can be compared. */
interface Gaps {
  /** By slot, the patterns of the members of its group. */
  readonly patternsOf: (readonly number[])[];
  /** By two patterns. */
  readonly areKnown: readonly (readonly boolean[])[];
}

/** `undefined` when nothing is missing. */
function gapsOf({ size, width, mm, isRequired }: Readings, figures: Int32Array): Gaps | undefined {
  if (width > 0 && !mm.some(Number.isNaN)) return undefined;
  const numbers = new Map<string, number>();
  const patterns: (readonly boolean[])[] = [];
  const patternOf = Array.from({ length: size }, (_, i) => {
    const has = Array.from(mm.subarray(i * width, (i + 1) * width), (reading) => !Number.isNaN(reading));
    const key = has.map(Number).join("");
    const number = numbers.get(key) ?? patterns.push(has) - 1;
    numbers.set(key, number);
    return number;
  });
  const areKnown = patterns.map((one) =>
    patterns.map((other) => {
      const both = one.map((has, c) => has && other[c]!);
      const lacksRequired = both.some((has, c) => !has && isRequired[c]!);
      return isKnown(both.filter(Boolean).length, width, lacksRequired);
    }),
  );
  return { patternsOf: Array.from(figures, (figure) => [patternOf[figure]!]), areKnown };
}

function areKnown(one: number, other: number, { gaps }: Groups): boolean {
  if (!gaps) return true;
  return gaps.patternsOf[one]!.every((i) => gaps.patternsOf[other]!.every((j) => gaps.areKnown[i]![j]!));
}
