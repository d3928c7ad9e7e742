import type { Chart } from "../chart/chart.ts";
import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";

/**
 * Makes sure that there is something to change from one figure to the other.
 *
 * @throws {InputError} when base and target are one row of the chart
 */
export function differentFigures(chart: Chart, base: number, target: number): void {
  if (base !== target) return;
  throw new InputError(
    `${quote(chart.figures[base] ?? "")} of the chart is both base and target, so nothing changes. Choose another target.`,
  );
}
