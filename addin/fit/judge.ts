import { rank } from "./verdict.ts";

/** mm that binary arithmetic may add or lose. */
const dust = 1e-9;

/**
 * The verdict on a girth: the rank of fits, snug, loose, too tight, too loose, too close to call or not known.
 *
 * Between least and most ease it fits. As far again below the least as the two are apart it is snug, as long as it closes
 * with all the stretch of its cloth; as far again above the most it is loose. Where there is one limit only, these bands
 * are half of it (the project’s own choice). A least ease that is not negative is compared with the ease at
 * the comfortable share of the stretch. A negative one is what the stretch is for, so that the stretch is not counted again:
 * it is compared with the ease unstretched, and the comfortable share has to reach the body. The most is compared with the
 * ease unstretched. Where the step between a garment that can be
 * worn and one that cannot is closer than the reading error, it is too close to call.
 *
 * @param atRest ease in mm, the cloth not stretched; NaN is not known
 * @param atComfort ease with the comfortable share of the stretch
 * @param atFull ease with the whole stretch
 * @param least least ease that fits; −Infinity where there is no limit
 * @param most most ease that fits; Infinity where there is no limit
 * @param errorMm how far the readings may be off
 */
export function judgeGirth(
  atRest: number,
  atComfort: number,
  atFull: number,
  least: number,
  most: number,
  errorMm: number,
): number {
  if (!(Number.isFinite(atRest) && Number.isFinite(errorMm))) return rank["not known"];
  const aboveLeast = roomAboveLeast(atRest, atComfort, least);
  return judgeBands(aboveLeast, most - atRest, bandWidth(least, most), atFull, errorMm);
}

function roomAboveLeast(atRest: number, atComfort: number, least: number): number {
  if (least === -Infinity) return Infinity;
  return least < 0 ? Math.min(atRest - least, atComfort) : atComfort - least;
}

/** @param closes what is left when the cloth is stretched all the way; below zero it cannot be worn */
function judgeBands(
  aboveLeast: number,
  belowMost: number,
  width: number,
  closes: number,
  errorMm: number,
): number {
  const aboveTight = Math.min(aboveLeast + width, closes);
  const belowLoose = belowMost + width;
  if (aboveTight < -errorMm) return rank["too tight"];
  if (belowLoose < -errorMm) return rank["too loose"];
  if (aboveTight < errorMm || belowLoose < errorMm) return rank["too close to call"];
  if (aboveLeast < -dust) return rank.snug;
  return belowMost < -dust ? rank.loose : rank.fits;
}

/** How far beyond least and most ease a girth is still snug or loose, in mm. */
export function bandWidth(least: number, most: number): number {
  if (least === -Infinity) return Math.abs(most) / 2;
  return most === Infinity ? Math.abs(least) / 2 : Math.max(0, most - least);
}

/**
 * The verdict on a length, as {@link judgeGirth} without stretch, in the words of girths. The bands beyond least and most are
 * half as wide: a hem or waist in the wrong place is seen before a girth is (the project’s own choice).
 */
export function judgeLength(difference: number, least: number, most: number, errorMm: number): number {
  if (!(Number.isFinite(difference) && Number.isFinite(errorMm))) return rank["not known"];
  return judgeBands(difference - least, most - difference, bandWidth(least, most) / 2, Infinity, errorMm);
}

/**
 * The verdict on something hard that has to be inside as a whole, such as a foot in a shoe: it goes in or it does not. With
 * room for it, least and most decide as in {@link judgeGirth} between fits, snug, loose and too loose (or too long).
 *
 * @param room mm between what has to go in and the garment with the comfortable share of its stretch
 */
export function judgeContained(
  room: number,
  atRest: number,
  least: number,
  most: number,
  errorMm: number,
): number {
  if (!(Number.isFinite(room) && Number.isFinite(errorMm))) return rank["not known"];
  if (room < -errorMm) return rank["will not go on"];
  if (room < errorMm) return rank["too close to call"];
  const aboveLeast = roomAboveLeast(atRest, room, least);
  if (aboveLeast < -dust) return rank.snug;
  return judgeBands(aboveLeast, most - atRest, bandWidth(least, most), room, errorMm);
}

/** The verdict on an opening, from its clearance in mm: fits, too close to call, will not go on, not known. */
export function judgeClearance(clearanceMm: number, errorMm: number): number {
  if (!(Number.isFinite(clearanceMm) && Number.isFinite(errorMm))) return rank["not known"];
  if (clearanceMm < -errorMm) return rank["will not go on"];
  return clearanceMm < errorMm ? rank["too close to call"] : rank.fits;
}
