import { useState } from "react";
import { face } from "../ui/theme.ts";

/*
 * Drawings are laid out in units of their own: sixteen are 1 rem, a unit is a CSS pixel where the reader has not set letters larger.
 * So a drawing grows with the letters around it, and what has room in it has room at any size (WCAG 2.2, 1.4.4 Resize Text).
 */

/** Size of the letters of drawings, in their units. */
export const letterSize = 12;

/** The size of letters that browsers begin with, in CSS pixels. */
const usualRoot = 16;

/** Units of a drawing → a length of CSS that follows the letters of the page. */
export function inRem(units: number): string {
  return `${String(units / usualRoot)}rem`;
}

/** CSS pixels to one unit of a drawing, as the page is set now. */
export function unitPx(): number {
  return (parseFloat(getComputedStyle(document.documentElement).fontSize) || usualRoot) / usualRoot;
}

/** How wide words are in the letters of drawings, in their units. */
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
