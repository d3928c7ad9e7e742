import type { Movement } from "../../addin/grading/grade.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

/** Below half of this nothing is to be seen in the words for a length. */
const leastMm = 0.05;

/**
 * Where a point goes, in words: “13.8 mm out, 2 mm up”, “stays”. Out is away from the line that the piece is measured from, on
 * either side of it.
 *
 * @param baseAcrossMm where the point lies on the base piece
 */
export function movementWords(
  { acrossMm, alongMm }: Pick<Movement, "acrossMm" | "alongMm">,
  baseAcrossMm: number,
  unit: LengthUnit,
): string {
  const parts = [acrossWords(acrossMm, baseAcrossMm, unit), alongWords(alongMm, unit)].filter(
    (words) => words !== "",
  );
  return parts.length === 0 ? "stays" : parts.join(", ");
}

/** “13.8 mm out”; "" where it stays. */
export function acrossWords(acrossMm: number, baseAcrossMm: number, unit: LengthUnit): string {
  if (Number.isNaN(acrossMm)) return "across not known";
  if (Math.abs(acrossMm) < leastMm) return "";
  const size = lengthWords(Math.abs(acrossMm), unit);
  if (Math.abs(baseAcrossMm) < leastMm) return `${size} ${acrossMm > 0 ? "right" : "left"}`;
  return `${size} ${acrossMm > 0 === baseAcrossMm > 0 ? "out" : "in"}`;
}

/** “2 mm up”; "" where it stays. */
export function alongWords(alongMm: number, unit: LengthUnit): string {
  if (Number.isNaN(alongMm)) return "up or down not known";
  if (Math.abs(alongMm) < leastMm) return "";
  return `${lengthWords(Math.abs(alongMm), unit)} ${alongMm > 0 ? "up" : "down"}`;
}
