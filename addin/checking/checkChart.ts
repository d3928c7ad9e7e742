import type { Chart } from "../chart/chart.ts";
import { findCellSlips } from "./cellSlips.ts";
import { mendColumnUnits } from "./columnUnits.ts";
import { findInconsistent } from "./consistency.ts";
import { findNameTwice } from "./duplicates.ts";
import { findFarOff } from "./farOff.ts";
import type { Flag } from "./flag.ts";
import { estimateFlags, problemFlags, unitFlags } from "./problemFlags.ts";
import { chartProportions, type Place } from "./readings.ts";
import { findUnlikeSides } from "./sides.ts";
import { mendRowUnits } from "./rowUnits.ts";
import { findTwins } from "./twins.ts";

export type { Choice, Correction, Flag, FlagKind } from "./flag.ts";
export { flagKinds } from "./flag.ts";

/** What there is to say about the readings of a chart. */
export interface ReadingFlags {
  /** Against readings, worst first. */
  readonly against: readonly Flag[];
  /** Notes on figures unlike the others, and on twins. */
  readonly notes: readonly Flag[];
}

/**
 * Everything in a chart that deserves a second look, worst first: columns in no known unit, cells without a reading, rows and columns in a wrong
 * unit, readings out of proportion (the farthest first) with the slip that explains them, readings that cannot both be
 * right, left and right sides that differ, readings in which twins differ, names that stand twice, and notes on figures unlike the others, on twins,
 * on estimates, and on units that were assumed.
 *
 * Proportions are judged from {@link fewestFigures} figures and {@link fewestMeasures} measures on, counting those
 * with at least {@link fewestReadings} readings; in a smaller chart only readings that are many times off are found, and what the other checks find. How a reading is judged is
 * told at {@link proportions}.
 *
 * @param readings what {@link checkReadings} says of the chart, where that is known already
 */
export function checkChart(chart: Chart, readings: ReadingFlags = checkReadings(chart)): readonly Flag[] {
  const { against, notes } = readings;
  return [
    ...problemFlags(chart),
    ...against,
    ...findNameTwice(chart),
    ...notes,
    ...estimateFlags(chart),
    ...unitFlags(chart, "unit assumed"),
  ];
}

/** What speaks for and against the readings alone: that part of {@link checkChart} which takes time. */
export function checkReadings(chart: Chart): ReadingFlags {
  const asRead = chartProportions(chart);
  const rows = mendRowUnits(chart, asRead);
  const rowsMended = rows.chart === chart ? asRead : chartProportions(rows.chart);
  const columns = mendColumnUnits(rows.chart, rowsMended);
  const mended = columns.chart;
  const unitsMended = mended === rows.chart ? rowsMended : chartProportions(mended);
  const { flags, flagged, unexplained, model } = findCellSlips(mended, unitsMended);
  const otherBuilds = flags.filter(({ kind }) => kind === "unlike the other figures");
  const farOff = asRead ? [] : findFarOff(chart);
  const impossible = findInconsistent(mended, [...flagged, ...placesOf(chart, farOff)], model);
  // That two readings cannot both be right says more than that one of them is out of proportion.
  const isToldBetter = (flag: Flag) =>
    flag.kind === "out of proportion" &&
    impossible.some(({ row, column }) => row === flag.row && column === flag.column);
  const sides = findUnlikeSides(mended, [...flagged, ...unexplained]);
  const twins = findTwins(
    mended,
    [...flagged, ...unexplained, ...placesOf(mended, [...impossible, ...sides])],
    model,
    unitsMended,
  );
  const written = (all: readonly Flag[]) => all.map((flag) => ({ ...flag, ...asWritten(chart, flag) }));
  return {
    against: written([
      ...rows.flags,
      ...columns.flags,
      ...farOff,
      ...flags.filter((flag) => !otherBuilds.includes(flag) && !isToldBetter(flag)),
      ...impossible,
      ...sides,
      ...twins.odd,
    ]),
    notes: written([...otherBuilds, ...twins.same]),
  };
}

function placesOf(chart: Chart, flags: readonly Flag[]): readonly Place[] {
  return flags.map(({ row, column }) => ({
    figure: chart.rows.indexOf(row),
    column: chart.measures.findIndex(({ position }) => position === column),
  }));
}

/** The reading as it stands in the chart, not as mended on the way. */
function asWritten(chart: Chart, { row, column, readingMm }: Flag): Partial<Flag> {
  if (readingMm === undefined) return {};
  const written = chart.measures.find(({ position }) => position === column)?.mm[chart.rows.indexOf(row)];
  return written === undefined ? {} : { readingMm: written };
}
