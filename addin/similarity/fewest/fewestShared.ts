import type { Chart } from "../../chart/chart.ts";
import { InputError } from "../../measures/inputError.ts";
import { quote } from "../../measures/quote.ts";
import type { ComparedColumn } from "../columns.ts";
import type { FewestBases } from "./exactBases.ts";
import { exactBases } from "./exactBases.ts";
import type { FewestGroups } from "./exactGroups.ts";
import { exactGroups } from "./exactGroups.ts";
import { nearGraph } from "./graph.ts";
import { largestFirst } from "../groups.ts";
import { checkSize } from "../matrix.ts";
import { nameOrder } from "../nameOrder.ts";
import { distanceBetween, readingsOf } from "../pair.ts";
import type { ExactOptions } from "./exactOptions.ts";

/**
 * As few groups as possible, every two figures of a group within tolerance. Worked out in the order of names, so that the
 * answer does not depend on the order of rows (except where figures have the same name).
 *
 * @param columns see `comparedColumns`
 * @param reach how far two figures may be apart, in tolerances
 * @throws {InputError} when there are too many figures, or the reach is not above 0
 */
export function fewestSharedGroups(
  chart: Pick<Chart, "figures">,
  columns: readonly ComparedColumn[],
  reach = 1,
  options: ExactOptions<GroupsAnswer> = {},
): GroupsAnswer {
  checkReach(reach);
  checkSize(chart.figures.length);
  const named = nameOrder(chart, columns);
  const inRows = ({ groupOf, count, atLeast }: FewestGroups): GroupsAnswer => {
    const inChart = new Int32Array(groupOf.length);
    largestFirst(groupOf).forEach((members, index) => {
      for (const item of members) inChart[named.order[item]!] = index + 1;
    });
    return { kind: "groups", groupOf: inChart, count, atLeast, isProved: count === atLeast };
  };
  const readings = readingsOf(named.columns, chart.figures.length);
  return inRows(exactGroups(nearGraph(readings, reach), inChartOrder(options, inRows)));
}

/**
 * As few base figures as possible, so that every figure is within reach of one; of all such choices one with the least
 * alteration in all. Worked out in the order of names, like the groups.
 *
 * @param columns see `comparedColumns`
 * @param reach how far a figure may be from its base figure, in tolerances
 * @throws {InputError} when there are too many figures, or the reach is not above 0
 */
export function fewestBaseFigures(
  chart: Pick<Chart, "figures">,
  columns: readonly ComparedColumn[],
  reach = 1,
  options: ExactOptions<BasesAnswer> = {},
): BasesAnswer {
  checkReach(reach);
  checkSize(chart.figures.length);
  const named = nameOrder(chart, columns);
  const inRows = ({ baseOf, ...found }: FewestBases): BasesAnswer => {
    const inChart = new Int32Array(baseOf.length);
    baseOf.forEach((base, item) => (inChart[named.order[item]!] = named.order[base]!));
    return { kind: "bases", baseOf: inChart, ...found, isProved: found.count === found.atLeast };
  };
  const readings = readingsOf(named.columns, chart.figures.length);
  const alteration = (i: number, j: number) => (i === j ? 0 : distanceBetween(readings, i, j));
  return inRows(exactBases(nearGraph(readings, reach), alteration, inChartOrder(options, inRows)));
}

/** The options with progress told of the figures as they stand in the chart. */
function inChartOrder<Found, Answer>(
  { onProgress, ...others }: ExactOptions<Answer>,
  inRows: (found: Found) => Answer,
): ExactOptions<Found> {
  if (!onProgress) return others;
  return {
    ...others,
    onProgress: (found) => {
      onProgress(inRows(found));
    },
  };
}

/** Which figures share a group, in as few groups as possible, every two of a group within tolerance. */
export interface GroupsAnswer {
  readonly kind: "groups";
  /** The group of each figure, in the order of the chart. From 1: larger groups first, groups of one size by their first name. */
  readonly groupOf: Int32Array;
  readonly count: number;
  /** No answer has fewer groups than this. */
  readonly atLeast: number;
  /** True when `count` is proved to be the fewest. */
  readonly isProved: boolean;
}

/** As few base figures as possible, so that every figure is within reach of one. */
export interface BasesAnswer {
  readonly kind: "bases";
  /** The base figure of each figure, as places in the chart from 0. A base figure is its own. */
  readonly baseOf: Int32Array;
  readonly count: number;
  /** No answer has fewer base figures than this. */
  readonly atLeast: number;
  /** True when `count` is proved to be the fewest. */
  readonly isProved: boolean;
  /** The sum of the distances from each figure to its base figure, in tolerances. */
  readonly alteration: number;
  /** True when it is proved that no answer with as few base figures needs less alteration. */
  readonly isLeastAlteration: boolean;
}

export type ExactAnswer = GroupsAnswer | BasesAnswer;

/** @throws {InputError} when it is not above 0 */
export function checkReach(reach: number): void {
  if (reach > 0 && Number.isFinite(reach)) return;
  throw new InputError(
    `A reach of ${quote(String(reach))} cannot be used. Write how many tolerances a base figure may be altered by: a number above 0, for example 1.`,
  );
}
