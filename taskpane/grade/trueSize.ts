import { testSquareMm } from "../../addin/grading/printWords.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { paperColours } from "../ui/theme.ts";
import { diagramWords } from "./diagramWords.ts";
import type { GradedPiece } from "./gradedPieces.ts";
import type { Sized } from "./inRows.ts";
import { inRows } from "./inRows.ts";
import { papers } from "./papers.ts";
import type { PlacedPiece } from "./placePiece.ts";
import { arrowPath, outlinePath, placePiece, shortNumber } from "./placePiece.ts";
import { escaped, letterMm, textAt, widthOfWords, wrapped } from "./svgWords.ts";

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

const marginMm = 8;
const betweenMm = 8;
/** No page is narrower than A4. */
const leastInnerMm = papers[0].widthMm - 2 * marginMm;
const lineMm = 4.5;
/** Between the lines of one label. */
const labelLineMm = 3.6;
const titleMm = 5;
const headMm = 2;
const face = "Arial, Helvetica, sans-serif";

/**
 * Pieces as a page of their own, true to size when it is printed at 100 %: base dashed and target solid over each other, every
 * point named with its movement, and a test square. The page grows with the pieces; those that cannot be drawn are left out.
 */
export function trueSizePage(pieces: readonly GradedPiece[], words: PageWords): TrueSizePage {
  const drawn = pieces.filter(({ outlines }) => outlines.corners.length > 0).map(pieceBlock);
  const blocks = [squareBlock(words.unit), ...drawn];
  const innerMm = innerWidth(blocks, words);
  const head = headLines(words, innerMm);
  const headHeightMm = headHeight(head);
  const { places, height } = inRows(blocks, innerMm, betweenMm);
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

/** The words for the test square: how to check that the print is true. */
function squareWords(unit: LengthUnit): readonly string[] {
  return [
    "Test square",
    "Measure this square on",
    "the print: each side",
    `must be ${lengthWords(testSquareMm(unit), unit)}.`,
  ];
}

interface Block extends Sized {
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
    width: Math.max(placed.width, widthOfWords(`${name}  ${from}`) * 1.1),
    height: placed.height + lineMm,
    text: [
      `<text x="0" y="${String(letterMm)}"><tspan font-weight="700">${escaped(name)}</tspan><tspan dx="2" fill="${paperColours.quiet}">${escaped(from)}</tspan></text>`,
      `<g transform="translate(0 ${String(lineMm)})">`,
      ...shapes(placed),
      `</g>`,
    ].join("\n"),
  };
}

function shapes({ base, target, bends, origin, labels }: PlacedPiece): readonly string[] {
  const { quiet, chalk } = paperColours;
  const [x, y] = origin;
  return [
    `<path d="${outlinePath(base, bends)}" fill="none" stroke="${quiet}" stroke-width="0.3" stroke-dasharray="2 1.2"/>`,
    `<path d="${outlinePath(target, bends)}" fill="none" stroke="${chalk}" stroke-width="0.45"/>`,
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

interface Head {
  readonly title: string;
  readonly notes: readonly string[];
}

function headLines({ base, target }: PageWords, roomMm: number): Head {
  return {
    title: `Grade: ${base} to ${target}`,
    notes: [
      `Dashed: ${base}. Solid: ${target}. An arrow shows where each point goes.`,
      diagramWords,
      "Print at 100 % (actual size), not fitted to the page, and measure the test square before you use it.",
    ].flatMap((line) => wrapped(line, roomMm)),
  };
}

function headHeight({ notes }: Head): number {
  return titleMm + (notes.length + 0.8) * lineMm;
}

/** The width of A4 or Letter where all fits on one, upright or across; else about as wide as high. */
function innerWidth(blocks: readonly Block[], words: PageWords): number {
  const widest = Math.max(...blocks.map(({ width }) => width));
  const sheets = papers.flatMap(({ widthMm, heightMm }) => [
    [widthMm, heightMm] as const,
    [heightMm, widthMm] as const,
  ]);
  for (const [widthMm, heightMm] of sheets) {
    const innerMm = widthMm - 2 * marginMm;
    const headMm = headHeight(headLines(words, innerMm));
    if (widest <= innerMm && headMm + inRows(blocks, innerMm, betweenMm).height <= heightMm - 2 * marginMm)
      return innerMm;
  }
  const areaMm2 = blocks.reduce(
    (sum, { width, height }) => sum + (width + betweenMm) * (height + betweenMm),
    0,
  );
  return Math.max(leastInnerMm, widest, Math.sqrt(areaMm2));
}
