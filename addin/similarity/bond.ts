import type { ComparedColumn } from "./columns.ts";
import type { Apart, Readings } from "./pair.ts";
import { apart, distanceBetween } from "./pair.ts";
import { rangeOf, worstFrom } from "./range.ts";

/** What holds the members of one group together. */
export interface Bond {
  /**
   * The member that stands nearest to all others (the medoid): the one with the least distance to its farthest, then with the
   * least sum of distances, then the one that is listed first. Pairs that are not known count as farthest.
   */
  readonly base: number;
  /** The two members that are farthest apart, of equals the first pair; a member by itself twice. */
  readonly pair: readonly [number, number];
  /** How far those two are apart. */
  readonly farthest: Apart;
}

/**
 * The base figure of a group and the pair that is nearest to its limit. Time grows with the members, and with the square of
 * those that could be the base; where readings are missing, with the square of all members.
 *
 * @param readings of the same columns
 * @param members where each member stands in the columns, from 0; at least one
 */
export function bondOf(
  columns: readonly ComparedColumn[],
  readings: Readings,
  members: readonly number[],
): Bond {
  const between = (one: number, other: number): number => {
    const distance = distanceBetween(readings, one, other);
    return Number.isNaN(distance) ? Infinity : distance;
  };
  const farthest = farthestOf(readings, members, between);
  const least = farthest.reduce((a, b) => Math.min(a, b), Infinity);
  const nearest = members.filter((_, at) => farthest[at] === least);
  const sums = nearest.map((one) =>
    nearest.length === 1 || least === 0 ? 0 : members.reduce((sum, other) => sum + between(one, other), 0),
  );
  const leastSum = sums.reduce((a, b) => Math.min(a, b), Infinity);
  const pair = farthestPair(readings, members, farthest);
  return { base: nearest[sums.indexOf(leastSum)]!, pair, farthest: apart(columns, ...pair) };
}

/** How far each member is from the one that is farthest from it. */
function farthestOf(
  readings: Readings,
  members: readonly number[],
  between: (one: number, other: number) => number,
): readonly number[] {
  if (members.some((member) => hasGap(readings, member))) {
    return members.map((one) =>
      members.reduce((most, other) => (one === other ? most : Math.max(most, between(one, other))), 0),
    );
  }
  const range = rangeOf(readings, members);
  return members.map((member) => worstFrom(range, readings, member));
}

/** The first pair at the greatest distance that is known; the first member twice where none differ. */
function farthestPair(
  readings: Readings,
  members: readonly number[],
  farthest: readonly number[],
): readonly [number, number] {
  const most = farthest.reduce((a, b) => Math.max(a, b), 0);
  const isKnown = most < Infinity;
  let found: readonly [number, number] = [members[0]!, members[0]!];
  if (most === 0) return found;
  let far = 0;
  for (let i = 0; i < members.length; i++) {
    if (isKnown && farthest[i] !== most) continue;
    for (let j = i + 1; j < members.length; j++) {
      const distance = distanceBetween(readings, members[i]!, members[j]!);
      if (distance > far) {
        far = distance;
        found = [members[i]!, members[j]!];
      }
    }
    if (isKnown) return found;
  }
  return found;
}

function hasGap({ width, mm }: Readings, item: number): boolean {
  for (let at = item * width; at < (item + 1) * width; at++) if (Number.isNaN(mm[at])) return true;
  return width === 0;
}
