import type { Chart } from "../../addin/chart/chart.ts";
import { planDarts } from "../../addin/grading/darts.ts";
import { adultHeightMm, figureScale } from "../../addin/grading/scale.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

/** Between which girths the darts of a garment shape the cloth. */
const widerGirths: Readonly<Record<string, { readonly key: string; readonly name: string }>> = {
  Bodice: { key: "bustGirth", name: "bust" },
  "Fitted skirt": { key: "hipGirth", name: "hip" },
  Trousers: { key: "hipGirth", name: "hip" },
};

/** The darts of a garment on one figure, in words. */
export interface FigureDarts {
  readonly figure: string;
  /** Where a girth is missing, what to measure; else undefined. */
  readonly missing: string | undefined;
  readonly difference: string;
  readonly atSeams: string;
  /** Number of darts to sew. */
  readonly darts: string;
  readonly intake: string;
  readonly widest: string;
  /** Whether the darts are sensible, and what to do where they are not. */
  readonly says: string;
}

/** Garments of which something can be said about darts. */
export function hasDarts(garment: string): boolean {
  return Object.hasOwn(widerGirths, garment);
}

/**
 * The darts between the wider girth of a garment and the waist, on some figures. Half of the difference goes into the seams,
 * common practice; how wide a dart may be is scaled by the height of the figure.
 *
 * @param darts darts over the whole body
 */
export function dartsView(
  chart: Chart,
  garment: string,
  figures: readonly number[],
  darts: number,
): readonly FigureDarts[] {
  const wider = widerGirths[garment];
  if (!wider) return [];
  const mm = (key: string, figure: number) =>
    chart.measures.find((column) => column.key === key)?.mm[figure] ?? Number.NaN;
  const unit: LengthUnit = chart.measures.find((column) => column.key === wider.key)?.unit ?? "mm";
  const words = (length: number) => lengthWords(length, unit);
  return figures.map((row): FigureDarts => {
    const figure = chart.figures[row] ?? "";
    const [widerMm, waistMm] = [mm(wider.key, row), mm("waistGirth", row)];
    if (Number.isNaN(widerMm) || Number.isNaN(waistMm)) {
      const lacking = [
        ...(Number.isNaN(widerMm) ? [wider.name] : []),
        ...(Number.isNaN(waistMm) ? ["waist"] : []),
      ];
      const missing = `Measure ${lacking.join(" and ")} of ${figure} first.`;
      return {
        figure,
        missing,
        difference: "?",
        atSeams: "?",
        darts: "?",
        intake: "?",
        widest: "?",
        says: missing,
      };
    }
    const heightMm = mm("height", row);
    const scale = Number.isNaN(heightMm) ? 1 : Math.max(1, figureScale(heightMm, adultHeightMm));
    const plan = planDarts(widerMm, waistMm, { darts, scale });
    return {
      ...{ figure, missing: undefined, difference: words(plan.differenceMm), atSeams: words(plan.atSeamsMm) },
      darts: String(plan.darts),
      intake: words(plan.intakeMm),
      widest: words(plan.largestMm),
      says:
        plan.differenceMm === 0
          ? `${figure}: the waist is not smaller, so no darts are needed.`
          : plan.darts > darts
            ? `${figure}: ${String(darts)} darts would be ${words(plan.asGivenMm)} wide each, too wide to press flat. Sew ${String(plan.darts)} of ${words(plan.intakeMm)}, or take more in at the seams.`
            : `${figure}: each of ${String(darts)} darts takes in ${words(plan.intakeMm)}, which presses flat.`,
    };
  });
}
