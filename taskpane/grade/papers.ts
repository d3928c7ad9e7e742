import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

/** The sizes of paper that printers have: ISO 216 and ANSI/ASME Y14.1. */
export const papers = [
  { name: "A4", widthMm: 210, heightMm: 297 },
  { name: "Letter", widthMm: 215.9, heightMm: 279.4 },
] as const;

/** How large the page is, and on which paper it fits. */
export function pageWords(
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
  unit: LengthUnit,
): string {
  const fitting = papers.filter(
    (paper) =>
      (widthMm <= paper.widthMm && heightMm <= paper.heightMm) ||
      (widthMm <= paper.heightMm && heightMm <= paper.widthMm),
  );
  const size = `The page is ${lengthWords(widthMm, unit)} wide and ${lengthWords(heightMm, unit)} high`;
  if (fitting.length === 0) {
    return `${size}, larger than A4 and Letter: print it on larger paper, or let the printer spread it over several sheets at 100 %.`;
  }
  return `${size}: it fits on ${fitting.map(({ name }) => name).join(" and ")}.`;
}
