import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { roundLengthBelow } from "./ticks.ts";

/** A bar that says how long a round length is in a drawing. */
export interface ScaleBarSize {
  readonly mm: number;
  /** Its length in the drawing, in the units of the drawing. */
  readonly length: number;
  /** The length in words: “20 mm”, `2"` */
  readonly words: string;
}

/**
 * The longest round length in the workbook’s unit that takes no more than some room.
 *
 * @param perMm units of the drawing to 1 mm
 * @param most the room, in units of the drawing
 * @example
 * scaleBar(2, "cm", 90); // { mm: 20, length: 40, words: "2 cm" }
 */
export function scaleBar(perMm: number, unit: LengthUnit, most: number): ScaleBarSize {
  const mm = roundLengthBelow(most / perMm, unit);
  return { mm, length: mm * perMm, words: lengthWords(mm, unit) };
}
