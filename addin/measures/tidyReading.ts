/** Unicode's single-character fractions, as the two numbers that they stand for. */
const vulgarFractions: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
  "↉": "0/3",
  "⅟": "1/",
};

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const subscripts = "₀₁₂₃₄₅₆₇₈₉";

/**
 * A typed or pasted reading in plain characters: lower case, single spaces, `/` for every fraction stroke, `-` for
 * every dash, `'` and `"` for every foot and inch mark, fraction characters written out.
 *
 * Unicode's own compatibility form would not do: it turns `5⅜` into 53⁄8 and `5²` into 52.
 */
export function tidyReading(text: string): string {
  return (
    text
      // Marks that nobody sees: zero-width spaces, joiners, direction marks, soft hyphen, byte order mark.
      .replace(/[\u00ad\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g, "")
      .replace(/[\uff01-\uff5e]/g, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
      .replace(/㎜/g, "mm")
      .replace(/㎝/g, "cm")
      .replace(/[⁄∕⧸]/g, "/")
      .replace(/[‐‑‒–—―−﹣]/g, "-")
      .replace(/([⁰¹²³⁴-⁹]+)\/([₀-₉]+|\d+)/g, raisedFraction)
      .replace(/(\d?)([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒↉⅟])/g, (_, before: string, fraction: string) =>
        before ? `${before} ${vulgarFractions[fraction] ?? ""}` : (vulgarFractions[fraction] ?? ""),
      )
      .replace(/[‘’‛′ʹʼ`´]/g, "'")
      .replace(/[“”„‟″〃ʺ]|''/g, '"')
      .replace(/\s+/g, " ")
      .trim()
      .toLowerCase()
  );
}

/** `5³⁄₈` → `5 3/8`: the raised digits begin the fraction. */
function raisedFraction(_: string, over: string, under: string, at: number, whole: string): string {
  const plain = (digits: string, from: string): string =>
    [...digits].map((digit) => (from.includes(digit) ? String(from.indexOf(digit)) : digit)).join("");
  const gap = /\d/.test(whole.charAt(at - 1)) ? " " : "";
  return `${gap}${plain(over, superscripts)}/${plain(under, subscripts)}`;
}
