import type { Chart } from "../chart/chart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import type { Grouping } from "./grouping.ts";
import { numberOf } from "./grouping.ts";
import { nameOrder } from "./nameOrder.ts";
import { silhouette } from "./silhouette.ts";
import { toleranceDistances } from "./toleranceDistances.ts";

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
  const byGroup = new Map<number, number[]>();
  order.forEach((place, item) => {
    const width = found.widths[item]!;
    widths[place] = width;
    neighbours[place] = found.neighbours[item]!;
    const group = byGroup.get(numbers[item]!) ?? [];
    if (!Number.isNaN(width)) group.push(width);
    byGroup.set(numbers[item]!, group);
  });
  const ofGroup = new Map([...byGroup].map(([number, list]) => [number, meanOf(list)]));
  return { widths, neighbours, ofGroup, mean: found.mean };
}

function meanOf(list: readonly number[]): number {
  return list.reduce((sum, width) => sum + width, 0) / list.length;
}
