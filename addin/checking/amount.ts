import { formatFraction } from "../measures/formatFraction.ts";
import { fromMm, type LengthUnit } from "../measures/units.ts";

/** A length as it stands in the chart, in the unit of its column: `78.5 mm`, `3.15 cm`, `5 3/8"`, `5.4 in`. */
export function amount(mm: number, unit: LengthUnit): string {
  const length = fromMm(mm, unit);
  return unit === "in" && isTapeFraction(length) ? formatFraction(length, 64) : `${plain(length)} ${unit}`;
}

/** A length that was worked out, no finer than a tape shows: whole mm, tenths of a cm, eighths of an inch. */
export function roughAmount(mm: number, unit: LengthUnit): string {
  if (unit === "in") return formatFraction(fromMm(mm, "in"), 8);
  return unit === "cm"
    ? `${plain(Math.round(mm) / 10)} cm`
    : `${plain(mm < 30 ? Math.round(mm * 2) / 2 : Math.round(mm))} mm`;
}

/** A reading put right: at most two decimals, inches to 1/16. */
export function mendedAmount(mm: number, unit: LengthUnit): string {
  const length = fromMm(mm, unit);
  if (unit === "in") return isTapeFraction(length) ? amount(mm, unit) : formatFraction(length);
  return `${String(Number(length.toFixed(2)))} ${unit}`;
}

/** True for a length in inches that is a whole number of 1/64. */
export function isTapeFraction(inches: number): boolean {
  return Math.abs(inches * 64 - Math.round(inches * 64)) < 1e-6;
}

/** Without the noise of conversion: at most four decimals, no trailing zeros. */
export function plain(length: number): string {
  return String(Number(length.toFixed(4)));
}
