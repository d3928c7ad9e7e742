import type {
  PrintScale,
  PrintSetting,
  ScaledMeasure,
  ScaleVerdict,
} from "../../addin/grading/printScale.ts";
import { isInside } from "../../addin/grading/printScale.ts";
import { isPrintable } from "../../addin/grading/printSetting.ts";
import {
  allowanceWords,
  decimalsWords,
  offWords,
  printAdvice,
  testSquareWords,
} from "../../addin/grading/printWords.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

/** One setting of the printer. */
export interface Setting {
  /** “Print setting”, or which of the two. */
  readonly what: string;
  readonly percent: number;
  /** Why it is not a whole percent; empty where it is. */
  readonly says: string;
}

/** What a print leaves at one measure. */
export interface Residual {
  readonly measure: string;
  readonly state: "within" | "out" | "no tolerance" | "missing";
  /** “8.9 mm too small” */
  readonly words: string;
  readonly base: string;
  readonly printed: string;
  readonly target: string;
}

/** All that is said about printing at another scale. */
export interface PrintView {
  readonly verdict: ScaleVerdict;
  /** What to do, without a full stop. */
  readonly headline: string;
  /** What stands behind it. */
  readonly detail: string;
  /** Empty where no scale is worth printing at. */
  readonly settings: readonly Setting[];
  /** Worst first, at the settings of the verdict; what is missing comes last. */
  readonly residuals: readonly Residual[];
  /** How to check the print, a sentence a setting. */
  readonly square: readonly string[];
  readonly unit: LengthUnit;
}

/** The verdict on a print with its settings and what it leaves, in words. */
export function printView(scale: PrintScale): PrintView {
  const { verdict, best, isApart } = scale;
  const unit = best.measures[0]?.column.unit ?? "mm";
  const { todo, why } = printAdvice(scale);
  const settings = isPrintable(scale.factor) ? settingsOf(scale) : [];
  return {
    ...{ verdict, headline: todo },
    detail: [why, verdict === "draft anew" ? anewWords : "", fewKnownWords(best.measures)]
      .filter((words) => words !== "")
      .join(" "),
    ...{ settings, unit },
    residuals: [...best.measures].sort(worstFirst).map(residualOf),
    square: settings.map(({ percent }, i) =>
      testSquareWords(percent, unit, isApart ? ["its width", "its height"][i] : undefined),
    ),
  };
}

const anewWords =
  "The pieces have to change by more than their size. If that surprises you, look for slips in Check.";

/** Where most of the measures that count lack a reading, that the verdict rests on the few others. */
function fewKnownWords(measures: readonly ScaledMeasure[]): string {
  const known = measures.filter(({ residualMm }) => !Number.isNaN(residualMm)).length;
  return known > 0 && known * 2 < measures.length
    ? `◆ That is judged by ${String(known)} of ${String(measures.length)} measures: the others are not known of both figures.`
    : "";
}

/** What happens to the seam allowance on the pattern, a sentence a setting. */
export function allowanceSays(view: PrintView, allowanceMm: number): readonly string[] {
  const { settings, unit } = view;
  const edges = settings.length > 1 ? ["every upright edge", "every level edge"] : ["every edge"];
  return settings.map(({ percent }, i) => allowanceWords(allowanceMm, percent, unit, edges[i]));
}

function settingsOf({ best: { across, along }, isApart }: PrintScale): readonly Setting[] {
  const setting = (what: string, of: PrintSetting): Setting => ({
    what,
    percent: of.percent,
    says: decimalsWords(of),
  });
  if (!isApart) return [setting("Print setting", across)];
  return [setting("Width of the print", across), setting("Height of the print", along)];
}

function worstFirst(a: ScaledMeasure, b: ScaledMeasure): number {
  const rank = ({ ofTolerance, residualMm }: ScaledMeasure): number =>
    Number.isNaN(residualMm) ? -2 : Number.isNaN(ofTolerance) ? -1 : ofTolerance;
  return rank(b) - rank(a);
}

function residualOf(measure: ScaledMeasure): Residual {
  const { column, baseMm, targetMm, printedMm, residualMm, ofTolerance } = measure;
  const words = (mm: number) => lengthWords(mm, column.unit);
  const isMissing = Number.isNaN(residualMm);
  return {
    measure: column.heading,
    state: isMissing
      ? "missing"
      : Number.isNaN(ofTolerance)
        ? "no tolerance"
        : isInside(measure)
          ? "within"
          : "out",
    words: isMissing
      ? `not known of ${Number.isNaN(baseMm) ? (Number.isNaN(targetMm) ? "either" : "the base") : "the target"}`
      : words(Math.abs(residualMm)) === words(0)
        ? "nothing left over"
        : offWords(measure),
    base: words(baseMm),
    printed: words(printedMm),
    target: words(targetMm),
  };
}
