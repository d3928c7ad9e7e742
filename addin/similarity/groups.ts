import type { Chart } from "../chart/chart.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import type { Apart } from "./pair.ts";
import { apart, readingsOf } from "./pair.ts";
import { bondOf } from "./bond.ts";
import { InputError } from "../measures/inputError.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import type { ComparedColumn } from "./columns.ts";
import { columnsOfZone } from "./columns.ts";
import { cutAt } from "./cut.ts";
import type { LinkageMethod } from "./linkage.ts";

import type { NameOrder } from "./nameOrder.ts";
import { nameOrder } from "./nameOrder.ts";
import { figureMerges } from "./tree.ts";

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

/** More would hold the workbook up for longer than Excel bears, which is five seconds. */
export const mostGrouped = 100_000;

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
  if (size > mostGrouped) {
    throw new InputError(
      `The chart has ${String(size)} figures. Groups can be found among at most ${String(mostGrouped)} at a time: give a part of the chart.`,
    );
  }
  const named = nameOrder(chart, columns);
  return groupedFigures(chart, named, cutAt(figureMerges(named.columns, size, method, 1), size, 1));
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
  const readings = readingsOf(named.columns, chart.figures.length);
  largestFirst(numbers).forEach((members, index) => {
    const {
      base,
      farthest: { worst, distance },
    } = bondOf(named.columns, readings, members);
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

/** The number of the group of each figure of the chart by its body; every figure alone where nothing can be compared. */
export function groupsOf(chart: Chart, tolerances: ToleranceTable | undefined): readonly number[] {
  const columns = columnsOfZone(chart, "body", tolerances);
  if (columns.length === 0) return chart.figures.map((_, at) => at);
  return sharedBodyGroups(chart, columns).map(({ group }) => group);
}

/** The figures at some places by the numbers of their groups: bodies in the order of their first figure. */
export function bodiesBy(
  groups: readonly number[],
  places: readonly number[],
): readonly (readonly number[])[] {
  return [...groupedBy(places, (place) => groups[place] ?? 0).values()];
}

/** A grouping of the figures of a chart: a group number for each, in the order of the chart. */
export type Grouping = Int32Array | readonly Pick<GroupedFigure, "group">[];

/** The group number of the figure that stands at a place in the chart, from 0. */
export function numberOf(grouping: Grouping, place: number): number {
  const given = grouping[place];
  return typeof given === "number" ? given : (given?.group ?? 0);
}

/** The items of each group: larger groups first; groups of one size by their first item. */
export function largestFirst(numbers: Int32Array): readonly (readonly number[])[] {
  return [...groupedBy(numbers.keys(), (item) => numbers[item]).values()].sort((a, b) => b.length - a.length);
}

function figureAt(chart: Chart, order: readonly number[], item: number): string {
  return chart.figures[order[item] ?? -1] ?? "";
}
