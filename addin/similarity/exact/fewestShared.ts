import type { Chart } from "../../chart/chart.ts";
import type { ComparedColumn } from "../comparedColumns.ts";
import { largestFirst } from "../groups.ts";
import { nameOrder } from "../nameOrder.ts";
import { toleranceDistances } from "../toleranceDistances.ts";
import type { BasesAnswer, GroupsAnswer } from "./answers.ts";
import { checkReach } from "./checkReach.ts";
import type { FewestBases } from "./exactBases.ts";
import { exactBases } from "./exactBases.ts";
import type { FewestGroups } from "./exactGroups.ts";
import { exactGroups } from "./exactGroups.ts";
import { graphOf } from "./graph.ts";
import type { ExactOptions } from "./options.ts";

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
  const named = nameOrder(chart, columns);
  const inRows = ({ groupOf, count, atLeast }: FewestGroups): GroupsAnswer => {
    const inChart = new Int32Array(groupOf.length);
    largestFirst(groupOf).forEach((members, index) => {
      for (const item of members) inChart[named.order[item]!] = index + 1;
    });
    return { kind: "groups", groupOf: inChart, count, atLeast, isProved: count === atLeast };
  };
  const graph = graphOf(toleranceDistances(named.columns, chart.figures.length), reach);
  return inRows(exactGroups(graph, inChartOrder(options, inRows)));
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
  const named = nameOrder(chart, columns);
  const inRows = ({ baseOf, ...found }: FewestBases): BasesAnswer => {
    const inChart = new Int32Array(baseOf.length);
    baseOf.forEach((base, item) => (inChart[named.order[item]!] = named.order[base]!));
    return { kind: "bases", baseOf: inChart, ...found, isProved: found.count === found.atLeast };
  };
  const distances = toleranceDistances(named.columns, chart.figures.length);
  return inRows(exactBases(distances, reach, inChartOrder(options, inRows)));
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
