import type { ScaledMeasure, PrintScale, ScaleVerdict } from "../../addin/grading/printScale.ts";
import { isAcross } from "../../addin/grading/printScale.ts";
import { isPrintable, printablePercent, printSetting } from "../../addin/grading/printSetting.ts";
import { allowanceWords, offWords, roundingWords, testSquareWords } from "../../addin/grading/printWords.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

/** One setting of the printer. */
export interface Setting {
  /** “Print setting”, or which of the two. */
  readonly what: string;
  readonly percent: number;
  /** What the rounding to whole percent does. */
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
  /** The verdict in a sentence. */
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

/** The verdict on a print scale with its settings and what it leaves, in words. */
export function printView(scale: PrintScale): PrintView {
  const unit = scale.measures[0]?.column.unit ?? "mm";
  const isApart = scale.verdict === "two scales";
  const measures = isApart ? scale.apart : scale.measures;
  const settings = isPrintable(scale.factor) ? settingsOf(scale, isApart) : [];
  return {
    ...{ verdict: scale.verdict, ...sentences(scale, measures), settings, unit },
    residuals: [...measures].sort(worstFirst).map(residualOf),
    square: settings.map(({ percent }, i) =>
      testSquareWords(percent, unit, isApart ? ["its width", "its height"][i] : undefined),
    ),
  };
}

/** What happens to the seam allowance on the pattern, a sentence a setting. */
export function allowanceSays(view: PrintView, allowanceMm: number): readonly string[] {
  const { settings, unit } = view;
  const edges = settings.length > 1 ? ["every upright edge", "every level edge"] : ["every edge"];
  return settings.map(({ percent }, i) => allowanceWords(allowanceMm, percent, unit, edges[i]));
}

function sentences(
  { verdict, factor, worst, acrossFactor, alongFactor }: PrintScale,
  measures: readonly ScaledMeasure[],
): Pick<PrintView, "headline" | "detail"> {
  const percent = (of: number) => `${String(printSetting(of).percent)} %`;
  if (Number.isNaN(factor)) {
    return {
      headline: "Not known",
      detail: "None of these measures is known of both figures. Measure one on both.",
    };
  }
  if (!isPrintable(factor)) {
    return {
      headline: `No print scale will do: ${percent(factor)} is outside ${String(printablePercent.least)} to ${String(printablePercent.most)} %; draft anew`,
      detail: "A pattern that is made so much larger or smaller does not keep its proportions in cloth.",
    };
  }
  if (!worst || verdict === "not known") {
    return {
      headline: "Not known",
      detail: `None of these measures has a tolerance, so nobody can say whether a scale will do. The best is ${percent(factor)}; look at what is left over.`,
    };
  }
  const off = `${worst.column.heading} is ${offWords(worst)}`;
  switch (verdict) {
    case "one scale":
      return {
        headline: `One print scale will do: ${percent(factor)}`,
        detail:
          worst.residualMm === 0 ? "Nothing is left over." : `At worst ${off}, which is within tolerance.`,
      };
    case "two scales": {
      const last = [...measures].sort(worstFirst)[0];
      return {
        headline: `Two print settings will do: width ${percent(acrossFactor)}, height ${percent(alongFactor)}`,
        detail: `One scale for both will not: at ${percent(factor)} ${off}.${last ? ` With two, ${last.column.heading} is at worst ${offWords(last)}, which is within tolerance.` : ""}`,
      };
    }
    case "draft anew":
      return {
        headline: `No print scale will do: ${off}; draft anew`,
        detail: `That is what the best scale, ${percent(factor)}, leaves. The figure has another shape, so the pieces have to change by more than their size. If that surprises you, look for slips in Check.`,
      };
  }
}

function settingsOf(scale: PrintScale, isApart: boolean): readonly Setting[] {
  const setting = (what: string, factor: number, measures: readonly ScaledMeasure[]): Setting => ({
    what,
    percent: printSetting(factor).percent,
    says: roundingWords(factor, measures),
  });
  if (!isApart) return [setting("Print setting", scale.factor, scale.measures)];
  const across = scale.measures.filter(({ column }) => isAcross(column));
  const along = scale.measures.filter(({ column }) => !isAcross(column));
  return [
    setting("Width of the print", scale.acrossFactor, across),
    setting("Height of the print", scale.alongFactor, along),
  ];
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
        : ofTolerance <= 1 + 1e-9
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
