import type { Chart } from "../chart/chart.ts";
import type { Apart } from "./pair.ts";
import { apart } from "./pair.ts";
import type { ComparedColumn } from "./columns.ts";
import { compareNames } from "./nameOrder.ts";

export interface Near extends Apart {
  readonly figure: string;
  /** Where it stands in the chart, from 0. */
  readonly row: number;
}

/**
 * The figures nearest to one figure, nearest first; equally near ones by name. Those whose distance is not known come
 * last, so that nobody takes their absence for a difference.
 *
 * @param columns see `comparedColumns`
 * @param figure where the figure stands in the chart, from 0
 * @param count how many to give at most
 */
export function nearest(
  chart: Chart,
  columns: readonly ComparedColumn[],
  figure: number,
  count: number,
): readonly Near[] {
  return chart.figures
    .map((name, other) => ({ name, other }))
    .filter(({ other }) => other !== figure)
    .map(({ name, other }) => ({
      other,
      found: { figure: name, row: other, ...apart(columns, figure, other) },
    }))
    .sort(
      (a, b) => known(a.found.distance) - known(b.found.distance) || compareNames(chart, a.other, b.other),
    )
    .slice(0, count)
    .map(({ found }) => found);
}

/** Not known sorts behind any distance. */
function known(distance: number): number {
  return Number.isNaN(distance) ? Number.MAX_VALUE : distance;
}
