import type { Chart } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { withPossibleOffers } from "../../addin/checking/possibleOffers.ts";

/** A chart to check, as plain data. */
export interface CheckJob {
  readonly kind: "check";
  readonly chart: Chart;
}

export interface CheckAnswer {
  readonly kind: "check";
  /** Worst first. */
  readonly flags: readonly Flag[];
}

export function doCheckJob({ chart }: CheckJob): CheckAnswer {
  return { kind: "check", flags: withPossibleOffers(chart, checkChart(chart)) };
}
