import type { Chart } from "../chart/chart.ts";
import type { BodyMeasure } from "../chart/import/bodyMeasures.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { columnsOfZone } from "./columns.ts";
import type { Difference } from "./differenceWords.ts";
import { differenceWords, isBeyond } from "./differenceWords.ts";
import { compareNames } from "./nameOrder.ts";
import { roundDistance } from "./pair.ts";

/** How near a figure is to the body that a pattern is to fit. */
export interface FigureToFit {
  /** Its place in the chart, from 0. */
  readonly figure: number;
  /** The largest difference in tolerances; of none that is measured, undefined. */
  readonly worst: Difference | undefined;
  /** Measures of the body that are compared. */
  readonly compared: number;
  /** Those that the figure has no reading of, as the list is read: “hip”. */
  readonly lacking: readonly string[];
}

/**
 * The figures of a chart by how near their readings are to the body that a pattern is to fit, nearest first; those without
 * any reading of it last. Within a range nothing differs. Estimates are no readings.
 *
 * @param tolerances the user’s own; the usual one of each measure stands in where they name none
 */
export function figuresToFit(
  chart: Chart,
  body: readonly BodyMeasure[],
  tolerances?: ToleranceTable,
): readonly FigureToFit[] {
  const columns = columnsOfZone(chart, "all", tolerances);
  const wanted = body.map((each) => ({
    ...each,
    column: columns.find(({ column }) => column.measure?.id === each.measure.id),
  }));
  return chart.figures
    .map((_, figure): FigureToFit => {
      const differences: Difference[] = [];
      const lacking: string[] = [];
      for (const { measure, leastMm, mostMm, column: compared } of wanted) {
        const mm = compared?.column.mm[figure] ?? Number.NaN;
        if (!compared || Number.isNaN(mm)) {
          lacking.push(measure.shortName.toLowerCase());
          continue;
        }
        const end = Math.min(Math.max(mm, leastMm), mostMm);
        const deltaMm = mm - end;
        const allowed = toleranceMm(compared.tolerance, end, mm);
        const ofTolerance = deltaMm === 0 ? 0 : roundDistance(Math.abs(deltaMm) / allowed);
        differences.push({ column: compared.column, deltaMm, ofTolerance });
      }
      const worst = differences.toSorted((a, b) => b.ofTolerance - a.ofTolerance)[0];
      return { figure, worst, compared: differences.length, lacking };
    })
    .sort(
      (a, b) =>
        distance(a) - distance(b) ||
        a.lacking.length - b.lacking.length ||
        compareNames(chart, a.figure, b.figure),
    );
}

function distance({ worst }: FigureToFit): number {
  return worst?.ofTolerance ?? Infinity;
}

/** Those that no reading speaks against, and the one among them where there is no other and nothing of it is missing. */
export function whoFits(near: readonly FigureToFit[]): {
  readonly possible: readonly FigureToFit[];
  readonly only: FigureToFit | undefined;
} {
  const possible = near.filter(({ worst }) => worst && !isBeyond(worst));
  const [first] = possible;
  return { possible, only: possible.length === 1 && first?.lacking.length === 0 ? first : undefined };
}

/** How near it is: “the same in 3 measures”, “Waist 1 mm larger, the rest nearer”, “Waist 6 mm larger, beyond tolerance”. */
export function nearWords({ worst, compared, lacking }: FigureToFit): string {
  const without = lacking.length > 0 ? [`no reading of ${lacking.join(", ")}`] : [];
  if (!worst) return without.join("");
  if (worst.deltaMm === 0)
    return [
      compared === 1 ? `${worst.column.heading} is the same` : `the same in ${String(compared)} measures`,
      ...without,
    ].join(", ");
  return [
    differenceWords(worst),
    ...(isBeyond(worst) ? ["beyond tolerance"] : compared > 1 ? ["the rest nearer"] : []),
    ...without,
  ].join(", ");
}
