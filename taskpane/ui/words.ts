import { formatFraction } from "../../addin/measures/formatFraction.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { fromMm } from "../../addin/measures/units.ts";

/** 1 figure, 12 figures, 1,200 figures. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;
}

/** A number as it is shown: no more digits than a tape can give. */
export function shownNumber(value: number): string {
  return String(Number(value.toFixed(3)));
}

/**
 * A length as it is read off a tape, with its unit: `78.5 mm`, `13.65 cm`, `5 3/8"`. Inches that lie on no
 * sixteenth are shown with decimals, so that nothing is rounded away.
 */
export function shownLength(mm: number, unit: LengthUnit): string {
  const value = fromMm(mm, unit);
  if (unit !== "in") return `${shownNumber(value)} ${unit}`;
  const onSixteenth = Math.abs(value * 16 - Math.round(value * 16)) < 0.01;
  return onSixteenth ? formatFraction(value) : `${shownNumber(value)} in`;
}

const amount = String.raw`[<>≤≥~≈+−-]?\s?\d[\d.,]*(\s\d+\/\d+|\/\d+)?\s?(mm|cm|in|"|%)?`;
const amounts = new RegExp(`^(–|\\?|no limit|${amount}( – ${amount})?)$`, "u");

/**
 * Whether a text is a number, with its unit or without, or two of them as a range: what stands at the right of a column.
 *
 * @example
 * isAmount("−4.8 mm"); // true
 * isAmount("155 – 160.5"); // true
 */
export function isAmount(text: string): boolean {
  return amounts.test(text);
}

/** An estimate says no more than what can be read off a tape: whole mm, or sixteenths. */
export function aboutLength(mm: number, unit: LengthUnit): string {
  if (unit === "in") return shownLength(Math.round((mm / 25.4) * 16) * (25.4 / 16), unit);
  return shownLength(Math.round(mm), unit);
}

export const unitNames: readonly (readonly [LengthUnit, string])[] = [
  ["mm", "Millimetres"],
  ["cm", "Centimetres"],
  ["in", "Inches"],
];

/** A unit within a sentence: “inches”. */
export function unitWord(unit: LengthUnit): string {
  return unitNames.find(([each]) => each === unit)?.[1].toLowerCase() ?? unit;
}

/** A day of the user’s own calendar, as 2026-11-12. */
export function isoDay(day: Date): string {
  return [day.getFullYear(), day.getMonth() + 1, day.getDate()]
    .map((n) => String(n).padStart(2, "0"))
    .join("-");
}

/** 12 November, with its year where that is another than today’s. */
export function dayName(day: string, today: Date): string {
  const date = new Date(`${day}T12:00:00`);
  const isThisYear = date.getFullYear() === today.getFullYear();
  return new Intl.DateTimeFormat("en-GB", {
    ...{ day: "numeric", month: "long" },
    ...(!isThisYear && { year: "numeric" }),
  }).format(date);
}
