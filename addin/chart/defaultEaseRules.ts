import type { EaseAmount, EaseRule } from "./easeRule.ts";

const handbook = "Published: wearing ease, a costume-shop handbook (cwu.edu, ch. 16)";
const easeClasses = "Published: ease classes of dresses in the pattern-industry chart, from memory";
const envelope = "The project’s own, around the published 7½ in of a loose jacket (a pattern envelope)";
const own = "The project’s own starting value";

/** Misses size 14 of the pattern-industry chart, rounded as in the ease classes: bust 36 in, waist 28 in, hip 38 in. */
const full = {
  bustGirth: 36,
  waistGirth: 28,
  hipGirth: 38,
  thighGirth: 22,
  upperArmGirth: 11,
  wristGirth: 6,
};
type FullSize = keyof typeof full;

/** What the turnings of a seam take up on a small figure; a millimetre is nothing at full size. The project’s own. */
const turningsMm = 1;

/**
 * The ease rules that come with the project. Published values are full-size inches: they are turned into a percentage of
 * the body on which they are published, less one millimetre that is kept as it is at every size. Boundaries between ease
 * classes lie in the middle of the ⅛ in that the published chart leaves open.
 */
export const defaultEaseRules: readonly EaseRule[] = [
  inches("Close-fitting bodice", "bustGirth", 1.5, 2.9375, `${handbook} (least); ${easeClasses} (most)`),
  inches("Close-fitting bodice", "waistGirth", 0.75, 2, `${handbook} (least); ${own} (most)`),
  ...bodiceDetails("Close-fitting bodice"),

  percent("Close-fitting dress", "bustGirth", 0, inchAmount("bustGirth", 2.9375), easeClasses),
  inches("Close-fitting dress", "waistGirth", 0.75, 2, `${handbook} (least); ${own} (most)`),
  inches(
    "Close-fitting dress",
    "hipGirth",
    2,
    3,
    `${handbook} (least); encyclopedia, “Ease (sewing)” (most)`,
  ),
  ...bodiceDetails("Close-fitting dress"),

  inches("Fitted dress", "bustGirth", 2.9375, 4.0625, easeClasses),
  inches("Fitted dress", "waistGirth", 0.75, 3, `${handbook} (least); ${own} (most)`),
  inches("Fitted dress", "hipGirth", 2, 4, `${handbook} (least); ${own} (most)`),
  ...bodiceDetails("Fitted dress"),

  inches("Semi-fitted dress", "bustGirth", 4.0625, 5.0625, easeClasses),
  inches("Semi-fitted dress", "hipGirth", 2, 6, `${handbook} (least); ${own} (most)`),
  ...bodiceDetails("Semi-fitted dress"),

  inches("Dress", "bustGirth", 1.5, 5.0625, `${handbook} (least); ${easeClasses} (most)`),
  inches("Dress", "waistGirth", 0.75, 3, `${handbook} (least); ${own} (most)`),
  inches("Dress", "hipGirth", 2, undefined, handbook, false),
  ...bodiceDetails("Dress"),

  inches("Loose dress", "bustGirth", 5.0625, 8, easeClasses),
  inches("Loose dress", "hipGirth", 2, undefined, handbook, false),

  inches("Very loose dress", "bustGirth", 8, undefined, easeClasses),
  inches("Very loose dress", "hipGirth", 2, undefined, handbook, false),

  inches("Loose top", "bustGirth", 5.0625, 8, `${easeClasses}, taken over for tops`),
  optionalPercent("Loose top", "upperArmGirth", 8, 60),

  inches("Jacket", "bustGirth", 5.0625, 8, `${easeClasses}, taken over for loose jackets`),
  inches("Jacket", "hipGirth", 5, 10, envelope, false),
  optionalPercent("Jacket", "upperArmGirth", 10, 60),

  inches("Coat", "bustGirth", 5.0625, 12, own),
  inches("Coat", "hipGirth", 5, undefined, own, false),
  optionalPercent("Coat", "upperArmGirth", 12, 70),

  inches("Fitted skirt", "waistGirth", 0.5, 1.5, `${handbook} (least); ${own} (most)`),
  inches("Fitted skirt", "hipGirth", 2, 3, `${handbook} (least); encyclopedia, “Ease (sewing)” (most)`),

  inches("Flared skirt", "waistGirth", 0.5, 1.5, `${handbook} (least); ${own} (most)`),
  inches("Flared skirt", "hipGirth", 2, undefined, handbook, false),

  inches("Trousers", "waistGirth", 0.5, 1.5, `${handbook} (least, as for skirts); ${own} (most)`),
  inches("Trousers", "hipGirth", 2, 5, `${handbook} (least); ${own} (most)`),
  inches(
    "Trousers",
    "thighGirth",
    1,
    undefined,
    `${handbook}, on a thigh of 22 in (the project’s own)`,
    false,
  ),

  percent("Briefs", "waistGirth", -20, { percent: 8, mm: 0 }, own),
  percent("Briefs", "hipGirth", -20, { percent: 8, mm: 0 }, own),

  inches("Sleeve", "upperArmGirth", 1, 4, own),
  inches("Sleeve", "wristGirth", 0.5, undefined, own, false),

  percent("Hosiery", "calfGirth", -25, { percent: 2, mm: 0 }, own),
  percent("Hosiery", "ankleGirth", -25, { percent: 8, mm: 0 }, own, false),
  percent("Hosiery", "thighGirth", -25, { percent: 2, mm: 0 }, own, false),
  ...lengthDetail("Hosiery", "footLength", -15, 4),

  percent("Shoe", "footLength", 0, { percent: 8, mm: 1 }, own),
  percent("Shoe", "footWidth", 0, { percent: 12, mm: 1 }, own, false),
  {
    garmentClass: "Shoe",
    measure: "heelHeight",
    least: { percent: -10, mm: -1.5 },
    most: { percent: 10, mm: 1.5 },
    required: true,
    source: own,
  },

  percent("Glove", "handGirth", 0, { percent: 12, mm: 1 }, own),
  ...lengthDetail("Glove", "handLength", 0, 10),

  percent("Headwear", "headGirth", 0, { percent: 5, mm: 1 }, own),
];

/** An ease published in inches on a full-size body, as percent + mm. */
function inchAmount(measure: FullSize, ease: number): EaseAmount {
  const mm = ease === 0 ? 0 : turningsMm;
  const share = (100 * (ease * 25.4 - mm)) / (full[measure] * 25.4);
  return { percent: Math.round(share * 1000) / 1000, mm };
}

function inches(
  garmentClass: string,
  measure: FullSize,
  least: number,
  most: number | undefined,
  source: string,
  required = true,
): EaseRule {
  return {
    garmentClass,
    measure,
    least: inchAmount(measure, least),
    ...(most === undefined ? {} : { most: inchAmount(measure, most) }),
    required,
    source,
  };
}

function percent(
  garmentClass: string,
  measure: string,
  least: number,
  most: EaseAmount,
  source: string,
  required = true,
): EaseRule {
  return { garmentClass, measure, least: { percent: least, mm: 0 }, most, required, source };
}

function optionalPercent(garmentClass: string, measure: string, least: number, most: number): EaseRule {
  return percent(garmentClass, measure, least, { percent: most, mm: turningsMm }, own, false);
}

function lengthDetail(
  garmentClass: string,
  measure: string,
  least: number,
  most: number,
): readonly EaseRule[] {
  return [percent(garmentClass, measure, least, { percent: most, mm: turningsMm }, own, false)];
}

/** What fitted bodices share: the sleeve at the upper arm, and the place of the waist. */
function bodiceDetails(garmentClass: string): readonly EaseRule[] {
  return [
    optionalPercent(garmentClass, "upperArmGirth", 5, 45),
    ...lengthDetail(garmentClass, "backWaistLength", -2, 5),
  ];
}
