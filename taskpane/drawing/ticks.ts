import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { fromMm, toMm } from "../../addin/measures/units.ts";

/** A mark of a scale. */
export interface Tick {
  /** Share of the width, 0 to 1. */
  readonly at: number;
  readonly words: string;
}

const mostTicks = 4;

/** The least room between the words of two marks, in units of a drawing. */
const between = 14;

/**
 * Where the words of marks stand below a scale: under their marks, no farther out than the scale reaches. A mark whose words have
 * no room beside those before them goes without.
 *
 * @param width of the scale, in units of a drawing
 * @param widthOf of words, in the same
 */
export function tickLabels(
  ticks: readonly Tick[],
  width: number,
  widthOf: (words: string) => number,
): readonly { readonly x: number; readonly words: string }[] {
  let free = Number.NEGATIVE_INFINITY;
  return ticks.flatMap(({ at, words }) => {
    const half = widthOf(words) / 2;
    const x = Math.min(Math.max(at * width, half), width - half);
    if (width < 2 * half || x - half < free) return [];
    free = x + half + between;
    return [{ x, words }];
  });
}

/** The round marks of a scale between two lengths. */
export function ticksOf(fromMm: number, toMm: number, unit: LengthUnit): readonly Tick[] {
  const spanMm = toMm - fromMm;
  const stepMm = roundLengthAbove(spanMm / mostTicks, unit);
  const first = Math.ceil(fromMm / stepMm - 1e-9);
  const last = Math.floor(toMm / stepMm + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const mm = (first + i) * stepMm;
    return { at: (mm - fromMm) / spanMm, words: mm === 0 ? "0" : lengthWords(mm, unit) };
  });
}

/**
 * The next larger round length, in mm: 1, 2, 5, 10 … of a metric unit; halves and doubles of an inch.
 *
 * @example
 * roundLengthAbove(30, "mm"); // 50
 */
export function roundLengthAbove(leastMm: number, unit: LengthUnit): number {
  const least = fromMm(leastMm, unit);
  if (unit === "in") return toMm(2 ** Math.ceil(Math.log2(least) - 1e-9), unit);
  const power = 10 ** Math.floor(Math.log10(least));
  return toMm(([1, 2, 5].find((step) => step * power >= least) ?? 10) * power, unit);
}

/**
 * The next smaller round length, in mm.
 *
 * @example
 * roundLengthBelow(30, "mm"); // 20
 */
export function roundLengthBelow(mostMm: number, unit: LengthUnit): number {
  const most = fromMm(mostMm, unit);
  if (unit === "in") return toMm(2 ** Math.floor(Math.log2(most) + 1e-9), unit);
  const power = 10 ** Math.floor(Math.log10(most));
  return toMm(([5, 2].find((step) => step * power <= most) ?? 1) * power, unit);
}
