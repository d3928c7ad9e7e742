import { findMeasure } from "../../measures/dictionary.ts";
import { readHeading } from "../../measures/heading.ts";

/** One reading with what belongs to it: a fraction behind the whole inches, a unit; or a mark for one not taken. */
const reading =
  /(?:~\s*)?(?:\d+(?:[.,]\d+)?(?:[ -]\d+[/⁄]\d+| ?[¼-¾⅐-⅞])?|\d+[/⁄]\d+|[¼-¾⅐-⅞])(?: ?(?:mm|cm|in\b|inch(?:es)?|["″”]))?|[-–—?](?=\s|$)|n\/a/giu;

/** Words that one heading has at most. */
const mostWords = 4;

/**
 * A list as it is copied from a printed page, where spaces stand between the cells → tabs between them. Where most lines have
 * wide gaps, these part the cells. Else the name ends where the readings begin, a fraction goes with the number before it, and
 * headings are parted where they name measures.
 */
export function spacesToTabs(text: string): string {
  const lines = text.split("\n");
  const filled = lines.filter((line) => line.trim() !== "");
  const gapped = filled.filter((line) => /\S[ \u00a0]{2,}\S/u.test(line)).length;
  const part = gapped * 2 > filled.length ? byGaps : byMeaning;
  return lines.map(part).join("\n");
}

function byGaps(line: string): string {
  return line.trim().replace(/[ \u00a0]{2,}/gu, "\t");
}

function byMeaning(line: string): string {
  const words = line.trim().replace(/[\s\u00a0]+/gu, " ");
  if (!/\d/u.test(words)) return headings(words.split(" ")).join("\t");
  const found = [...words.matchAll(reading)].filter(({ index }) => index > 0 && words[index - 1] === " ");
  const [first] = found;
  if (!first) return words;
  const last = found.at(-1) ?? first;
  const behind = words.slice(last.index + last[0].length).trim();
  return [
    words.slice(0, first.index).trim(),
    ...found.map(([each]) => each.trim()),
    ...(behind === "" ? [] : [behind]),
  ].join("\t");
}

/** The longest runs of words that name a measure, with a unit behind them; every other word by itself. */
function headings(words: readonly string[]): readonly string[] {
  const found: string[] = [];
  for (let at = 0; at < words.length;) {
    const sizes = Array.from({ length: Math.min(mostWords, words.length - at) }, (_, i) => i + 1).reverse();
    const size = sizes.find((each) => isMeasure(words.slice(at, at + each).join(" "))) ?? 1;
    found.push(words.slice(at, at + size).join(" "));
    at += size;
  }
  return found;
}

function isMeasure(text: string): boolean {
  return findMeasure(text) !== undefined || readHeading(text, "mm").measure !== undefined;
}
