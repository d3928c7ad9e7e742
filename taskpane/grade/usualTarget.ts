import type { Chart } from "../../addin/chart/chart.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { apart, isWithin } from "../../addin/similarity/pair.ts";
import { columnsOfZone } from "../../addin/similarity/columns.ts";

/** Checking longer charts would make the section wait. */
const mostChecked = 300;

/**
 * The figure that a grade leads to before one is chosen: the first with another body than the base and no reading that
 * looks like a slip, so that the answer tells of bodies. Otherwise the first that is not the base.
 */
export function usualTarget(chart: Chart, base: number, tolerances?: ToleranceTable): number {
  const others = chart.figures.map((_, figure) => figure).filter((figure) => figure !== base);
  const [first = base] = others;
  if (chart.figures.length > mostChecked) return first;
  const flagged = new Set(checkChart(chart).map(({ figure }) => figure));
  const columns = columnsOfZone(chart, "body", tolerances);
  return (
    others.find((figure) => {
      const { distance } = apart(columns, base, figure);
      return !flagged.has(chart.figures[figure] ?? "") && !isWithin(distance, 1) && !Number.isNaN(distance);
    }) ?? first
  );
}
