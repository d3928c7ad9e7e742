import type { Chart } from "../../addin/chart/chart.ts";
import { flareRadius } from "../../addin/grading/flare.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";

/** Parts of a circle that a flared skirt is cut as. */
export const circleParts = {
  full: { part: 1, words: "Full circle" },
  threeQuarters: { part: 0.75, words: "3/4 circle" },
  half: { part: 0.5, words: "Half circle" },
  quarter: { part: 0.25, words: "1/4 circle" },
} as const;
export type CirclePart = keyof typeof circleParts;
export const circlePartKeys: readonly CirclePart[] = ["full", "threeQuarters", "half", "quarter"];

/** At what radius the waist of a flared skirt is cut for a figure, in a sentence. */
export function flareWords(
  chart: Chart,
  figure: number,
  cut: { readonly part: CirclePart; readonly easeMm: number; readonly allowanceMm: number },
): string {
  const name = chart.figures[figure] ?? "";
  const column = chart.measures.find(({ key }) => key === "waistGirth");
  const waistMm = column?.mm[figure] ?? Number.NaN;
  if (!column || Number.isNaN(waistMm)) return `${name}: measure the waist first.`;
  const words = (mm: number) => lengthWords(mm, column.unit);
  const { part } = circleParts[cut.part];
  const seamMm = flareRadius(waistMm + cut.easeMm, part);
  const radiusMm = flareRadius(waistMm + cut.easeMm, part, cut.allowanceMm);
  if (!(radiusMm > 0)) {
    return `${name}: the seam allowance of ${words(cut.allowanceMm)} is as wide as the radius of the seam line, ${words(seamMm)}. Take a narrower allowance or a smaller part of a circle.`;
  }
  const seam = cut.allowanceMm > 0 ? `; the seam line lies at ${words(seamMm)}` : "";
  return `${name}: cut the waist at a radius of ${words(radiusMm)}${seam}.`;
}
