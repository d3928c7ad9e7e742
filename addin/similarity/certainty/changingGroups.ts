import type { Chart } from "../../chart/chart.ts";
import { groupedBy } from "../../chart/groupedBy.ts";
import { toleranceMm } from "../../measures/toleranceMm.ts";
import type { Certainty } from "./certainty.ts";
import { certainty, groupCertainty } from "./certainty.ts";
import type { Sharing } from "./sharing.ts";
import { anyBody, sharingOf } from "./sharing.ts";
import type { ComparedColumn } from "../columns.ts";
import type { Grouping } from "../groups.ts";
import { numberOf } from "../groups.ts";
import { compareNames } from "../nameOrder.ts";
import { apart, isWithin } from "../pair.ts";
import { usualUncertainty } from "./uncertainty.ts";
import type { Uncertainty } from "./uncertainty.ts";

/** What of a grouping is not sure, given that readings are not exact. */
export interface ChangingGroups {
  /** The pairs on the fence, the most doubtful first, see `onTheFence`: at most as many as were asked for. */
  readonly pairs: readonly ChangingPair[];
  /** Number of all pairs on the fence. */
  readonly pairCount: number;
  /** The figures of those pairs, those in most pairs first, of equals the first name. */
  readonly figures: readonly FigureOnTheFence[];
  /** By group number: how probable it is that every two of the group share a body, see `groupCertainty`. */
  readonly certaintyOf: ReadonlyMap<number, number>;
}

export interface ChangingPair extends DoubtfulPair {
  /** What the readings say as they are: true when the two are within tolerance. */
  readonly areWithin: boolean;
  /** The groups of the two. */
  readonly groups: readonly [number, number];
  /** What would become of the groups if it were the other way round. */
  readonly change: GroupChange;
}

export interface FigureOnTheFence {
  readonly figure: string;
  readonly place: number;
  /** In how many pairs on the fence it is. */
  readonly pairs: number;
}

export type GroupChange =
  /** The group would fall in two: one figure of the pair with the members nearer to it, and the other with the rest. */
  | {
      readonly kind: "split";
      readonly group: number;
      readonly parts: readonly [readonly string[], readonly string[]];
    }
  /** The two groups could become one: no other pair keeps them apart. */
  | { readonly kind: "join"; readonly groups: readonly [number, number] }
  /** One of the two could go over to the group of the other; either of them where both are listed. */
  | { readonly kind: "move"; readonly moves: readonly Move[] }
  /** Nothing: the two are kept apart, or together, by others. */
  | { readonly kind: "none" };

export interface Move {
  readonly figure: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Which pairs of figures, which figures and which groups are in doubt, and what would change.
 *
 * The same whatever the order of rows, except where figures have the same name.
 *
 * @param columns see `comparedColumns`
 * @param grouping the group number of each figure in the order of the chart, or the rows of `sharedBodyGroups`
 * @param options.uncertainty of the readings; see `repeatedUncertainty` where readings were repeated
 * @param options.sharing how the pairs come about; learned from the chart when omitted
 * @param options.mostPairs for how many pairs to work out what would change; 200 when omitted
 */
export function changingGroups(
  chart: Chart,
  columns: readonly ComparedColumn[],
  grouping: Grouping,
  options: {
    readonly uncertainty?: Uncertainty | undefined;
    readonly sharing?: Sharing | undefined;
    readonly mostPairs?: number | undefined;
  } = {},
): ChangingGroups {
  const { uncertainty = usualUncertainty, mostPairs = 200 } = options;
  const sharing = options.sharing ?? sharingOf(chart, columns, uncertainty);
  const groupOf = (place: number) => numberOf(grouping, place);
  const membersOf = membersByGroup(chart, groupOf);
  const doubtful = onTheFence(chart, columns, uncertainty, sharing);
  const pairs = doubtful.slice(0, mostPairs).map((pair): ChangingPair => {
    const [i, j] = pair.places;
    const areWithin = isWithin(apart(columns, i, j).distance, 1);
    const groups = [groupOf(i), groupOf(j)] as const;
    return {
      ...pair,
      areWithin,
      groups,
      change: changeOf(chart, columns, { ...pair, areWithin, groups }, membersOf),
    };
  });
  return {
    pairs,
    pairCount: doubtful.length,
    figures: figuresOf(chart, doubtful),
    certaintyOf: new Map(
      [...membersOf].map(([number, members]) => [
        number,
        groupCertainty(columns, members, uncertainty, sharing),
      ]),
    ),
  };
}

type Members = ReadonlyMap<number, readonly number[]>;

/** The places of the members of each group, by group number, in the order of their names. */
function membersByGroup(chart: Chart, groupOf: (place: number) => number): Members {
  const order = chart.figures.map((_, place) => place).sort((a, b) => compareNames(chart, a, b));
  return new Map([...groupedBy(order, groupOf)].sort(([a], [b]) => a - b));
}

function changeOf(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { places: [i, j], areWithin, groups: [from, to] }: Omit<ChangingPair, "change">,
  membersOf: Members,
): GroupChange {
  if (areWithin !== (from === to)) return { kind: "none" };
  const names = (list: readonly number[]) => list.map((place) => chart.figures[place] ?? "");
  const ofI = membersOf.get(from) ?? [];
  if (areWithin) {
    const isNearerToI = (place: number) =>
      place === i || (place !== j && apart(columns, i, place).distance <= apart(columns, j, place).distance);
    const withI = ofI.filter(isNearerToI);
    const withJ = ofI.filter((place) => !withI.includes(place));
    return { kind: "split", group: from, parts: [names(withI), names(withJ)] };
  }
  const ofJ = membersOf.get(to) ?? [];
  const fits = (place: number, other: number) =>
    (place === i && other === j) || isWithin(apart(columns, place, other).distance, 1);
  if (ofI.every((place) => ofJ.every((other) => fits(place, other)))) {
    return { kind: "join", groups: from < to ? [from, to] : [to, from] };
  }
  const moves: Move[] = [];
  if (ofJ.every((other) => fits(i, other))) moves.push({ figure: names([i])[0] ?? "", from, to });
  if (ofI.every((place) => fits(place, j))) moves.push({ figure: names([j])[0] ?? "", from: to, to: from });
  return moves.length > 0 ? { kind: "move", moves } : { kind: "none" };
}

function figuresOf(chart: Chart, pairs: readonly DoubtfulPair[]): readonly FigureOnTheFence[] {
  const counts = new Map<number, number>();
  for (const place of pairs.flatMap(({ places }) => places)) counts.set(place, (counts.get(place) ?? 0) + 1);
  return [...counts]
    .sort(([a, ofA], [b, ofB]) => ofB - ofA || compareNames(chart, a, b))
    .map(([place, count]) => ({ figure: chart.figures[place] ?? "", place, pairs: count }));
}

/** Two figures of which it is not sure whether they share a body, though all needed readings are there. */
export interface DoubtfulPair extends Certainty {
  readonly figure: string;
  readonly other: string;
  /** Where the two stand in the chart, from 0. */
  readonly places: readonly [number, number];
}

/** A pair is in doubt when its probability lies between this and 1 less this. The project’s own starting value. */
export const surelyNot = 0.05;
/** A difference that is so many uncertainties beyond its tolerance is beyond it, whatever else the chart teaches. */
const surelyBeyond = 8;

/**
 * The pairs on the fence, the most doubtful first; of equal ones the first by name. The first figure of a pair is the first
 * by name. Pairs that are too far apart in one measure are passed over before probabilities are worked out.
 *
 * @param columns see `comparedColumns`
 */
export function onTheFence(
  chart: Chart,
  columns: readonly ComparedColumn[],
  uncertainty: Uncertainty = usualUncertainty,
  sharing: Sharing = anyBody,
): readonly DoubtfulPair[] {
  const order = chart.figures.map((_, i) => i).sort((i, j) => compareNames(chart, i, j));
  const pairs: DoubtfulPair[] = [];
  for (const [at, i] of order.entries()) {
    for (const j of order.slice(at + 1)) {
      if (isSurelyNot(columns, i, j, uncertainty)) continue;
      const found = certainty(columns, i, j, uncertainty, sharing);
      if (found.probability > surelyNot && found.probability < 1 - surelyNot) {
        pairs.push({ figure: chart.figures[i]!, other: chart.figures[j]!, places: [i, j], ...found });
      }
    }
  }
  return pairs.sort((a, b) => Math.abs(a.probability - 0.5) - Math.abs(b.probability - 0.5));
}

/** True when one measure alone makes it less probable than `surelyNot`. */
function isSurelyNot(
  columns: readonly ComparedColumn[],
  i: number,
  j: number,
  uncertainty: Uncertainty,
): boolean {
  for (const compared of columns) {
    const a = compared.column.mm[i]!;
    const b = compared.column.mm[j]!;
    const beyond = Math.abs(a - b) - toleranceMm(compared.tolerance, a, b);
    if (!(beyond > 0)) continue;
    const ofA = uncertainty(compared, a, i);
    const ofB = uncertainty(compared, b, j);
    if (beyond * beyond > surelyBeyond * surelyBeyond * (ofA * ofA + ofB * ofB)) return true;
  }
  return false;
}
