import { limits } from "./limits.ts";

/** Letters in a row between which no line can be broken, as many as are one too many. */
const tooLongWord = new RegExp(
  `[^\\s\\p{sc=Han}\\p{sc=Hiragana}\\p{sc=Katakana}]{${String(limits.word + 1)}}`,
  "u",
);

/** The text as far as a cell holds it: whole, unless it is longer than any text of a person’s. */
export function cutText(text: string): string {
  if (text.length <= limits.word) return text;
  const cut = text.slice(0, limits.text);
  const word = tooLongWord.exec(cut);
  return word ? cut.slice(0, word.index + limits.word) : cut;
}
