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
  const scored = delimiters.map((delimiter) => ({ delimiter, score: chartLikeness(text, delimiter, texts) }));
  return scored.reduce((best, next) => (next.score > best.score ? next : best)).delimiter;
}

function chartLikeness(text: string, delimiter: Delimiter, texts: TextReader): number {
  const rows = firstRows(text, delimiter, 50);
  const width = mostFrequent(rows.map((row) => row.length));
  if (width === undefined || width < 2) return 0;
  const sameWidth = share(rows, (row) => row.length === width);
  const headings = share(rows[0] ?? [], (cell) => readHeading(cell, "mm").measure !== undefined);
  const readings = share(
    rows.slice(1).flatMap((row) => row.slice(1)),
    (cell) =>
      lengthIn(texts(cell), { unit: "mm", fractionUnit: unitOfFraction, isDecimal: true }).kind === "length",
  );
  return sameWidth + headings + readings;
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
