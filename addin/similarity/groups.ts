import type { Chart } from "../chart/chart.ts";
import type { Apart } from "./apart.ts";
import { apart } from "./apart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { pairDistance } from "./condensed.ts";
import { cutAt } from "./cut.ts";
import type { LinkageMethod } from "./linkage.ts";
import { linkage } from "./linkage.ts";
import { medoid } from "./medoid.ts";
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
  const distances = toleranceDistances(named.columns, size);
  const groups = membersOf(cutAt(linkage(distances, method), size, 1));

  const result: GroupedFigure[] = new Array<GroupedFigure>(size);
  groups.forEach((members, index) => {
    const [i, j] = farthestPair(distances, members);
    const { worst, distance } = apart(named.columns, i, j);
    const base = medoid(distances, members);
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

/** Larger groups first; groups of one size by their first item. */
function membersOf(numbers: Int32Array): readonly (readonly number[])[] {
  const groups: number[][] = [];
  numbers.forEach((number, item) => (groups[number - 1] ??= []).push(item));
  return groups.sort((a, b) => b.length - a.length);
}

/** The first of the pairs that are farthest apart; twice the same item in a group of one. */
function farthestPair(distances: Condensed, members: readonly number[]): readonly [number, number] {
  let farthest: readonly [number, number] = [members[0]!, members[0]!];
  let most = 0;
  members.forEach((i, at) => {
    for (const j of members.slice(at + 1)) {
      const distance = pairDistance(distances, i, j);
      if (distance > most) {
        most = distance;
        farthest = [i, j];
      }
    }
  });
  return farthest;
}

function figureAt(chart: Chart, order: readonly number[], item: number): string {
  return chart.figures[order[item] ?? -1] ?? "";
}
