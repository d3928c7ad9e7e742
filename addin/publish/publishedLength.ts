import { mmPerUnit } from "../measures/units.ts";
import type { PublishedUnit, Rounding } from "./publication.ts";

/** The two ways in which a language writes numbers. */
export type DecimalMark = "." | ",";

const noBreak = "\u00a0";
const partsOfInch = { "inches in eighths": 8, "inches in sixteenths": 16 } as const;

/** Fractions that have a character of their own, in eighths. */
const eighths = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const lowered = "₀₁₂₃₄₅₆₇₈₉";

/**
 * A length as a published chart shows it, without its unit: `136.5`, `13.65`, `5 ⅜`, `5 ³⁄₁₆`. Halves are rounded up.
 *
 * @param mm a length from 0 up, or a difference
 * @example publishedLength(136.525, "inches in eighths", "as measured", ".") // "5 ⅜"
 */
export function publishedLength(
  mm: number,
  unit: PublishedUnit,
  rounding: Rounding,
  mark: DecimalMark,
): string {
  const sign = mm < 0 ? "−" : "";
  const size = Math.abs(mm);
  if (unit === "mm" || unit === "cm") return sign + metric(size, unit, rounding).replace(".", mark);
  return sign + inches(size, partsOfInch[unit]);
}

/** The same with its unit behind it: `136.5 mm`, `5 ⅜ in`. */
export function withUnit(text: string, unit: PublishedUnit, inchWord: string): string {
  return `${text}${noBreak}${unit === "mm" || unit === "cm" ? unit : inchWord}`;
}

/** Rounded to whole steps, halves up: what binary arithmetic adds or loses does not turn a half. */
export function wholeSteps(mm: number, stepMm: number): number {
  const steps = mm / stepMm;
  const below = Math.floor(steps);
  return steps - below > 0.5 - nearlyHalf ? below + 1 : below;
}

/** Far above the error of a division, far below what a tape can tell. */
const nearlyHalf = 1e-9;

/** What lengths in mm and cm are rounded to, in mm. */
export const stepMm: Readonly<Record<Rounding, number>> = { "as measured": 0.1, "to 1 mm": 1, "to 5 mm": 5 };

function metric(mm: number, unit: "mm" | "cm", rounding: Rounding): string {
  const tenths = wholeSteps(mm, stepMm[rounding]) * Math.round(stepMm[rounding] * 10);
  return String(unit === "mm" ? tenths / 10 : tenths / 100);
}

function inches(mm: number, parts: 8 | 16): string {
  const steps = wholeSteps(mm, mmPerUnit.in / parts);
  const whole = Math.floor(steps / parts);
  const over = steps - whole * parts;
  if (over === 0) return String(whole);
  const fraction = fractionOf(over, parts);
  return whole === 0 ? fraction : `${String(whole)}${noBreak}${fraction}`;
}

function fractionOf(over: number, parts: 8 | 16): string {
  const inEighths = parts === 8 ? over : over / 2;
  if (Number.isInteger(inEighths)) return eighths[inEighths] ?? "";
  const digits = (n: number, from: string): string =>
    [...String(n)].map((d) => from[Number(d)] ?? "").join("");
  return `${digits(over, raised)}⁄${digits(parts, lowered)}`;
}
