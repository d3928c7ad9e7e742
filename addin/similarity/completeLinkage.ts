import type { Join } from "./linkage.ts";
import { inOrder } from "./linkage.ts";
import { sweepOrder, withRounding } from "./neighbours.ts";
import type { Readings } from "./pair.ts";
import { isKnown, isWithin, roundDistance } from "./pair.ts";
import type { RoughBounds } from "./roughBounds.ts";
import { abreast, bothNear, fillOwn, roughBounds, widen } from "./roughBounds.ts";

/**
 * The joins of complete linkage by the worst difference in tolerances, up to a reach, without the distances of all pairs.
 *
 * A group is as far from another as its farthest member. A difference in tolerances grows with the difference in mm, so in each
 * measure that is the smallest reading of one group against the largest of the other: the smallest and the largest
 * readings of a group are all that has to be kept of it. The groups stand in the order of one measure, and a search for the
 * nearest looks only at those that are in it within the nearest found so far; every member of a group within reach is
 * within reach of every member of the other, so that one member of each can stand for its group there. Whole numbers tell which of
 * these are surely too far, see `roughBounds`.
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
  const chain: Link[] = [];
  for (;;) {
    if (chain.length === 0) {
      const first = groups.next[groups.size]!;
      if (first === groups.size) return joins.sort(inOrder);
      chain.push({ slot: first, fromPrevious: reach, near: undefined });
    }
    const tip = chain.at(-1)!;
    const previous = chain.at(-2)?.slot;
    const nearest = nearestTo(tip, previous, groups);
    if (nearest.slot < 0) {
      chain.pop();
      remove(tip.slot, groups);
    } else if (nearest.slot === previous) {
      chain.length -= 2;
      joins.push(join(tip.slot, previous, nearest.distance, groups));
    } else {
      chain.push({ slot: nearest.slot, fromPrevious: nearest.distance, near: undefined });
    }
  }
}

/** A group of the chain. */
interface Link {
  readonly slot: number;
  /** How far it is from the one before it in the chain; the reach for the first. */
  readonly fromPrevious: number;
  /**
   * All that were as near to it as the one before it in the chain, once they have been looked for. Groups only ever come to be farther
   * apart, so that nothing else can be nearer to it while it is in the chain.
   */
  near: readonly number[] | undefined;
}

/** A longer list is not kept: in a long chain they could take more memory than all pairs. */
const mostKept = 100;

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
  /** By slot the reading of that measure; of a group, that of one member. */
  readonly along: Float64Array;
  readonly alongFloorMm: number;
  readonly alongHalfShare: number;
  /** The smallest and the largest reading of each group, slot by slot; NaN where it has none. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly floorMm: Float64Array;
  readonly halfShare: Float64Array;
  /** The same roughly, to pass over those that are surely too far. */
  readonly rough: RoughBounds;
  /** Of the group that is being looked from, see `fillOwn`. */
  readonly own: Int32Array;
  readonly lowestItem: Int32Array;
  readonly gaps: Gaps | undefined;
}

function start(readings: Readings, reach: number): Groups {
  const { size, width, mm, floorMm, halfShare } = readings;
  const { column, columns: telling, figures, sorted } = sweepOrder(readings, reach);
  // What the order has told need not be asked again but at last.
  const columns = Int32Array.of(
    ...telling.filter((c) => c !== column),
    ...telling.filter((c) => c === column),
  );
  const low = new Float64Array(size * width);
  const along = new Float64Array(size);
  for (let slot = 0; slot < size; slot++) {
    const from = figures[slot]! * width;
    for (let c = 0, at = slot * width; c < width; c++, at++) low[at] = mm[from + columns[c]!]!;
    along[slot] = mm[from + column]!;
  }
  const rough = roughBounds(readings, figures, columns);
  return {
    size,
    width,
    next: Int32Array.from({ length: size + 1 }, (_, slot) => (slot + 1) % (size + 1)),
    before: Int32Array.from({ length: size + 1 }, (_, slot) => (slot + size) % (size + 1)),
    sorted,
    along,
    alongFloorMm: floorMm[column] ?? 0,
    alongHalfShare: halfShare[column] ?? 0,
    low,
    high: low.slice(),
    floorMm: Float64Array.from(columns, (c) => floorMm[c]!),
    halfShare: Float64Array.from(columns, (c) => halfShare[c]!),
    rough,
    own: new Int32Array(Math.ceil(width / abreast) * abreast),
    lowestItem: figures,
    gaps: gapsOf(readings, figures),
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
 * @param previous the group before it in the chain
 */
function nearestTo(link: Link, previous: number | undefined, groups: Groups): Nearest {
  const { size, sorted, next, before } = groups;
  const tip = link.slot;
  const nearest: Nearest = {
    slot: previous ?? -1,
    distance: link.fromPrevious,
    limit: withRounding(link.fromPrevious),
  };
  if (link.near) {
    for (const slot of link.near) if (next[before[slot]!] === slot) consider(slot, tip, nearest, groups);
    return nearest;
  }
  const near: number[] | undefined = previous === undefined ? undefined : [];
  const search: Search = { tip, limit: nearest.limit, nearest, near };
  fillOwn(groups.rough, tip, search.limit, groups.own);
  if (tip < sorted) {
    const begin = beginOf(tip, search.limit, groups);
    const end = endOf(tip, search.limit, groups);
    scan(before[tip]!, before, begin, end, search, groups);
    scan(next[tip]!, next, begin, end, search, groups);
    scan(before[size]!, before, sorted, size, search, groups);
  } else {
    scan(before[tip]!, before, 0, size, search, groups);
    scan(next[tip]!, next, 0, size, search, groups);
  }
  if (near && near.length <= mostKept) link.near = near;
  return nearest;
}

/** The first slot that is within the limit by the measure of their order. */
function beginOf(tip: number, limit: number, groups: Groups): number {
  let begin = 0;
  let within = tip;
  while (begin < within) {
    const middle = (begin + within) >> 1;
    if (isBeyond(tip, middle, limit, groups)) begin = middle + 1;
    else within = middle;
  }
  return begin;
}

/** The slot behind the last that is. */
function endOf(tip: number, limit: number, groups: Groups): number {
  let within = tip;
  let end = groups.sorted;
  while (within + 1 < end) {
    const middle = (within + end) >> 1;
    if (isBeyond(tip, middle, limit, groups)) end = middle;
    else within = middle;
  }
  return end;
}

function isBeyond(one: number, other: number, limit: number, groups: Groups): boolean {
  const { along, alongFloorMm, alongHalfShare } = groups;
  const a = along[one]!;
  const b = along[other]!;
  return Math.abs(a - b) > limit * Math.max(alongFloorMm, alongHalfShare * (a + b));
}

interface Search {
  readonly tip: number;
  /** Nothing beyond it is looked at. */
  limit: number;
  readonly nearest: Nearest;
  /** Gets all within the limit. Without it the limit becomes that of the nearest so far. */
  readonly near: number[] | undefined;
}

/** Looks along a list of slots, while they are from `begin` to before `end`. */
function scan(
  from: number,
  list: Int32Array,
  begin: number,
  end: number,
  search: Search,
  groups: Groups,
): void {
  const { tip, nearest, near } = search;
  for (;;) {
    const slot = nextNear(from, list, begin, end, groups);
    if (slot < 0) return;
    consider(slot, tip, nearest, groups);
    if (near) near.push(slot);
    else if (nearest.limit < search.limit) {
      search.limit = nearest.limit;
      fillOwn(groups.rough, tip, search.limit, groups.own);
    }
    from = list[slot]!;
  }
}

/**
 * The first slot on a list that may be within the limit, or −1. Most of the time of a tree is spent here: eight measures are
 * asked at once, since a processor cannot foresee which measure tells.
 */
function nextNear(
  from: number,
  list: Int32Array,
  begin: number,
  end: number,
  { size, rough, own }: Groups,
): number {
  const { bounds } = rough;
  const o0 = own[0]!;
  const o1 = own[1]!;
  const o2 = own[2]!;
  const o3 = own[3]!;
  const o4 = own[4]!;
  const o5 = own[5]!;
  const o6 = own[6]!;
  const o7 = own[7]!;
  for (let slot = from; slot >= begin && slot < end; slot = list[slot]!) {
    const at = slot << 3;
    const near =
      (o0 + bounds[at]!) &
      (o1 + bounds[at | 1]!) &
      (o2 + bounds[at | 2]!) &
      (o3 + bounds[at | 3]!) &
      (o4 + bounds[at | 4]!) &
      (o5 + bounds[at | 5]!) &
      (o6 + bounds[at | 6]!) &
      (o7 + bounds[at | 7]!);
    if ((near & bothNear) === bothNear && areNear(at, size, bounds, own)) return slot;
  }
  return -1;
}

function areNear(first: number, size: number, bounds: Int32Array, own: Int32Array): boolean {
  for (let at = first + size * abreast, o = abreast; o < own.length; at += size * abreast, o += abreast) {
    let near = bothNear;
    for (let c = 0; c < abreast; c++) near &= own[o + c]! + bounds[at + c]!;
    if (near !== bothNear) return false;
  }
  return true;
}

function consider(slot: number, tip: number, nearest: Nearest, groups: Groups): void {
  const { lowestItem } = groups;
  const distance = distanceOf(tip, slot, nearest.limit, groups);
  if (!(nearest.slot < 0 ? isWithin(distance, nearest.distance) : distance <= nearest.distance)) return;
  const isEqual = nearest.slot >= 0 && distance === nearest.distance;
  if (isEqual && lowestItem[slot]! > lowestItem[nearest.slot]!) return;
  if (!areKnown(tip, slot, groups)) return;
  nearest.slot = slot;
  nearest.distance = distance;
  nearest.limit = withRounding(distance);
}

/** How far the farthest two of two groups are apart; infinite once a measure shows that it is beyond a limit. */
function distanceOf(
  one: number,
  other: number,
  limit: number,
  { width, low, high, floorMm, halfShare }: Groups,
): number {
  let worst = 0;
  for (let c = 0, i = one * width, j = other * width; c < width; c++, i++, j++) {
    const above = (high[i]! - low[j]!) / Math.max(floorMm[c]!, halfShare[c]! * (high[i]! + low[j]!));
    const below = (high[j]! - low[i]!) / Math.max(floorMm[c]!, halfShare[c]! * (high[j]! + low[i]!));
    if (above > worst) worst = above;
    if (below > worst) worst = below;
    if (worst > limit) return Infinity;
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
  widen(groups.rough, kept, gone);
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
  if (width > 0 && !hasGap(mm)) return undefined;
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

function hasGap(mm: Float64Array): boolean {
  for (const reading of mm) if (Number.isNaN(reading)) return true;
  return false;
}
