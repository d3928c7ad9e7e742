import { lengthWords } from "../measures/lengthWords.ts";
import type { PrintScale } from "./printScale.ts";
import { isPrintable, printablePercent } from "./printSetting.ts";

/**
 * `"grade"` where one size follows from the other; `"draft anew"` where the two have another shape: what the best print
 * scale leaves is beyond tolerance, even with girths and lengths scaled apart; `"not known"` where too little is measured to say.
 */
export type GradeAdvice = "grade" | "draft anew" | "not known";

/** Whether two figures are a grade apart at all, from what the best print scale leaves. */
export function gradeAdvice({ verdict }: PrintScale): GradeAdvice {
  return verdict === "one scale" || verdict === "two scales" ? "grade" : verdict;
}

/** The same as a sentence, with what is furthest off and by how much. */
export function gradeAdviceWords(scale: PrintScale): string {
  const advice = gradeAdvice(scale);
  const { worst, factor } = scale;
  if (advice === "grade") return "Grade.";
  if (advice === "not known" || !worst) return "Not known: too little is measured of both.";
  if (!isPrintable(factor)) {
    return `Draft anew: the scale is outside ${String(printablePercent.least)} to ${String(printablePercent.most)} %.`;
  }
  const { column, residualMm } = worst;
  const off = `${lengthWords(Math.abs(residualMm), column.unit)} too ${residualMm < 0 ? "large" : "small"}`;
  return `Draft anew: at the best print scale ${column.heading} is ${off}.`;
}
