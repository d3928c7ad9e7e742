import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import type { Apart, Readings } from "./pair.ts";
import { rangeOf, worstFrom } from "./range.ts";
import { apart, isWithin, readingsOf } from "./pair.ts";
import { bondOf } from "./bond.ts";
import type { ComparedColumn } from "./columns.ts";
import type { Difference } from "./differenceWords.ts";
import type { Grouping } from "./groups.ts";
import { numberOf } from "./groups.ts";
import { nameOrder } from "./nameOrder.ts";

/** What is to be said of one group of figures. Figures are named; `places` tells those of one name apart. */
export interface GroupCard {
  /** The number of the group as it was given. */
  readonly number: number;
  /** The members in the order of their names. */
  readonly figures: readonly string[];
  /** Where each of them stands in the chart, from 0. */
  readonly places: readonly number[];
  /** The member nearest to all others, of equals the first name. */
  readonly base: string;
  /** The pair of members that is farthest apart, and the measure of it. Absent where no two differ. */
  readonly binding?: PairDifference;
  /** The figure of another group that comes nearest to joining this one. Absent where no figure can be compared with all. */
  readonly outsider?: Outsider;
  /**
   * Figures of other groups that may belong here too: in what can be compared, at least one measure, nothing keeps them
   * out, but readings are missing. In the order of their names.
   */
  readonly perhaps: readonly string[];
}

/** A measure in which `other` is larger or smaller than `figure`, see `differenceWords`. */
export interface PairDifference extends Difference {
  readonly figure: string;
  readonly other: string;
}

/** A figure that is not of the group: `other` is the outsider, `figure` the member that it differs most from. */
export interface Outsider {
  readonly figure: string;
  /** Its own group. */
  readonly group: number;
  /**
   * What keeps it out: its worst difference from any member. At most one tolerance when nothing does, and the figure
   * only sits better in its own group. Absent when it differs from no member at all.
   */
  readonly keptOutBy?: PairDifference;
}

/**
 * A card for each group of a grouping, by number.
 *
 * The nearest outsider is the figure whose worst difference from any member is least, since every two of a group are to be
 * within tolerance; of equals the first name. Time grows with figures × groups × measures, less where a figure is soon
 * too far, and within a group with the square of its members: one to two seconds for 5,000 figures × 20 measures.
 *
 * The same whatever the order of rows, except where figures have the same name.
 *
 * @param columns see `comparedColumns`
 * @param grouping the group number of each figure in the order of the chart, or the rows of `sharedBodyGroups`
 */
export function groupCards(
  chart: Chart,
  columns: readonly ComparedColumn[],
  grouping: Grouping,
): readonly GroupCard[] {
  const { order, columns: named } = nameOrder(chart, columns);
  const numbers = Int32Array.from(order, (place) => numberOf(grouping, place));
  const hasGap = Array.from(order, (_, item) =>
    named.some(({ column }) => Number.isNaN(column.mm[item] ?? Number.NaN)),
  );
  const readings = readingsOf(named, numbers.length);
  const grouped = { columns: named, readings, numbers, hasGap };
  const nameAt = (item: number): string => chart.figures[order[item] ?? -1] ?? "";
  const pairDifference = (a: number, b: number, { worst, distance, deltaMm }: Apart) => ({
    figure: nameAt(a),
    other: nameAt(b),
    column: worst ? columnIn(chart, worst) : undefined,
    deltaMm: deltaMm ?? 0,
    ofTolerance: distance,
  });

  return [...membersByNumber(numbers)].map(([number, members]) => {
    const { base, pair, farthest } = bondOf(named, readings, members);
    const { outsider, perhaps } = outsidersOf(grouped, number, members);
    const binding = withColumn(pairDifference(...pair, farthest));
    const keptOutBy = outsider && withColumn(pairDifference(outsider.member, outsider.item, outsider.found));
    return {
      number,
      figures: members.map(nameAt),
      places: members.map((item) => order[item]!),
      base: nameAt(base),
      ...(binding && { binding }),
      ...(outsider && {
        outsider: {
          figure: nameAt(outsider.item),
          group: numbers[outsider.item]!,
          ...(keptOutBy && { keptOutBy }),
        },
      }),
      perhaps: perhaps.map(nameAt),
    };
  });
}

function membersByNumber(numbers: Int32Array): ReadonlyMap<number, readonly number[]> {
  return new Map([...groupedBy(numbers.keys(), (item) => numbers[item]!)].sort(([a], [b]) => a - b));
}

/** The chart’s own column, whose readings are in the order of the chart. */
function columnIn(chart: Chart, { column }: ComparedColumn): MeasureColumn {
  return chart.measures.find(({ position }) => position === column.position) ?? column;
}

function withColumn<T extends { readonly column: MeasureColumn | undefined }>(
  difference: T,
): (T & { readonly column: MeasureColumn }) | undefined {
  const { column } = difference;
  return column && { ...difference, column };
}

interface Grouped {
  readonly columns: readonly ComparedColumn[];
  readonly readings: Readings;
  readonly numbers: Int32Array;
  readonly hasGap: readonly boolean[];
}

interface Found {
  /** The outsider, the member that it differs most from, and how far the two are apart. */
  readonly item: number;
  readonly member: number;
  readonly found: Apart;
}

/** The nearest outsider of a group, and the figures that may belong to it. */
function outsidersOf(
  { columns, readings, numbers, hasGap }: Grouped,
  number: number,
  members: readonly number[],
): { readonly outsider: Found | undefined; readonly perhaps: readonly number[] } {
  const range = rangeOf(readings, members);
  const memberHasGap = members.some((item) => hasGap[item]);
  const perhaps: number[] = [];
  let nearest: number | undefined;
  let least = Infinity;
  for (let item = 0; item < numbers.length; item++) {
    if (numbers[item] === number) continue;
    // A figure with gaps is followed up to one tolerance in any case: it may belong to the group.
    const mayBeUnknown = memberHasGap || hasGap[item] === true;
    const worst = worstFrom(range, readings, item, mayBeUnknown ? Math.max(least, 1) : least);
    if (!(worst < Infinity)) continue;
    if (mayBeUnknown && members.some((member) => Number.isNaN(apart(columns, member, item).distance))) {
      if (isWithin(worst, 1)) perhaps.push(item);
    } else if (worst < least) {
      least = worst;
      nearest = item;
    }
  }
  return { outsider: nearest === undefined ? undefined : farthestFrom(columns, nearest, members), perhaps };
}

/** The member that an item differs most from, of equals the first. */
function farthestFrom(columns: readonly ComparedColumn[], item: number, members: readonly number[]): Found {
  let farthest: Found | undefined;
  for (const member of members) {
    const found = apart(columns, member, item);
    if (!farthest || found.distance > farthest.found.distance) farthest = { item, member, found };
  }
  return farthest!;
}
