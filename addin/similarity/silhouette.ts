import type { Chart } from "../chart/chart.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import type { ComparedColumn } from "./columns.ts";
import type { Grouping } from "./groups.ts";
import { numberOf } from "./groups.ts";
import type { Condensed } from "./matrix.ts";
import { pairIndex, toleranceDistances } from "./matrix.ts";
import { nameOrder } from "./nameOrder.ts";

/** How well each figure sits in its group, by the distances in tolerances. */
export interface GroupSilhouette {
  /**
   * By figure, in the order of the chart: 1 sits far from all other groups, 0 as near to another group as to its own,
   * below 0 nearer to another. 0 for a figure by itself. NaN where nothing is known to say.
   */
  readonly widths: Float64Array;
  /** By figure, the number of the nearest other group, of equals the first; 0 where none is known. */
  readonly neighbours: Int32Array;
  /** The mean of the widths that are known in each group, by its number. */
  readonly ofGroup: ReadonlyMap<number, number>;
  /** The mean of all widths that are known. */
  readonly mean: number;
}

/**
 * Silhouette of a grouping of a chart. Pairs whose distance is not known are left out, and a figure by itself has width 0.
 *
 * Source: P. J. Rousseeuw, Silhouettes, Journal of Computational and Applied Mathematics 20 (1987), 53–65; so is the rule
 * for groups of one. That for unknown pairs is the project’s own.
 *
 * @param columns see `comparedColumns`
 * @param grouping the group number of each figure in the order of the chart, or the rows of `sharedBodyGroups`
 * @throws {InputError} when there are too many figures
 */
export function groupSilhouette(
  chart: Chart,
  columns: readonly ComparedColumn[],
  grouping: Grouping,
): GroupSilhouette {
  const { order, columns: named } = nameOrder(chart, columns);
  const numbers = Int32Array.from(order, (place) => numberOf(grouping, place));
  const found = silhouette(toleranceDistances(named, order.length), numbers);
  const widths = new Float64Array(order.length);
  const neighbours = new Int32Array(order.length);
  order.forEach((place, item) => {
    widths[place] = found.widths[item]!;
    neighbours[place] = found.neighbours[item]!;
  });
  const known = (items: readonly number[]) =>
    items.map((item) => found.widths[item]!).filter((width) => !Number.isNaN(width));
  const byGroup = groupedBy(order.keys(), (item) => numbers[item]!);
  const ofGroup = new Map([...byGroup].map(([number, items]) => [number, meanOf(known(items))]));
  return { widths, neighbours, ofGroup, mean: found.mean };
}

function meanOf(list: readonly number[]): number {
  return list.reduce((sum, width) => sum + width, 0) / list.length;
}

/** How well items sit in their groups (Rousseeuw 1987). */
export interface Silhouette {
  /** One width an item, from −1 (belongs elsewhere) to 1 (far from all other groups); 0 for an item by itself. */
  readonly widths: Float64Array;
  /** The nearest other group of each item, of equals the first number; 0 where none is known. */
  readonly neighbours: Int32Array;
  /** The mean of the widths that are known. */
  readonly mean: number;
}

/**
 * Silhouette of a grouping: (b − a) / max(a, b), with a the mean distance of an item to its own group and b the least mean
 * distance to another group. Pairs that are not known are left out of the means; a width without any mean to rest
 * on, and every width when there is only one group, is NaN. Time grows with the square of the number of items.
 *
 * @param groups group number of each item, from 1, see `cutAt`
 */
export function silhouette(distances: Condensed, groups: Int32Array): Silhouette {
  const means = createMeans(groups.reduce((most, group) => Math.max(most, group), 0));
  const widths = new Float64Array(groups.length);
  const neighbours = new Int32Array(groups.length);
  for (let item = 0; item < groups.length; item++) {
    const { width, neighbour } = seatOf(distances, groups, item, means);
    widths[item] = width;
    neighbours[item] = neighbour;
  }
  const known = widths.filter((width) => !Number.isNaN(width));
  return { widths, neighbours, mean: known.reduce((sum, width) => sum + width, 0) / known.length };
}

/** Sums and numbers of the known distances to each group, used again for every item. */
interface Means {
  readonly sums: Float64Array;
  readonly counts: Int32Array;
}

function createMeans(groupCount: number): Means {
  return { sums: new Float64Array(groupCount + 1), counts: new Int32Array(groupCount + 1) };
}

function seatOf(
  distances: Condensed,
  groups: Int32Array,
  item: number,
  { sums, counts }: Means,
): { readonly width: number; readonly neighbour: number } {
  sums.fill(0);
  counts.fill(0);
  const { size, values } = distances;
  let isAlone = true;
  // Along the column of the item down to its row, then along that row, see `pairIndex`.
  for (let other = 0, at = item - 1; other < size; other++) {
    if (other === item) {
      at = pairIndex(size, item, item + 1);
      continue;
    }
    const group = groups[other]!;
    if (group === groups[item]) isAlone = false;
    const distance = values[at]!;
    at += other < item ? size - other - 2 : 1;
    if (Number.isNaN(distance)) continue;
    sums[group]! += distance;
    counts[group]!++;
  }
  let own = Number.NaN;
  let others = Infinity;
  let neighbour = 0;
  for (let group = 0; group < sums.length; group++) {
    if (counts[group] === 0) continue;
    const mean = sums[group]! / counts[group]!;
    if (group === groups[item]) own = mean;
    else if (mean < others) {
      others = mean;
      neighbour = group;
    }
  }
  if (neighbour === 0) return { width: Number.NaN, neighbour };
  if (isAlone) return { width: 0, neighbour };
  return { width: own === others ? 0 : (others - own) / Math.max(own, others), neighbour };
}
