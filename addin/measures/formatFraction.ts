import { InputError } from "./inputError.ts";
import { inchDivisions } from "./units.ts";

/**
 * A length in inches → whole number and fraction as a tape shows it, to the nearest 1/`denominator`; exactly half way
 * goes away from zero. Fractions are reduced and carry over to the next inch. Differences may be negative.
 *
 * @param inches any finite number
 * @param denominator parts of an inch: 1, 2, 4, 8, 16, 32 or 64; 16 when left out
 * @throws {InputError} when the length is not finite or no tape has the denominator
 * @example formatFraction(5.375) // `5 3/8"`
 * @example formatFraction(-0.99, 8) // `-1"`
 */
export function formatFraction(inches: number, denominator = 16): string {
  if (!Number.isFinite(inches))
    throw new InputError(`“${String(inches)}” is not a length. Give a number of inches.`);
  if (denominator !== 1 && !inchDivisions.includes(denominator)) {
    throw new InputError(
      `“${String(denominator)}” is not a division of a tape. Use 1, 2, 4, 8, 16, 32 or 64.`,
    );
  }
  const parts = Math.round(Math.abs(inches) * denominator);
  const whole = Math.floor(parts / denominator);
  const over = parts - whole * denominator;
  const common = greatestCommonDivisor(over, denominator);
  const fraction = over === 0 ? "" : `${String(over / common)}/${String(denominator / common)}`;
  const shown = [whole > 0 || over === 0 ? String(whole) : "", fraction].filter((part) => part !== "");
  return `${inches < 0 && parts > 0 ? "-" : ""}${shown.join(" ")}"`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
