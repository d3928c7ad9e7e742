import type { Chart } from "../chart/chart.ts";
import type { Flag } from "./flag.ts";
import { problemFlags } from "./problemFlags.ts";

export type { Correction, Flag, FlagKind } from "./flag.ts";
export { flagKinds } from "./flag.ts";

/**
 * Everything in a chart that deserves a second look, worst first.
 */
export function checkChart(chart: Chart): readonly Flag[] {
  return problemFlags(chart);
}
