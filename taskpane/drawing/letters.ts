import { useState } from "react";
import { face } from "../ui/theme.ts";

/** Size of the letters of drawings, in CSS pixels. */
export const letterSize = 12;

/** How wide words are in the letters of drawings, in CSS pixels. */
export type WidthOf = (words: string) => number;

/** Of a letter, where nothing can be measured: on the wide side. */
const usualLetter = 7.2;

/** Measures words as the drawings of this page show them, in bold, which is the widest that they use. */
export function useWidthOf(): WidthOf {
  const [widthOf] = useState(measuring);
  return widthOf;
}

function measuring(): WidthOf {
  const pen = document.createElement("canvas").getContext("2d");
  if (!pen) return (words) => words.length * usualLetter;
  pen.font = `600 ${String(letterSize)}px ${face}`;
  const known = new Map<string, number>();
  return (words) => {
    const width = known.get(words) ?? Math.ceil(pen.measureText(words).width);
    known.set(words, width);
    return width;
  };
}
