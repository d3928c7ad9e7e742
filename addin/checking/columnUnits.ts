import type { Chart } from "../chart/chart.ts";
import type { Flag } from "./flag.ts";
import { medianOf } from "./medianOf.ts";
import type { Proportions } from "./proportions.ts";
import { columnAt, columnFlag, correctionsBy, usualLogs, withFactor } from "./readings.ts";
import type { Mended } from "./rowUnits.ts";
import { timesOff, unitFactors, unitQuestion, unitSlip } from "./unitSlips.ts";

/** So many measures must be known to the dictionary before one can be told from the others. */
const fewestKnown = 5;
/** A column may lie so far from the usual proportion once it is put right. */
const closeTo = Math.log(1.5);
/** Heads, hands and feet of figures are often two or three times their natural size: there 2.54 proves nothing. */
const stylised: ReadonlySet<string> = new Set(["head", "hands", "feet"]);

/**
 * Columns whose readings, most or all of them, stand in a wrong unit: beside the other measures the column is a unit
 * factor away from the proportions of people, and closer to them with that factor than without.
 *
 * @param fit what is usual in the chart; `undefined` where it is too small
 */
export function mendColumnUnits(chart: Chart, fit: Proportions | undefined): Mended {
  if (!fit) return { flags: [], chart };
  const known = usualLogs(chart);
  const unusual = fit.columns.map((column, j) => (Number.isNaN(known[j]!) ? Number.NaN : column));
  if (unusual.filter((value) => !Number.isNaN(value)).length < fewestKnown) return { flags: [], chart };
  const centre = medianOf(unusual);
  let mended = chart;
  const flags: Flag[] = [];
  for (const [column, value] of unusual.entries()) {
    const factor = columnFactor(value - centre, stylised.has(columnAt(chart, column).zone ?? ""));
    if (factor === undefined) continue;
    const shift = Math.log(factor);
    const wrong = fit.residuals.flatMap((row, figure) =>
      Math.abs(row[column]!) < Math.abs(row[column]! - shift) ? [{ figure, column }] : [],
    );
    mended = withFactor(mended, wrong, factor);
    flags.push(
      columnFlag(chart, column, {
        kind: "whole column in a wrong unit",
        why: whyColumn(chart, column, factor),
        corrections: correctionsBy(chart, wrong, factor),
      }),
    );
  }
  return { flags, chart: mended };
}

function columnFactor(unusual: number, isStylised: boolean): number | undefined {
  const [best] = unitFactors
    .map((factor) => ({ factor, left: Math.abs(unusual + Math.log(factor)) }))
    .sort((a, b) => a.left - b.left);
  if (!best || !(best.left <= closeTo && best.left <= Math.abs(unusual) / 2)) return undefined;
  return isStylised && Math.abs(Math.log(best.factor)) < 2 ? undefined : best.factor;
}

function whyColumn(chart: Chart, column: number, factor: number): string {
  const { heading, unit } = columnAt(chart, column);
  return `The readings of ${heading} are ${timesOff(factor)} beside the other measures, if the column is in ${unit}: ${unitQuestion(unitSlip(factor, unit), "were they")}`;
}
