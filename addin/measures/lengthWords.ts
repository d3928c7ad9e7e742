import { formatFraction } from "./formatFraction.ts";
import type { LengthUnit } from "./units.ts";
import { fromMm } from "./units.ts";

/**
 * A length as words give it: mm to a tenth, cm to a hundredth, inches as a tape shows them, to 1/16 or, below that,
 * to 1/64. A length below zero has its sign; one that is not known is “?”.
 *
 * @example lengthWords(12.34, "mm") // "12.3 mm"
 * @example lengthWords(9.525, "in") // `3/8"`
 */
export function lengthWords(mm: number, unit: LengthUnit): string {
  if (!Number.isFinite(mm)) return "?";
  const length = fromMm(mm, unit);
  const sign = mm < 0 ? "−" : "";
  if (unit === "in") return sign + formatFraction(Math.abs(length), Math.abs(length) < 1 / 16 ? 64 : 16);
  const decimals = unit === "mm" ? 10 : 100;
  return `${sign}${String(Math.round(Math.abs(length) * decimals) / decimals)} ${unit}`;
}
