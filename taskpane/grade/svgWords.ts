import { shortNumber } from "./placePiece.ts";

/** Height of the letters on paper. */
export const letterMm = 3;
/** Mean width of a letter, as a share of its height; on the wide side, so that no words are cut off. */
const letterShare = 0.58;

/** How wide words become on paper, in mm. */
export function widthOfWords(words: string): number {
  return [...words].length * letterMm * letterShare;
}

/** Lines of whole words that are no wider than the room. */
export function wrapped(words: string, roomMm: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || widthOfWords(longer) > roomMm) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** Words at a place, as svg. */
export function textAt(x: number, y: number, words: string, more = ""): string {
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
