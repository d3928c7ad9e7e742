import type { Chart } from "../chart/chart.ts";
import type { Apart } from "./apart.ts";
import { apart } from "./apart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { cutAt } from "./cut.ts";
import { bondOf } from "./groupMembers.ts";
import type { LinkageMethod } from "./linkage.ts";
import { linkageInPlace } from "./linkage.ts";
import type { NameOrder } from "./nameOrder.ts";
import { nameOrder } from "./nameOrder.ts";
import { toleranceDistances } from "./toleranceDistances.ts";

/** A figure and the group of figures that it shares a body with. */
export interface GroupedFigure {
  readonly figure: string;
  /** From 1: larger groups first, groups of one size by their first name. */
  readonly group: number;
  /** Number of figures in the group. */
  readonly size: number;
  /** The figure of the group that is nearest to all others, see `medoid`; of equals the first name. */
  readonly base: string;
  /** The measure in which two figures of the group differ most; absent when none differ. */
  readonly worst?: ComparedColumn;
  /** How much of its tolerance that difference uses: 1 is all of it. NaN for a figure by itself. */
  readonly ofTolerance: number;
  /** How far this figure is from the base figure, the base figure’s readings first. */
  readonly fromBase: Apart;
}

/**
 * Figures that share a body: a clustering by tolerance distance, cut where all of the tolerance is used. With
 * `complete` linkage every two figures of a group are within tolerance in every compared measure.
 *
 * The result does not depend on the order of rows or columns, except where figures have the same name or measures are
 * equally bad.
 *
 * @param columns see `comparedColumns`
 * @returns one row a figure, in the order of the chart
 * @throws {InputError} when there are too many figures
 */
export function sharedBodyGroups(
  chart: Chart,
  columns: readonly ComparedColumn[],
  method: LinkageMethod = "complete",
): readonly GroupedFigure[] {
  const size = chart.figures.length;
  const named = nameOrder(chart, columns);
  const merges = linkageInPlace(toleranceDistances(named.columns, size), method);
  return groupedFigures(chart, named, cutAt(merges, size, 1));
}

/**
 * What each group has in common, whatever it was found by.
 *
 * @param named the figures of the chart in the order of their names
 * @param numbers the group of each figure, in that order; any numbers from 0 or 1
 * @returns one row a figure, in the order of the chart
 */
export function groupedFigures(
  chart: Chart,
  named: NameOrder,
  numbers: Int32Array,
): readonly GroupedFigure[] {
  const result: GroupedFigure[] = new Array<GroupedFigure>(chart.figures.length);
  largestFirst(numbers).forEach((members, index) => {
    const {
      base,
      farthest: { worst, distance },
    } = bondOf(named.columns, members);
    for (const item of members) {
      result[named.order[item]!] = {
        figure: figureAt(chart, named.order, item),
        group: index + 1,
        size: members.length,
        base: figureAt(chart, named.order, base),
        ...(worst && { worst }),
        ofTolerance: members.length === 1 ? Number.NaN : distance,
        fromBase: apart(named.columns, base, item),
      };
    }
  });
  return result;
}

/** The items of each group: larger groups first; groups of one size by their first item. */
export function largestFirst(numbers: Int32Array): readonly (readonly number[])[] {
  const groups = new Map<number, number[]>();
  numbers.forEach((number, item) => {
    const items = groups.get(number) ?? [];
    groups.set(number, items);
    items.push(item);
  });
  return [...groups.values()].sort((a, b) => b.length - a.length);
}

function figureAt(chart: Chart, order: readonly number[], item: number): string {
  return chart.figures[order[item] ?? -1] ?? "";
}
