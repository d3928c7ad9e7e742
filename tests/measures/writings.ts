/**
 * Writings of lengths with what each means, built up from parts and never read back: number, unit and typography are chosen first,
 * so that the length is known before the text is. Nothing of the project's reader is used here.
 *
 * Sources: an inch is 25.4 mm and a foot twelve inches (international yard and pound agreement, 1959). Primes, quotation marks,
 * spaces, fraction characters and full-width forms: the Unicode Standard (code charts General Punctuation, Number Forms,
 * Superscripts and Subscripts, Halfwidth and Fullwidth Forms). Which of them people type for a tape reading: common practice.
 */

export type Meaning =
  /** Length in mm, whatever unit is assumed. */
  | { readonly mm: number }
  /** A bare decimal or whole number: so many of whatever unit is assumed. */
  | { readonly bare: number }
  /** No one length: has to be refused. */
  | "refused";

export interface Writing {
  readonly text: string;
  readonly means: Meaning;
  /** How it was put together, for the table of counts. */
  readonly kind: string;
}

const inch = 25.4;
const foot = 12 * inch;

/** Mulberry32: the same writings on every machine. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const spaces = ["", " ", "\u00a0", "\u2009", "\u202f", "\u2007", "\u3000"];
const inchMarks = [
  ...['"', "”", "″", "“", "‟", "''", "′′", "’’", "＂", "〃"],
  ...["in", "in.", "ins", "inch", "inches", "IN", "Inch", "ｉｎ"],
];
const footMarks = ["'", "’", "′", "ft", "ft.", "foot", "feet", "FT"];
const metric: readonly (readonly [string, number])[] = [
  ...["mm", "MM", "mm.", "㎜", "millimetres", "millimeters", "millimetre", "ｍｍ"].map(
    (unit) => [unit, 1] as const,
  ),
  ...["cm", "cm.", "CM", "㎝", "cms", "centimetres", "centimeters", "ｃｍ"].map(
    (unit) => [unit, 10] as const,
  ),
];
const vulgar: readonly (readonly [string, number, number])[] = [
  ["½", 1, 2],
  ["¼", 1, 4],
  ["¾", 3, 4],
  ["⅛", 1, 8],
  ["⅜", 3, 8],
  ["⅝", 5, 8],
  ["⅞", 7, 8],
];
const notOfATape = ["⅓", "⅔", "⅕", "⅖", "⅗", "⅘", "⅙", "⅚", "⅐", "⅑", "⅒"];
const strokes = ["/", "⁄", "∕", " / "];
const joints = [" ", "-", "–", "‑", " and ", "+", " & ", "\u00a0", "\u2009"];
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const lowered = "₀₁₂₃₄₅₆₇₈₉";

const inDigits = (n: number, digits: string) =>
  [...String(n)].map((digit) => (/\d/.test(digit) ? digits[Number(digit)] : digit)).join("");
const fullWidth = (text: string) =>
  text.replace(/[0-9./,]/g, (c) => String.fromCharCode(c.charCodeAt(0) + 0xfee0));

/** Every kind of writing, `each` of each kind at random, and all the spellings of the small ones. */
export function writings(each = 120, seed = 1): readonly Writing[] {
  const next = numbers(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const many = (make: () => Writing) => Array.from({ length: each }, make);
  /** In lowest terms, so that nothing but the fraction can be meant. */
  const tapeFraction = () => {
    const under = 2 ** whole(1, 6);
    return { over: 2 * whole(1, under / 2) - 1, under };
  };
  const written = (over: number, under: number) =>
    pick([
      () => `${String(over)}${pick(strokes)}${String(under)}`,
      () => `${inDigits(over, raised)}⁄${inDigits(under, lowered)}`,
      () => fullWidth(`${String(over)}/${String(under)}`),
    ])();
  const decimal = (digits: number, most = 300) => {
    const last = whole(1, 9);
    const part = `${Array.from({ length: digits - 1 }, () => String(whole(0, 9))).join("")}${String(last)}`;
    const before = whole(1, most);
    return { before, part, value: Number(`${String(before)}.${part}`) };
  };
  const mark = () => pick([".", ","]);

  return [
    // Whole numbers and decimals with their unit.
    ...metric.flatMap(([unit, mm]) =>
      spaces.map((space): Writing => {
        const value = whole(1, 400);
        return { kind: "whole, metric", text: `${String(value)}${space}${unit}`, means: { mm: value * mm } };
      }),
    ),
    ...inchMarks.flatMap((unit) =>
      spaces.map((space): Writing => {
        const value = whole(1, 80);
        return {
          kind: "whole, inches",
          text: `${String(value)}${space}${unit}`,
          means: { mm: value * inch },
        };
      }),
    ),
    ...many(() => {
      const { before, part, value } = decimal(whole(1, 2));
      const [unit, mm] = pick(metric);
      const text = `${String(before)}${mark()}${part}`;
      return {
        kind: "decimal, metric",
        text: `${pick([text, fullWidth(text)])}${pick(spaces)}${unit}`,
        means: { mm: value * mm },
      };
    }),
    ...many(() => {
      const { before, part, value } = decimal(whole(1, 4), 40);
      return {
        kind: "decimal, inches",
        text: `${String(before)}${mark()}${part}${pick(spaces)}${pick(inchMarks)}`,
        means: { mm: value * inch },
      };
    }),
    ...many(() => {
      const { before, part, value } = decimal(pick([1, 2, 4]));
      return { kind: "decimal, bare", text: `${String(before)}${mark()}${part}`, means: { bare: value } };
    }),
    ...many(() => {
      const value = whole(1, 390);
      const text = String(value);
      return {
        kind: "whole, bare",
        text: pick([text, fullWidth(text), `\u200b${text}`]),
        means: { bare: value },
      };
    }),
    ...many(() => {
      const part = String(whole(1, 999)).padStart(3, "0");
      return {
        kind: "decimal below one, bare",
        text: `${pick(["0.", "0,", ".", ","])}${part}`,
        means: { bare: Number(`0.${part}`) },
      };
    }),
    // Fractions of an inch, with the unit and without.
    ...[...inchMarks, ""].flatMap((unit) =>
      vulgar.flatMap(([character, over, under]) =>
        ["", " ", "\u2009", "-"].map((joint): Writing => {
          const before = whole(1, 30);
          const value = before + over / under;
          return {
            kind: "fraction character",
            text: `${String(before)}${joint}${character}${unit}`,
            means: { mm: value * inch },
          };
        }),
      ),
    ),
    ...many(() => {
      const { over, under } = tapeFraction();
      const before = whole(1, 40);
      return {
        kind: "whole and fraction, inches",
        text: `${String(before)}${pick(joints)}${written(over, under)}${pick(spaces)}${pick(inchMarks)}`,
        means: { mm: (before + over / under) * inch },
      };
    }),
    ...many(() => {
      const { over, under } = tapeFraction();
      const before = whole(1, 40);
      return {
        kind: "whole and fraction, bare",
        text: `${String(before)}${pick(joints)}${written(over, under)}`,
        means: { mm: (before + over / under) * inch },
      };
    }),
    ...many(() => {
      const { over, under } = tapeFraction();
      return {
        kind: "fraction alone",
        text: `${written(over, under)}${pick(["", ` ${pick(inchMarks)}`])}`,
        means: { mm: (over / under) * inch },
      };
    }),
    ...many(() => {
      const { over, under } = tapeFraction();
      const before = whole(1, 40);
      return {
        kind: "inch mark before the fraction",
        text: `${String(before)}${pick(['"', "”", "″", " in"])} ${String(over)}/${String(under)}${pick(["", '"'])}`,
        means: { mm: (before + over / under) * inch },
      };
    }),
    // Two units.
    ...footMarks.flatMap((mark) =>
      ["", " "].flatMap((space) =>
        Array.from({ length: 11 }, (_, i): Writing => {
          const feet = whole(1, 6);
          return {
            kind: "feet and inches",
            text: `${String(feet)}${/\w/.test(mark) ? ` ${mark} ` : mark}${space}${String(i + 1)}${pick(['"', "”", " in", " inches"])}`,
            means: { mm: feet * foot + (i + 1) * inch },
          };
        }),
      ),
    ),
    ...many(() => {
      const { over, under } = tapeFraction();
      const feet = whole(1, 5);
      const inches = whole(1, 11);
      return {
        kind: "feet, inches and fraction",
        text: `${String(feet)}${pick(["'", "’", "′"])}${pick(["", " "])}${String(inches)} ${String(over)}/${String(under)}${pick(['"', "”", "″"])}`,
        means: { mm: feet * foot + (inches + over / under) * inch },
      };
    }),
    ...many(() => {
      const cm = whole(1, 200);
      const mm = whole(1, 9);
      return { kind: "cm and mm", text: `${String(cm)} cm ${String(mm)} mm`, means: { mm: cm * 10 + mm } };
    }),
    ...many(() => {
      const m = whole(1, 2);
      const cm = whole(1, 99);
      return { kind: "m and cm", text: `${String(m)} m ${String(cm)} cm`, means: { mm: m * 1000 + cm * 10 } };
    }),
    ...many(() => {
      const value = whole(1, 400);
      const [unit, mm] = pick(metric);
      const [character, over, under] = pick(vulgar.slice(0, 3));
      return {
        kind: "halves and quarters, metric",
        text: `${String(value)}${pick(["", " "])}${character}${pick(["", " "])}${unit}`,
        means: { mm: (value + over / under) * mm },
      };
    }),
    // Thousands of mm, told by two marks.
    ...many(() => {
      const thousands = whole(1, 9);
      const rest = String(whole(0, 999)).padStart(3, "0");
      const tenth = whole(1, 9);
      return {
        kind: "thousands and decimals, mm",
        text: pick([
          `${String(thousands)},${rest}.${String(tenth)} mm`,
          `${String(thousands)}.${rest},${String(tenth)} mm`,
        ]),
        means: { mm: Number(`${String(thousands)}${rest}.${String(tenth)}`) },
      };
    }),
    // What can be two things.
    ...many(() => {
      const text = `${String(whole(1, 9))}${mark()}${String(whole(0, 999)).padStart(3, "0")}`;
      return {
        kind: "thousands or decimals, mm",
        text: `${text}${pick([" mm", "mm", "㎜"])}`,
        means: "refused",
      };
    }),
    ...many(() => ({
      kind: "thousands or feet",
      text: `${String(whole(1, 9))}${pick(["'", "’", "′"])}${String(whole(0, 999)).padStart(3, "0")}${pick(["", " mm"])}`,
      means: "refused",
    })),
    ...many(() => {
      const first = whole(40, 130);
      const second = first + whole(1, 6);
      const odd = second % 2 === 1 || second > 64 ? second : second + 1;
      return {
        kind: "two readings with a stroke",
        text: `${String(first)}/${String(odd)}${pick(["", " cm", '"', " mm", " in"])}`,
        means: "refused",
      };
    }),
    ...[14, 28, 30, 26, 60, 62, 58, 50].flatMap((over) =>
      ["", '"', " cm", " mm"].map((unit): Writing => {
        const under = over < 16 ? 16 : over < 32 ? 32 : 64;
        return {
          kind: "two readings that look like a fraction",
          text: `${String(over)}/${String(under)}${unit}`,
          means: "refused",
        };
      }),
    ),
    ...many(() => {
      const under = pick([3, 5, 6, 7, 9, 10, 12, 13, 15, 18, 20, 24, 88, 100, 128]);
      const over = whole(1, under - 1);
      return {
        kind: "fraction that no tape has",
        text: `${pick(["", `${String(whole(1, 40))} `])}${String(over)}/${String(under)}${pick(["", '"', " in", " cm"])}`,
        means: "refused",
      };
    }),
    ...notOfATape.flatMap((character) =>
      ["", "5", "5 "].flatMap((before) =>
        ["", '"', " cm"].map((unit): Writing => ({
          kind: "fraction character that no tape has",
          text: `${before}${character}${unit}`,
          means: "refused",
        })),
      ),
    ),
    ...many(() => {
      const under = pick([8, 16, 32, 64]);
      return {
        kind: "eighths and finer, metric",
        text: `${String(whole(1, 40))} ${String(2 * whole(1, under / 2) - 1)}/${String(under)} ${pick(["mm", "cm"])}`,
        means: "refused",
      };
    }),
    ...many(() => {
      const first = whole(60, 300);
      return {
        kind: "two readings or a range",
        text: `${String(first)}${pick([" - ", "–", " to ", "-", " ", " or ", "~"])}${String(first + whole(1, 9))}${pick(["", " mm", " cm"])}`,
        means: "refused",
      };
    }),
  ];
}
