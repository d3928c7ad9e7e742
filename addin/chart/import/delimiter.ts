import { readHeading } from "../../measures/heading.ts";
import { unitOfFraction } from "../unitsOfColumns.ts";
import { lengthIn } from "../../measures/parseReading.ts";
import type { Delimiter } from "./rows.ts";
import { delimiters, firstRows } from "./rows.ts";
import type { TextReader } from "./texts.ts";
import { textReader } from "./texts.ts";

/**
 * The delimiter under which the first rows look most like a chart: rows of equal width, headings that are
 * measures, and cells that are readings. A text of one column gives a comma.
 */
export function detectDelimiter(text: string, texts = textReader()): Delimiter {
  const like = (delimiter: Delimiter) => ({ delimiter, ...chartLikeness(text, delimiter, texts) });
  const best = delimiters
    .filter((delimiter) => delimiter !== " ")
    .map(like)
    .reduce((most, next) => (next.score > most.score ? next : most));
  if (best.isEven) return best.delimiter;
  // Copied from a printed list there is nothing but spaces, which stand in names and fractions too.
  return like(" ").score > best.score ? " " : best.delimiter;
}

/** How much the first rows look like a chart, and whether they are all of one width. */
function chartLikeness(
  text: string,
  delimiter: Delimiter,
  texts: TextReader,
): { readonly score: number; readonly isEven: boolean } {
  const rows = firstRows(text, delimiter, 50);
  const width = mostFrequent(rows.map((row) => row.length));
  if (width === undefined || width < 2) return { score: 0, isEven: false };
  const sameWidth = share(rows, (row) => row.length === width);
  const headings = share(rows[0] ?? [], (cell) => readHeading(cell, "mm").measure !== undefined);
  const readings = share(
    rows.slice(1).flatMap((row) => row.slice(1)),
    (cell) =>
      lengthIn(texts(cell), { unit: "mm", fractionUnit: unitOfFraction, isDecimal: true }).kind === "length",
  );
  return { score: sameWidth + headings + readings, isEven: sameWidth === 1 };
}

function share<T>(items: readonly T[], holds: (item: T) => boolean): number {
  return items.length === 0 ? 0 : items.filter(holds).length / items.length;
}

function mostFrequent(numbers: readonly number[]): number | undefined {
  const counts = new Map<number, number>();
  for (const n of numbers) counts.set(n, (counts.get(n) ?? 0) + 1);
  return [...counts].reduce<readonly [number, number] | undefined>(
    (best, next) => (best && best[1] >= next[1] ? best : next),
    undefined,
  )?.[0];
}
