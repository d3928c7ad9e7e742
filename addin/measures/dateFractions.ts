import { inchDivisions } from "./units.ts";

/** A calendar day as spreadsheets and text write it. Month and day count from 1. */
export interface CalendarDay {
  readonly year?: number;
  readonly month: number;
  readonly day: number;
}

const monthNames = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];

const dayMs = 86_400_000;
/** Day 61 is 1 March 1900; before it spreadsheets count a 29 February 1900 that never was. */
const serialOfMarch1900 = 61;
/** 31 December 9999, the last day a spreadsheet knows. */
const lastSerial = 2_958_465;

/**
 * The calendar day of a spreadsheet's date number (1900 date system), from March 1900 on.
 *
 * @example serialToDay(46150) // { year: 2026, month: 5, day: 8 }
 */
export function serialToDay(serial: number): CalendarDay | undefined {
  if (!(serial >= serialOfMarch1900 && serial <= lastSerial + 1)) return undefined;
  const date = new Date(Date.UTC(1900, 2, 1) + (Math.floor(serial) - serialOfMarch1900) * dayMs);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/**
 * The fractions of an inch tape that a spreadsheet may have turned into this date: month/day and day/month, and month/year when
 * the day is the first (1/32 becomes January 1932). Only what a tape shows: below one, in halves to sixty-fourths. A 3 May was
 * none, whichever way round.
 *
 * Source: Microsoft support article Q159491 for the conversion.
 *
 * @example dateFractions({ year: 2026, month: 5, day: 8 }) // ["5/8"]
 */
export function dateFractions({ year, month, day }: CalendarDay): readonly string[] {
  const pairs: [number, number][] = [
    [month, day],
    [day, month],
  ];
  if (day === 1 && year !== undefined) pairs.unshift([month, year % 100]);
  return pairs
    .filter(([over, under]) => over < under && inchDivisions.includes(under))
    .map(([over, under]) => `${String(over)}/${String(under)}`);
}

/** The day in a date written as text, tidied: `8-may`, `may-32`, `8 may 2026`, `2026-05-08`, `5/8/2026`. */
export function readDateText(tidied: string): CalendarDay | undefined {
  return namedMonth(tidied) ?? numbersOnly(tidied);
}

/** “8 May 2026”, for messages. */
export function dayText({ year, month, day }: CalendarDay): string {
  const name = monthNames[month - 1] ?? "";
  return `${String(day)} ${name.charAt(0).toUpperCase()}${name.slice(1)}${year === undefined ? "" : ` ${String(year)}`}`;
}

function namedMonth(text: string): CalendarDay | undefined {
  const dayFirst = /^(\d{1,2})[-. /]+([a-z]{3,9})\.?(?:[-., /]+(\d{2}|\d{4}))?$/.exec(text);
  if (dayFirst) return dayOf(dayFirst[3], monthNumber(dayFirst[2]), dayFirst[1]);
  const monthFirst = /^([a-z]{3,9})\.?[-. /]+(\d{1,2})(?:[-., /]+(\d{2}|\d{4}))?$/.exec(text);
  if (!monthFirst) return undefined;
  const [, name, number = "", year] = monthFirst;
  // `may-32` has no 32nd day: the number is the year.
  return Number(number) > 31 && year === undefined
    ? dayOf(number, monthNumber(name), "1")
    : dayOf(year, monthNumber(name), number);
}

function numbersOnly(text: string): CalendarDay | undefined {
  const time = String.raw`(?:[ t]\d{1,2}:\d{2}.*)?$`;
  const iso = new RegExp(`^(\\d{4})-(\\d{1,2})-(\\d{1,2})${time}`).exec(text);
  if (iso) return dayOf(iso[1], Number(iso[2]), iso[3]);
  const slashed = new RegExp(`^(\\d{1,2})([/.-])(\\d{1,2})\\2(\\d{4}|\\d{2})${time}`).exec(text);
  if (!slashed) return undefined;
  const [, first, , second, year] = slashed;
  return dayOf(year, Number(first), second) ?? dayOf(year, Number(second), first);
}

function monthNumber(name = ""): number {
  return (
    1 +
    monthNames.findIndex(
      (month) => month === name || month.slice(0, 3) === name || (name === "sept" && month === "september"),
    )
  );
}

function dayOf(year: string | undefined, month: number, day = ""): CalendarDay | undefined {
  const date = Number(day);
  if (month < 1 || month > 12 || date < 1 || date > 31) return undefined;
  if (year === undefined) return { month, day: date };
  // Two digits as spreadsheets read them: 00–29 are this century.
  const short = Number(year);
  return { year: year.length > 2 ? short : short + (short < 30 ? 2000 : 1900), month, day: date };
}
