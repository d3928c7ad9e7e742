import type { Chart } from "../addin/chart/chart.ts";
import type { ToleranceTable } from "../addin/chart/tolerances.ts";
import type { ComparedColumn, ZoneChoice } from "../addin/similarity/columns.ts";
import { comparedColumns } from "../addin/similarity/columns.ts";

/**
 * The measures that take part in a comparison of figures.
 *
 * @throws {InputError} when none is left
 */
export function columnsOf(
  chart: Chart,
  tolerances: ToleranceTable | undefined,
  zone: ZoneChoice = "body",
): readonly ComparedColumn[] {
  return comparedColumns(chart, tolerances ? { tolerances, zone } : { zone });
}
