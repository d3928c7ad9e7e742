import { lengthWords } from "../measures/lengthWords.ts";
import type { LengthUnit } from "../measures/units.ts";
import { toMm } from "../measures/units.ts";
import { printedAllowance } from "./allowance.ts";
import type { Print, PrintScale, PrintSetting, ScaledMeasure } from "./printScale.ts";
import { isAcross, isInside } from "./printScale.ts";
import { isPrintable, printablePercent } from "./printSetting.ts";

/** What does not scale with a print. */
export const printCautions = [
  "Snaps, hooks, buttons and zips keep their size: space them anew, and keep the overlap of the closure as wide as they need.",
  "Cloth keeps its thickness, its drape and the size of its design: it does not scale with the pattern.",
  "Hems and facings scale with the print: mark them again at the width that you sew.",
] as const;

const outsideRange = `outside ${String(printablePercent.least)} to ${String(printablePercent.most)} %`;

/** Of a scale beyond which no pattern is worth printing. */
export const outsideWords = `This is ${outsideRange}: draft anew.`;

/** A verdict on printing: what to do, and what stands behind it. */
export interface PrintAdvice {
  /** “Print at 104 %, then take in Hip by 9 mm”: without a full stop. */
  readonly todo: string;
  /** Sentences. */
  readonly why: string;
}

/** What to do with a pattern to take it from one figure to another, in the words of every function and of the pane. */
export function printAdvice(scale: PrintScale): PrintAdvice {
  const { verdict, best, factor } = scale;
  const { worst, out } = best;
  switch (verdict) {
    case "not known":
      return {
        todo: "Not known",
        why: Number.isNaN(factor)
          ? "None of these measures is known of both figures. Measure one on both."
          : "None of these measures has a tolerance, so nobody can say whether one scale will do. Look at what is left over.",
      };
    case "one scale":
      return { todo: `Print at ${scaleWords(best)}`, why: worst ? withinWords(worst) : "" };
    case "two scales":
      return {
        todo: `Print at ${scaleWords(best)}`,
        why: `${oneScaleWords(scale)} ${worst ? withinWords(worst) : ""}`,
      };
    case "print and alter":
      return {
        todo: `Print at ${scaleWords(best)}, then ${listed(out.slice(0, mostNamed).map(alterationWords), out.length - mostNamed)}`,
        why: othersWords(best),
      };
    case "draft anew":
      if (!isPrintable(factor)) {
        return { todo: "Draft anew", why: `The best scale, ${scaleWords(best)}, is ${outsideRange}.` };
      }
      return {
        todo: "Draft anew",
        why: `No print scale will do: at ${scaleWords(best)} ${out
          .slice(0, mostNamed)
          .map((measure) => `${measure.column.heading} is ${offWords(measure)}`)
          .join(
            ", ",
          )}${out.length > mostNamed ? ` and ${String(out.length - mostNamed)} more are out` : ""}.`,
      };
  }
}

/** The same in sentences. */
export function verdictWords(scale: PrintScale): string {
  const { todo, why } = printAdvice(scale);
  return `${todo}. ${why}`.trim();
}

/** Measures named in one sentence; further ones are counted. */
const mostNamed = 3;

/** “104 %”, “110 % in width and 130 % in height” */
function scaleWords({ across, along }: Print): string {
  if (across === along || Number.isNaN(along.factor) || Number.isNaN(across.factor)) {
    return percentWords(Number.isNaN(across.factor) ? along : across);
  }
  return `${percentWords(across)} in width and ${percentWords(along)} in height`;
}

function percentWords({ percent }: PrintSetting): string {
  return `${String(Math.round(percent * 1000) / 1000)} %`;
}

function withinWords(worst: ScaledMeasure): string {
  const { unit } = worst.column;
  return lengthWords(Math.abs(worst.residualMm), unit) === lengthWords(0, unit)
    ? "Nothing is left over."
    : `At worst ${worst.column.heading} is ${offWords(worst)}, which is within tolerance.`;
}

function oneScaleWords({ one }: PrintScale): string {
  const [worst] = one.out;
  return worst ? `One scale for both leaves ${worst.column.heading} ${offWords(worst)}.` : "";
}

/** “let out Waist by 9 mm”, “shorten Arm by 4 mm” */
export function alterationWords({
  column,
  residualMm,
}: Pick<ScaledMeasure, "column" | "residualMm">): string {
  const verbs = isAcross(column) ? ["let out", "take in"] : ["lengthen", "shorten"];
  return `${verbs[residualMm > 0 ? 0 : 1] ?? ""} ${column.heading} by ${lengthWords(Math.abs(residualMm), column.unit)}`;
}

/** “The other 11 measures are within tolerance.” */
function othersWords({ measures }: Print): string {
  const within = measures.filter(isInside);
  return within.length === 1
    ? `${within[0]?.column.heading ?? ""} is within tolerance.`
    : `The other ${String(within.length)} measures are within tolerance.`;
}

/** How many of the measures that can be judged a print keeps: “11 of 12 measures within tolerance”. */
export function insideWords({ measures }: Pick<Print, "measures">): string {
  const judged = measures.filter(({ ofTolerance }) => !Number.isNaN(ofTolerance));
  return judged.length === 0
    ? ""
    : `${String(judged.filter(isInside).length)} of ${String(judged.length)} ${judged.length === 1 ? "measure" : "measures"} within tolerance`;
}

function listed(words: readonly string[], more: number): string {
  if (more > 0) return `${words.join(", ")} and ${String(more)} more`;
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;
}

/** How far off the print is at one measure: “8.9 mm too small”. */
export function offWords({ column, residualMm }: Pick<ScaledMeasure, "column" | "residualMm">): string {
  return `${lengthWords(Math.abs(residualMm), column.unit)} ${residualMm < 0 ? "too large" : "too small"}`;
}

/** Why a print is not set in whole percent. */
export function decimalsWords({ percent }: PrintSetting): string {
  return Number.isInteger(percent) || Number.isNaN(percent)
    ? ""
    : "No whole percent keeps as many measures within tolerance.";
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
