import { testSquareMm } from "../../addin/grading/printWords.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { paperColours } from "../theme.ts";
import type { GradedPiece } from "./gradedPieces.ts";
import type { PlacedPiece } from "./placePiece.ts";
import { arrowPath, outlinePath, placePiece, shortNumber } from "./placePiece.ts";
import { diagramWords } from "./diagramWords.ts";

/** What the page says about itself. */
export interface PageWords {
  readonly base: string;
  readonly target: string;
  /** The unit of the test square. */
  readonly unit: LengthUnit;
}

/** A page that prints true to size. */
export interface TrueSizePage {
  /** The text of an SVG file whose units are millimetres. */
  readonly text: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

const marginMm = 10;
/** Width of the rows: A4 upright without its margins; wider only where one piece is. */
const rowMm = 190;
const betweenMm = 12;
const letterMm = 3;
const lineMm = 4.5;
/** Between the lines of one label. */
const labelLineMm = 3.6;
const titleMm = 5;
const headMm = 2;
/** Mean width of a letter, as a share of its height; on the wide side, so that no words are cut off. */
const letterShare = 0.58;
const face = "Arial, Helvetica, sans-serif";

/**
 * Pieces as a page of their own, true to size when it is printed at 100 %: base dashed and target solid over each other, every
 * point named with its movement, and a test square. The page grows with the pieces; those that cannot be drawn are left out.
 */
export function trueSizePage(pieces: readonly GradedPiece[], words: PageWords): TrueSizePage {
  const drawn = pieces.filter(({ outlines }) => outlines.corners.length > 0).map(pieceBlock);
  const blocks = [squareBlock(words.unit), ...drawn];
  const innerMm = Math.max(rowMm, ...blocks.map(({ width }) => width));
  const head = headLines(words, innerMm);
  const headHeightMm = titleMm + head.notes.length * lineMm + lineMm;
  const { places, height } = inRows(blocks, innerMm);
  const widthMm = innerMm + 2 * marginMm;
  const heightMm = marginMm + headHeightMm + height + marginMm;
  const [w, h] = [shortNumber(widthMm), shortNumber(heightMm)];
  const text = [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" font-family="${face}" font-size="${String(letterMm)}" fill="${paperColours.ink}">`,
    `<title>${escaped(head.title)}</title>`,
    `<desc>${escaped(head.notes.join(" "))}</desc>`,
    `<rect width="${w}" height="${h}" fill="#FFFFFF"/>`,
    textAt(marginMm, marginMm + titleMm - 1, head.title, ` font-size="${String(titleMm)}" font-weight="700"`),
    ...head.notes.map((line, i) => textAt(marginMm, marginMm + titleMm + (i + 1) * lineMm, line)),
    ...blocks.map((block, i) => {
      const [x = 0, y = 0] = places[i] ?? [];
      const at = [marginMm + x, marginMm + headHeightMm + y].map(shortNumber).join(" ");
      return `<g transform="translate(${at})">\n${block.text}\n</g>`;
    }),
    `</svg>`,
    ``,
  ].join("\n");
  return { text, widthMm, heightMm };
}

const papers = [
  { name: "A4", widthMm: 210, heightMm: 297 },
  { name: "Letter", widthMm: 215.9, heightMm: 279.4 },
] as const;

/** How large the page is, and on which paper it fits. */
export function pageWords(
  { widthMm, heightMm }: Pick<TrueSizePage, "widthMm" | "heightMm">,
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

/** The words for the test square: how to check that the print is true. */
export function squareWords(unit: LengthUnit): readonly string[] {
  return [
    "Test square",
    "Measure this square on",
    "the print: each side",
    `must be ${lengthWords(testSquareMm(unit), unit)}.`,
  ];
}

interface Block {
  readonly width: number;
  readonly height: number;
  readonly text: string;
}

function squareBlock(unit: LengthUnit): Block {
  const side = testSquareMm(unit);
  return {
    width: side,
    height: side,
    text: [
      `<rect id="test-square" width="${shortNumber(side)}" height="${shortNumber(side)}" fill="none" stroke="${paperColours.ink}" stroke-width="0.25"/>`,
      ...squareWords(unit).map((line, i) =>
        textAt(4, 8 + i * lineMm, line, i === 0 ? ` font-weight="700"` : ""),
      ),
    ].join("\n"),
  };
}

function pieceBlock({ name, outlines, points }: GradedPiece): Block {
  const placed = placePiece(outlines, {
    perMm: 1,
    label: (point, i) => [point, points[i]?.words ?? ""],
    widthOf: widthOfWords,
    gap: 2 * lineMm,
    lead: 3,
  });
  const from = `+ ${outlines.origin}`;
  return {
    width: Math.max(placed.width, widthOfWords(name) * 1.1, widthOfWords(from)),
    height: placed.height + 2 * lineMm + 1,
    text: [
      textAt(0, letterMm, name, ` font-weight="700"`),
      `<g transform="translate(0 ${String(lineMm)})">`,
      ...shapes(placed),
      `</g>`,
      textAt(0, placed.height + 2 * lineMm, from, ` fill="${paperColours.quiet}"`),
    ].join("\n"),
  };
}

function shapes({ base, target, origin, labels }: PlacedPiece): readonly string[] {
  const { quiet, chalk } = paperColours;
  const [x, y] = origin;
  return [
    `<path d="${outlinePath(base)}" fill="none" stroke="${quiet}" stroke-width="0.3" stroke-dasharray="2 1.2"/>`,
    `<path d="${outlinePath(target)}" fill="none" stroke="${chalk}" stroke-width="0.45"/>`,
    `<path d="M${shortNumber(x - 1.5)} ${shortNumber(y)}h3M${shortNumber(x)} ${shortNumber(y - 1.5)}v3" fill="none" stroke="${quiet}" stroke-width="0.25"/>`,
    ...target.flatMap((to, i) => {
      const from = base[i];
      const arrow = from ? arrowPath(from, to, headMm) : "";
      const dot = `<circle cx="${shortNumber(to[0])}" cy="${shortNumber(to[1])}" r="0.7" fill="${chalk}"/>`;
      return arrow === ""
        ? [dot]
        : [`<path d="${arrow}" fill="none" stroke="${chalk}" stroke-width="0.3"/>`, dot];
    }),
    ...labels.flatMap(({ lines, of, at, anchor }) => {
      const end = at[0] + (anchor === "end" ? 0.8 : -0.8);
      return [
        `<path d="M${shortNumber(of[0])} ${shortNumber(of[1])}L${shortNumber(end)} ${shortNumber(at[1])}" fill="none" stroke="${quiet}" stroke-width="0.12"/>`,
        ...lines.map((line, i) =>
          textAt(
            at[0],
            at[1] + letterMm / 3 + (i - (lines.length - 1) / 2) * labelLineMm,
            line,
            anchor === "end" ? ` text-anchor="end"` : "",
          ),
        ),
      ];
    }),
  ];
}

function headLines(
  { base, target }: PageWords,
  roomMm: number,
): { readonly title: string; readonly notes: readonly string[] } {
  return {
    title: `Grade: ${base} to ${target}`,
    notes: [
      `Dashed: ${base}. Solid: ${target}. An arrow shows where each point goes.`,
      diagramWords,
      "Print at 100 % (actual size), not fitted to the page, and measure the test square before you use it.",
    ].flatMap((line) => wrapped(line, roomMm)),
  };
}

/** Blocks in rows from left to right, none over another. */
function inRows(
  blocks: readonly Block[],
  roomMm: number,
): { readonly places: readonly (readonly [number, number])[]; readonly height: number } {
  const places: [number, number][] = [];
  let [x, y, rowHeight] = [0, 0, 0];
  for (const { width, height } of blocks) {
    if (x > 0 && x + width > roomMm) {
      y += rowHeight + betweenMm;
      [x, rowHeight] = [0, 0];
    }
    places.push([x, y]);
    x += width + betweenMm;
    rowHeight = Math.max(rowHeight, height);
  }
  return { places, height: y + rowHeight };
}

/** Lines of whole words that are no wider than the room. */
function wrapped(words: string, roomMm: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || widthOfWords(longer) > roomMm) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

function widthOfWords(words: string): number {
  return [...words].length * letterMm * letterShare;
}

function textAt(x: number, y: number, words: string, more = ""): string {
  return `<text x="${shortNumber(x)}" y="${shortNumber(y)}"${more}>${escaped(words)}</text>`;
}

/** Text that stands for itself in XML; control characters, which no XML file may hold, are left out. */
export function escaped(text: string): string {
  return text
    .replace(/[^\P{Cc}\t\n\r]/gu, "")
    .replace(/&/gu, "&amp;")
    .replace(/</gu, "&lt;")
    .replace(/>/gu, "&gt;")
    .replace(/"/gu, "&quot;");
}
