import { readChart } from "../../../addin/chart/readChart.ts";
import { expectedValue } from "../../../addin/checking/expectedValue.ts";
import { seeded } from "../../similarity/condensedOf.ts";
import { inventedChart } from "./inventedCharts.ts";
import { cellsOf } from "./plantSlip.ts";

/** Of readings that were taken from charts without slips: how many lie in the range that is expected of them without them. */
export function expectedCoverage(
  seeds: readonly number[],
  readingsAChart: number,
): { readonly asked: number; readonly inRange: number } {
  let asked = 0;
  let inRange = 0;
  for (const seed of seeds) {
    const random = seeded(seed);
    const chart = readChart(cellsOf(inventedChart(seed)));
    for (let k = 0; k < readingsAChart; k++) {
      const figure = Math.floor(random() * chart.figures.length);
      const column = Math.floor(random() * chart.measures.length);
      const mm = chart.measures[column]?.mm[figure] ?? Number.NaN;
      const expected = expectedValue(chart, figure, column);
      if (Number.isNaN(mm) || !expected) continue;
      asked++;
      if (mm >= expected.lowMm && mm <= expected.highMm) inRange++;
    }
  }
  return { asked, inRange };
}
