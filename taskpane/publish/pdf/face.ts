import type { PDFFont } from "@cantoo/pdf-lib";
import bidiFactory from "bidi-js";

/** A face of the document, which remembers how wide its words are. */
export class Face {
  private readonly characters: ReadonlySet<number>;
  private readonly widths = new Map<string, number>();

  constructor(readonly font: PDFFont) {
    this.characters = new Set(font.getCharacterSet());
  }

  /** Points that a text without spaces at its ends takes, as the sum of its words. */
  width(text: string, size: number): number {
    const words = text.split(" ");
    return (
      words.reduce((sum, word) => sum + this.wordWidth(word), (words.length - 1) * this.wordWidth(" ")) * size
    );
  }

  /**
   * The pieces of a line from left to right, each in one direction, as the font shapes them. What the face cannot show is a box, so
   * that the reader sees that something is missing.
   */
  pieces(line: string): readonly { readonly text: string; readonly width: (size: number) => number }[] {
    return visualPieces(line).map((piece) => {
      const text = this.known(piece);
      return { text, width: (size) => this.font.widthOfTextAtSize(text, size) };
    });
  }

  /** A text in lines that are at most so many points wide; a word that is wider goes on in the next line, behind its hyphen where it has one. */
  wrapped(text: string, size: number, width: number): readonly string[] {
    return text.split("\n").flatMap((part) => {
      const lines: string[] = [];
      let line = "";
      const add = (piece: string, between: string): void => {
        const longer = line === "" ? piece : `${line}${between}${piece}`;
        if (line !== "" && this.width(longer, size) > width) {
          lines.push(line);
          line = piece;
        } else line = longer;
      };
      for (const word of part.split(" ")) {
        if (this.width(word, size) <= width) add(word, " ");
        else
          for (const [i, piece] of word.split(/(?<=[-–—/])/u).entries()) {
            const letters = this.width(piece, size) <= width ? [piece] : [...piece];
            for (const [j, each] of letters.entries()) add(each, i + j === 0 ? " " : "");
          }
      }
      return [...lines, line];
    });
  }

  private known(text: string): string {
    return [...text.replace(/[^\S\u00a0]/gu, " ")]
      .map((character) => (this.characters.has(character.codePointAt(0) ?? 0) ? character : "□"))
      .join("");
  }

  private wordWidth(word: string): number {
    const known = this.widths.get(word);
    if (known !== undefined) return known;
    const width = this.pieces(word).reduce((sum, piece) => sum + piece.width(1), 0);
    this.widths.set(word, width);
    return width;
  }
}

const bidi = bidiFactory();
/** Marks of direction, which nobody sees. */
const marks = /[\u2066-\u2069\u200e\u200f]/gu;
/** Letters that are written from right to left, and the marks that say so. */
const fromRight = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\u200f\u2067]/u;
const lettersFromRight = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}]/u;

/**
 * A line from left to right, in pieces of one direction: the Unicode Bidirectional Algorithm (UAX #9) with rule L2 by runs. A piece of
 * letters from the right stays in the order in which it is read, since the font turns it when it joins its letters.
 */
export function visualPieces(line: string): readonly string[] {
  if (!fromRight.test(line)) return [line.replace(marks, "")];
  const { levels } = bidi.getEmbeddingLevels(line, "ltr");
  const runs: { readonly level: number; text: string }[] = [];
  for (let at = 0; at < line.length; at++) {
    const level = levels[at] ?? 0;
    const last = runs.at(-1);
    const character = level % 2 === 1 ? (bidi.getMirroredCharacter(line[at]!) ?? line[at]!) : line[at]!;
    if (last?.level === level) last.text += character;
    else runs.push({ level, text: character });
  }
  const most = Math.max(...runs.map(({ level }) => level));
  let ordered = runs;
  for (let level = most; level >= 1; level--) ordered = reversedFrom(ordered, level);
  return ordered
    .map(({ level, text }) => {
      const shown = text.replace(marks, "");
      return level % 2 === 1 && !lettersFromRight.test(shown) ? [...shown].reverse().join("") : shown;
    })
    .filter((text) => text !== "");
}

/** Every sequence of runs of at least a level the other way round (UAX #9, rule L2). */
function reversedFrom<T extends { readonly level: number }>(runs: readonly T[], level: number): T[] {
  const result: T[] = [];
  let sequence: T[] = [];
  for (const run of runs) {
    if (run.level >= level) sequence = [run, ...sequence];
    else {
      result.push(...sequence, run);
      sequence = [];
    }
  }
  return [...result, ...sequence];
}
