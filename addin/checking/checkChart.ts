import type { Chart } from "../chart/chart.ts";
import { findCellSlips } from "./cellSlips.ts";
import { mendColumnUnits } from "./columnUnits.ts";
import { findInconsistent } from "./consistency.ts";
import { findNameTwice, findTwins } from "./duplicates.ts";
import type { Flag } from "./flag.ts";
import { estimateFlags, problemFlags, unitFlags } from "./problemFlags.ts";
import { chartProportions } from "./readings.ts";
import { findUnlikeSides } from "./sides.ts";
import { mendRowUnits } from "./rowUnits.ts";

export type { Choice, Correction, Flag, FlagKind } from "./flag.ts";
export { flagKinds } from "./flag.ts";

/**
 * Everything in a chart that deserves a second look, worst first: columns in no known unit, cells without a reading, rows and columns in a wrong
 * unit, readings out of proportion (the farthest first) with the slip that explains them, readings that cannot both be
 * right, left and right sides that differ, names that stand twice, and notes on figures unlike the others, on twins, on estimates, and on units
 * that were assumed.
 *
 * Proportions are judged from {@link fewestFigures} figures and {@link fewestMeasures} measures on, counting those
 * with at least {@link fewestReadings} readings; a smaller chart gets the other checks only. How a reading is judged is
 * told at {@link proportions}.
 */
export function checkChart(chart: Chart): readonly Flag[] {
  const asRead = chartProportions(chart);
  const rows = mendRowUnits(chart, asRead);
  const rowsMended = rows.chart === chart ? asRead : chartProportions(rows.chart);
  const columns = mendColumnUnits(rows.chart, rowsMended);
  const mended = columns.chart;
  const unitsMended = mended === rows.chart ? rowsMended : chartProportions(mended);
  const { flags, flagged, unexplained, model } = findCellSlips(mended, unitsMended);
  const notes = flags.filter(({ kind }) => kind === "unlike the other figures");
  const impossible = findInconsistent(mended, flagged, model);
  // That two readings cannot both be right says more than that one of them is out of proportion.
  const isToldBetter = (flag: Flag) =>
    flag.kind === "out of proportion" &&
    impossible.some(({ row, column }) => row === flag.row && column === flag.column);
  return [
    ...problemFlags(chart),
    ...rows.flags,
    ...columns.flags,
    ...flags.filter((flag) => !notes.includes(flag) && !isToldBetter(flag)),
    ...impossible,
    ...findUnlikeSides(mended, [...flagged, ...unexplained]),
    ...findNameTwice(chart),
    ...notes,
    ...findTwins(chart),
    ...estimateFlags(chart),
    ...unitFlags(chart, "unit assumed"),
  ].map((flag) => ({ ...flag, ...asWritten(chart, flag) }));
}

/** The reading as it stands in the chart, not as mended on the way. */
function asWritten(chart: Chart, { row, column, readingMm }: Flag): Partial<Flag> {
  if (readingMm === undefined) return {};
  const written = chart.measures.find(({ position }) => position === column)?.mm[chart.rows.indexOf(row)];
  return written === undefined ? {} : { readingMm: written };
}
