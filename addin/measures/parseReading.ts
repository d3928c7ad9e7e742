import type { CalendarDay } from "./dateFractions.ts";
import { dateFractions, dayText, readDateText } from "./dateFractions.ts";
import type { DecimalMark } from "./decimal.ts";
import { readDecimal } from "./decimal.ts";
import { meansMissing } from "./missing.ts";
import { quote } from "./quote.ts";
import { tidyReading } from "./tidyReading.ts";
import type { LengthUnit } from "./units.ts";
import { findUnit, inchDivisions, mmPerUnit } from "./units.ts";

/** What a cell or a typed text says about one measure of one figure. */
export type Reading =
  | {
      readonly kind: "length";
      readonly mm: number;
      /** As written, else the assumed one. */
      readonly unit: LengthUnit;
      /** What the unit rests on: the writing itself, a fraction that names none, or `unit` of the options. */
      readonly unitFrom: "written" | "fraction" | "assumed";
      /** Set where the writing says that it was not measured. */
      readonly origin?: Origin;
    }
  | { readonly kind: "missing" }
  | {
      readonly kind: "refused";
      /** What was read and what to do, in words. */
      readonly reason: string;
      /** Set when it looks like a fraction that a spreadsheet turned into a date: the fractions it may have been. */
      readonly fractions?: readonly string[];
    };

/** Where a length comes from that was not measured: an estimate (`~ 152`), or somebody’s list (`152 (list)`). */
export type Origin = "estimated" | "from a list";

type Refused = Extract<Reading, { readonly kind: "refused" }>;

/** What is assumed of a reading that names no unit. */
export interface AssumedUnits {
  /** The unit of a number; `"none"` for a plain number, which comes out as if it were in mm. */
  readonly unit: LengthUnit | "none";
  /** The unit of a fraction: inches where nothing else is stated. As `unit` when left out. */
  readonly fractionUnit?: LengthUnit | undefined;
  /** True where digits that can be two numbers (`1.234`) are to be taken for decimals. */
  readonly isDecimal?: boolean;
}

export interface ReadingOptions extends AssumedUnits {
  /** The mark between whole and decimal digits, where it is known; see {@link readDecimal} for the rules without it. */
  readonly decimalMark?: DecimalMark;
}

/** 10 m: longer than any figure, and below every date number of the years that spreadsheets give to short dates. */
export const longestMm = 10_000;
/** Characters beyond which a text is no reading. */
const longestText = 200;
/** Between the marks of a tape in tenths, halves and quarters are read by eye (common practice). */
const metricDivisions: readonly number[] = [2, 4];

/** One quantity with the unit written behind it. */
interface Term {
  readonly value: number;
  /** What the digits are if their mark groups thousands, where it can be either. */
  readonly thousands?: number;
  readonly unit: TermUnit | undefined;
  readonly fraction: Fraction | undefined;
}
interface Fraction {
  /** False for a fraction alone, such as `3/8`. */
  readonly hasWhole: boolean;
  readonly over: number;
  readonly under: number;
}
type TermUnit = LengthUnit | "ft" | "m";

const mmPer: Readonly<Record<TermUnit, number>> = { ...mmPerUnit, ft: 12 * 25.4, m: 1000 };
const unitOfTerm: Readonly<Record<TermUnit, LengthUnit>> = {
  mm: "mm",
  cm: "cm",
  in: "in",
  ft: "in",
  m: "cm",
};

class Refusal {
  constructor(readonly what: string) {}
}

/**
 * A tape reading in any common writing → millimetres. Never throws; a text that is not one length is refused with
 * a reason that quotes it.
 *
 * Reads whole and decimal numbers, fractions below one, whole number and fraction (`5 3/8`, `5-3/8`, `5⅜`,
 * `5 and 3/8`), each with mm, cm, m, inches or feet behind it, and feet with inches, metres with centimetres,
 * centimetres with millimetres. Refused are negative numbers, ranges, more than one number, powers of ten, fractions
 * of one or more (`53/8` may be a lost space), fractions that no tape has (`84/88 cm` are two readings or a slip; inch tapes
 * are halved down to sixty-fourths, between metric marks halves and quarters are read by eye), digits that can be two
 * numbers (`1.234 mm`; see {@link readDecimal}), and lengths over 10 m. `~ 152` and `152 (list)` are lengths that were not
 * measured, see {@link Origin}.
 *
 * @example parseReading("5 3/8", { unit: "in" }) // { kind: "length", mm: 136.525, unit: "in", unitFrom: "fraction" }
 * @example parseReading("13,65 cm", { unit: "in" }) // { kind: "length", mm: 136.5, unit: "cm", unitFrom: "written" }
 * @example parseReading("n/a", { unit: "mm" }) // { kind: "missing" }
 */
export function parseReading(text: string, options: ReadingOptions): Reading {
  return lengthIn(readWritten(text, options.decimalMark), options);
}

/** What a text says, before it is known in what unit a number is that names none. */
export type Written =
  | Exclude<Reading, { readonly kind: "length" }>
  | {
      readonly kind: "amount";
      readonly text: string;
      readonly terms: readonly Term[];
      readonly origin: Origin | undefined;
    };

/** Reads a text but for its unit, see {@link parseReading}. */
export function readWritten(text: string, decimalMark?: DecimalMark): Written {
  if (text.trim().length > longestText) return refusal(text, "is too long for a reading. Give one length");
  const { rest: tidied, origin } = splitOrigin(tidyReading(text));
  if (meansMissing(tidied)) return { kind: "missing" };
  const day = readDateText(tidied);
  if (day) return refuseDate(text, day);
  // A leading apostrophe is how spreadsheets keep a fraction from becoming a date.
  const terms = readTerms(tidied.replace(/^'(?=[\d.,])/, ""), decimalMark);
  return terms instanceof Refusal ? refusal(text, terms.what) : { kind: "amount", text, terms, origin };
}

/** The reading, in the units that are assumed where the text names none. */
export function lengthIn(written: Written, assumed: AssumedUnits): Reading {
  if (written.kind !== "amount") return written;
  const reading = addTerms(written.terms, assumed);
  if (reading instanceof Refusal) return refusal(written.text, reading.what);
  return written.origin && reading.kind === "length" ? { ...reading, origin: written.origin } : reading;
}

const signsOfOrigin: readonly (readonly [RegExp, Origin])[] = [
  [/^(?:~|≈|∼|≃|(?:ca|approx|est|about)\b\.?) ?(?=[\d.,])/, "estimated"],
  [/ ?\((?:est\.?|estimated?)\)$/, "estimated"],
  [/ ?\((?:from )?(?:a |the )?list(?:ed)?\)$/, "from a list"],
];

/** Takes off what says that a length was not measured. */
function splitOrigin(tidied: string): { readonly rest: string; readonly origin: Origin | undefined } {
  const [sign, origin] = (/\d/.test(tidied) && signsOfOrigin.find(([each]) => each.test(tidied))) || [];
  return { rest: sign ? tidied.replace(sign, "") : tidied, origin };
}

/** A number as a cell keeps it with its origin, to be read as it was: `~ 152`, `152 (list)`. */
export function withOrigin(value: number, origin: Origin | undefined): number | string {
  if (!origin) return value;
  return origin === "estimated" ? `~ ${String(value)}` : `${String(value)} (list)`;
}

function refusal(text: string, what: string): Refused {
  return { kind: "refused", reason: `${quote(text)} ${what}.` };
}

/** The refusal of a date where a reading belongs; the fractions of a tape that it may have been are offered. */
export function refuseDate(text: string, day: CalendarDay): Refused {
  const fractions = dateFractions(day);
  const perhaps =
    fractions.length > 0 ? `, perhaps a fraction that the sheet changed: ${fractions.join(" or ")}` : "";
  const shown = quote(text) === quote(dayText(day)) ? "" : ` (${dayText(day)})`;
  return {
    kind: "refused",
    reason: `${quote(text)}${shown} is a date${perhaps}. Type the reading again, as text.`,
    fractions,
  };
}

const termPattern =
  /(?:(\d+) ?\/ ?(\d+)|(\d+)(?: |-| ?(?:\+|&|and) ?)(\d+) ?\/ ?(\d+)|(\d[\d.,]*|[.,]\d[\d.,]*))(?! ?\/) ?("|'|(?!(?:and|to|or)\b)[a-z]+\.?)? ?/y;

function readTerms(tidied: string, mark: DecimalMark | undefined): readonly Term[] | Refusal {
  if (/^[-(]/.test(tidied) && /\d/.test(tidied))
    return new Refusal("is negative. A reading is a length from 0 up");
  if (/\d ?e ?[-+]?\d/.test(tidied))
    return new Refusal("is a power of ten. Write the length in ordinary digits");
  const [, thousands, rest] = /(?:^|\D)(\d{1,3})'(\d{3})(?!\d)/.exec(tidied) ?? [];
  if (thousands !== undefined && rest !== undefined)
    return new Refusal(`can be ${thousands}${rest}, or ${thousands} ft and ${rest} in. Write one of these`);
  const pattern = new RegExp(termPattern);
  const terms: Term[] = [];
  while (pattern.lastIndex < tidied.length) {
    const from = pattern.lastIndex;
    const match = pattern.exec(tidied);
    if (!match) return new Refusal(whyNotALength(tidied, from));
    const term = readTerm(match, mark);
    if (term instanceof Refusal) return term;
    terms.push(term);
  }
  return terms;
}

function readTerm(match: RegExpExecArray, mark: DecimalMark | undefined): Term | Refusal {
  const [, over, under, whole, wholeOver, wholeUnder, digits, unitText] = match;
  const unit = unitText === undefined ? undefined : findTermUnit(unitText);
  if (unitText !== undefined && !unit) {
    return new Refusal(
      `has ${quote(unitText)} behind the number, which is not a unit of length. Use mm, cm or in`,
    );
  }
  if (digits !== undefined) {
    const read = readDecimal(digits, mark);
    return "refused" in read ? new Refusal(read.refused) : { ...read, unit, fraction: undefined };
  }
  const fraction = {
    hasWhole: whole !== undefined,
    over: Number(over ?? wholeOver),
    under: Number(under ?? wholeUnder),
  };
  const why = whyNoFraction(fraction);
  return why === undefined
    ? { value: Number(whole ?? 0) + fraction.over / fraction.under, unit, fraction }
    : new Refusal(why);
}

/** Why no tape shows such a fraction, in words; undefined where one does. */
function whyNoFraction({ hasWhole, over, under }: Fraction): string | undefined {
  if (under === 0) return "has 0 below the fraction stroke. Check the fraction";
  if (over >= under && inchDivisions.includes(under))
    return "has a fraction of 1 or more, perhaps a lost space. Write it as a whole number and a fraction, such as 5 3/8";
  if (!inchDivisions.includes(under))
    return hasWhole
      ? `has ${String(under)} below the fraction stroke, and no tape is divided so. Check the fraction`
      : `is no fraction of a tape, since none is divided into ${String(under)}: are they two readings, or a slip? Give one reading`;
  // 30/32 may be an inch less a sixteenth, or a tape read as 30 and as 32.
  if (!hasWhole && under >= 16 && over >= 0.75 * under && over % 2 === 0)
    return `can be two readings, ${String(over)} and ${String(under)}, or the fraction ${lowestTerms(over, under)}. Write one of these`;
  return undefined;
}

function lowestTerms(over: number, under: number): string {
  return over % 2 === 0 ? lowestTerms(over / 2, under / 2) : `${String(over)}/${String(under)}`;
}

function findTermUnit(text: string): TermUnit | undefined {
  const word = text.replace(/\.$/, "");
  if (["'", "ft", "foot", "feet"].includes(word)) return "ft";
  if (["m", "metre", "metres", "meter", "meters"].includes(word)) return "m";
  return findUnit(word);
}

/** One length, or one length in two units: `1' 4 1/2"`, `5" 3/8`, `13 cm 6 mm`. */
function addTerms(terms: readonly Term[], options: AssumedUnits): Reading | Refusal {
  const [first] = terms;
  if (!first) return new Refusal("is not a length. Write a number, such as 5 3/8 or 13.6 cm");
  const assumed = options.unit === "none" ? "mm" : options.unit;
  const bare = first.fraction ? (options.fractionUnit ?? assumed) : assumed;
  let unit: TermUnit = first.unit ?? bare;
  let mm = first.value * mmPer[unit];
  for (const [i, term] of terms.slice(1).entries()) {
    const before = terms[i];
    const next = before && followingUnit(before, term);
    if (!next) return new Refusal("holds more than one number. Give one reading");
    if (next !== unit && term.value * mmPer[next] >= mmPer[unit]) {
      return new Refusal(`has a second part of 1 ${unit} or more. Check the reading`);
    }
    mm += term.value * mmPer[next];
    unit = next;
  }
  // Thousands are told from decimals where they would be too large; a second part is less than one of the first.
  const { thousands } = first;
  if (thousands !== undefined && !options.isDecimal && thousands * mmPer[first.unit ?? bare] <= longestMm)
    return new Refusal(`can be ${String(thousands)} or ${decimalsOf(first.value)}. Write one of these`);
  if (!(mm <= longestMm)) return new Refusal("is longer than 10 m. Check the number and its unit");
  const isMetric = unit !== "in" && unit !== "ft" && options.unit !== "none";
  const odd = terms.find(({ fraction }) => fraction && !metricDivisions.includes(fraction.under))?.fraction;
  if (isMetric && odd) return new Refusal(whyNotMetric(odd, unit, first.unit !== undefined));
  return {
    kind: "length",
    mm,
    unit: unitOfTerm[first.unit ?? bare],
    unitFrom: first.unit ? "written" : first.fraction ? "fraction" : "assumed",
  };
}

/** Not with three digits behind the mark, so that what is offered is read when it is typed. */
function decimalsOf(value: number): string {
  return /\.\d{3}$/.test(String(value)) ? `${String(value)}0` : String(value);
}

function whyNotMetric({ under }: Fraction, unit: TermUnit, isWritten: boolean): string {
  const tape = `a tape in ${unit} has no ${String(under)} parts`;
  return isWritten
    ? `is no reading of a tape, since ${tape}: are they two readings, or a slip? Give one reading`
    : `is a fraction as inch tapes have them, in a place for ${unit}: ${tape}. Write in behind it, or the reading in ${unit}`;
}

/** The unit of a second part, where the two parts make one length. */
function followingUnit(before: Term, term: Term): TermUnit | undefined {
  if (!Number.isInteger(before.value)) return undefined;
  if (before.unit === "ft") return term.unit === undefined || term.unit === "in" ? "in" : undefined;
  if (before.unit === "in" && term.fraction?.hasWhole === false && (term.unit ?? "in") === "in") return "in";
  if (before.unit === "m" && (term.unit === "cm" || term.unit === "mm")) return term.unit;
  if (before.unit === "cm" && term.unit === "mm") return "mm";
  return undefined;
}

function whyNotALength(tidied: string, at: number): string {
  const rest = tidied.slice(at);
  if (!/\d/.test(tidied))
    return "is not a length. Write a number, such as 5 3/8 or 13.6 cm, or leave the cell empty";
  if (at > 0 && /^(-|to\b|~|\.\.|or\b|\/)/.test(rest)) {
    return "looks like a range or a sum. Give one reading";
  }
  return `has ${quote(rest)} in it, which is not part of a length. Write a number, such as 5 3/8 or 13.6 cm`;
}
