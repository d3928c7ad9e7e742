/**
 * Files give column widths in digits of the plain font. A digit of Calibri 11 is 7 pixels wide.
 * Source: ECMA-376 part 1, 18.3.1.13 (col), attribute width.
 */
const digit = 7;

/** Pixels → width as a file states it. */
export function storedWidth(pixels: number): number {
  return pixels / digit;
}

/** Width as a file states it → whole pixels. */
export function pixelWidth(stored: number): number {
  return Math.trunc(((256 * stored + Math.trunc(128 / digit)) / 256) * digit);
}
