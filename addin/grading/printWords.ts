import { lengthWords } from "../measures/lengthWords.ts";
import type { LengthUnit } from "../measures/units.ts";
import { toMm } from "../measures/units.ts";
import { printedAllowance } from "./allowance.ts";
import type { PrintScale, ScaledMeasure } from "./printScale.ts";
import { isPrintable, printablePercent, printSetting } from "./printSetting.ts";

/** What does not scale with a print. */
export const printCautions = [
  "Snaps, hooks, buttons and zips keep their size: space them anew, and keep the overlap of the closure as wide as they need.",
  "Cloth keeps its thickness, its drape and the size of its design: it does not scale with the pattern.",
  "Hems and facings scale with the print: mark them again at the width that you sew.",
] as const;

/** Beyond these no pattern is worth printing. */
export const outsideWords = `This is outside ${String(printablePercent.least)} to ${String(printablePercent.most)} %: draft anew.`;

/** Half of the finest length that words give: a tenth of a mm, or 1/64 in. */
const finestMm = 0.05;
const finestInInches = toMm(1 / 128, "in");

/** Whether a print scale will do, and what stands in its way. */
export function verdictWords({ verdict, worst, factor }: PrintScale): string {
  if (Number.isNaN(factor)) return "None of these measures is known of both figures. Measure one on both.";
  if (!isPrintable(factor)) return outsideWords;
  if (verdict === "not known" || !worst) {
    return "None of these measures has a tolerance, so nobody can say whether one scale will do. Look at what is left over.";
  }
  const off = `${worst.column.heading} is ${offWords(worst)}`;
  switch (verdict) {
    case "one scale":
      return worst.residualMm === 0
        ? "One scale will do: nothing is left over."
        : `One scale will do: at worst ${off}, which is within tolerance.`;
    case "two scales":
      return `One scale will not do: ${off}. Print girths and lengths at their own scales, the lengths upright on the page: then every measure is within tolerance.`;
    case "draft anew":
      return `No print scale will do: ${off}. The figure has another shape: draft anew.`;
  }
}

/** How far off the print is at one measure: “8.9 mm too small”. */
export function offWords({ column, residualMm }: Pick<ScaledMeasure, "column" | "residualMm">): string {
  return `${lengthWords(Math.abs(residualMm), column.unit)} ${residualMm < 0 ? "too large" : "too small"}`;
}

/** The measure at which rounding the scale to whole percent makes the largest error, and that error. */
export function roundingError(
  factor: number,
  measures: readonly ScaledMeasure[],
): { readonly measure: ScaledMeasure; readonly errorMm: number } | undefined {
  const longest = measures.reduce<ScaledMeasure | undefined>(
    (most, each) => (each.printedMm > (most?.printedMm ?? 0) && !Number.isNaN(each.targetMm) ? each : most),
    undefined,
  );
  return longest && { measure: longest, errorMm: printSetting(factor).roundingShare * longest.baseMm };
}

/** What the whole percent does: “The whole percent makes Hip 0.1 mm too small.” */
export function roundingWords(factor: number, measures: readonly ScaledMeasure[]): string {
  const error = roundingError(factor, measures);
  if (!error) return "";
  const { column } = error.measure;
  if (Math.abs(error.errorMm) < (column.unit === "in" ? finestInInches : finestMm)) {
    return "The whole percent is near enough.";
  }
  return `The whole percent makes ${column.heading} ${offWords({ column, residualMm: -error.errorMm })}.`;
}

/**
 * What a print makes of the seam allowance that is on the pattern, and what to do.
 *
 * @param edges the edges that are meant, where a print has another width than height
 */
export function allowanceWords(
  allowanceMm: number,
  percent: number,
  unit: LengthUnit,
  edges = "every edge",
): string {
  if (percent === 100) return "The allowance stays as it is.";
  const { printed, toAdd } = printedAllowance(allowanceMm, percent / 100);
  return `On paper it becomes ${lengthWords(printed, unit)}: ${toAdd > 0 ? "add" : "trim off"} ${lengthWords(Math.abs(toAdd), unit)} along ${edges}.`;
}

const squareSides: Readonly<Record<LengthUnit, number>> = { mm: 50, cm: 5, in: 2 };

/** Side of the square that is drawn beside a pattern to check the print, in mm: 50 mm or 2 in. */
export function testSquareMm(unit: LengthUnit): number {
  return toMm(squareSides[unit], unit);
}

/**
 * How to check a print at a scale with a test square.
 *
 * @param side the side that is meant, where a print has another width than height
 */
export function testSquareWords(percent: number, unit: LengthUnit, side = "each side"): string {
  const sideMm = testSquareMm(unit);
  return `Draw a square of ${lengthWords(sideMm, unit)} beside the pattern; on the print ${side} must measure ${lengthWords((sideMm * percent) / 100, unit)}.`;
}
