import type { z } from "zod";
import { didYouMean } from "../measures/nearNames.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { cutShort, quote, someOf } from "../measures/quote.ts";
import type { garmentClassSchema } from "./fitSchemas.ts";

/** Parts of the figure that a class of garment is worn on; it decides how the garment is put on and what it covers. */
export const wornOnParts = [
  "upper body",
  "whole body",
  "hips",
  "hips and legs",
  "arm",
  "leg",
  "foot",
  "hand",
  "head",
] as const;
export type WornOn = (typeof wornOnParts)[number];

export const openingPlaces = ["neck", "cuff", "hem", "waist"] as const;
/** Openings of a garment that something has to pass. */
export type OpeningPlace = (typeof openingPlaces)[number];

/** A class of garments that are put on alike and judged by the same ease rules. */
export type GarmentClass = Readonly<z.infer<typeof garmentClassSchema>>;

/**
 * The classes that come with the project. Which part a class is worn on and what it has to pass are common practice of
 * the trade; the number of seam edges is that of the usual cut, and the project’s own choice where cuts vary.
 */
export const defaultGarmentClasses: readonly GarmentClass[] = [
  {
    ...of("Close-fitting bodice", "upper body", 4, ["neck"], "Fitted to bust and waist, ends at the waist.", [
      "bodice",
      "fitted bodice",
      "corset",
      "close-fitting top",
      "fitted top",
    ]),
    endsAt: "waist",
  },
  of("Close-fitting dress", "whole body", 4, ["neck"], "Close to bust, waist and hip.", [
    "sheath",
    "sheath dress",
    "close dress",
  ]),
  of("Fitted dress", "whole body", 4, ["neck"], "Follows the body with room to move.", []),
  of("Semi-fitted dress", "whole body", 4, ["neck"], "Follows the body lightly.", []),
  of("Dress", "whole body", 4, ["neck"], "Any dress with a waist, from close to semi-fitted.", [
    "frock",
    "gown",
    "princess dress",
  ]),
  of("Loose dress", "whole body", 4, ["neck"], "Hangs free of the body; no fitted waist.", [
    "smock",
    "shift",
    "nightdress",
    "nightgown",
    "kaftan",
  ]),
  of("Very loose dress", "whole body", 4, ["neck"], "Far from the body everywhere.", ["tent dress"]),
  of("Loose top", "upper body", 4, ["neck"], "Hangs free of the body: shirt, blouse, tunic.", [
    "top",
    "shirt",
    "blouse",
    "tunic",
    "jumper",
    "sweater",
  ]),
  {
    ...of("Jacket", "whole body", 4, ["neck"], "A loose outer layer down to the hip.", [
      "blazer",
      "cardigan",
      "loose jacket",
    ]),
    sleeve: "long",
  },
  {
    ...of("Coat", "whole body", 4, ["neck"], "The outermost layer, over dress or jacket.", [
      "overcoat",
      "mantle",
      "dressing gown",
    ]),
    sleeve: "long",
  },
  of("Fitted skirt", "hips", 4, ["waist"], "Follows waist and hip.", [
    "straight skirt",
    "pencil skirt",
    "skirt",
  ]),
  of("Flared skirt", "hips", 4, ["waist"], "Fitted at the waist only: flared, gathered or pleated.", [
    "full skirt",
    "gathered skirt",
    "circle skirt",
    "pleated skirt",
    "petticoat",
  ]),
  {
    ...of("Trousers", "hips and legs", 4, ["waist", "hem"], "Long or short legs, fitted at waist and hip.", [
      "pants",
      "shorts",
      "breeches",
      "jeans",
      "leggings",
    ]),
    endsAt: "ankle",
  },
  {
    ...of("Briefs", "hips and legs", 4, ["waist"], "Underwear for the hips.", [
      "underpants",
      "knickers",
      "drawers",
      "panties",
      "swim trunks",
    ]),
    endsAt: "hip",
  },
  {
    ...of("Sleeve", "arm", 2, ["cuff"], "A sleeve by itself.", ["sleeves", "fitted sleeve"]),
    sleeve: "long",
  },
  of(
    "Hosiery",
    "leg",
    2,
    ["hem"],
    "Stockings and socks; the hem opening is the narrowest place, at the ankle.",
    ["stockings", "stocking", "socks", "sock", "tights"],
  ),
  of("Shoe", "foot", 2, [], "Shoe, slipper or boot; measured inside.", [
    "shoes",
    "boot",
    "boots",
    "slippers",
  ]),
  of("Glove", "hand", 2, [], "Glove or mitten.", ["gloves", "mitten", "mittens"]),
  of("Headwear", "head", 2, [], "Hat, cap or bonnet.", ["hat", "cap", "bonnet", "hood", "headdress", "wig"]),
];

/**
 * The class that a text names, in any case, by its name or one of its other names.
 *
 * @param where row and column, to begin the message with
 * @throws {InputError} with near names when there is no such class
 */
export function garmentClassNamed(
  text: string,
  classes: readonly GarmentClass[],
  where: string,
): GarmentClass {
  const key = headingKey(text);
  const found =
    classes.find(({ name }) => headingKey(name) === key) ??
    classes.find(({ synonyms }) => synonyms.some((synonym) => headingKey(synonym) === key));
  if (found) return found;
  const names = classes.map(({ name }) => name);
  const near = didYouMean(text, [...names, ...classes.flatMap(({ synonyms }) => synonyms)]);
  throw new InputError(
    `${where}: ${quote(text)} is not a garment class.${near || ` The classes are ${someOf(names.map(cutShort))}.`}`,
  );
}

/** Measures that a garment lies on, by the part that it is worn on; there it takes room under another garment. */
export const coveredMeasures: Readonly<Record<WornOn, readonly string[]>> = {
  "upper body": torsoDownTo("waistGirth"),
  "whole body": torsoDownTo("hipGirth"),
  hips: ["waistGirth", "highHipGirth", "hipGirth"],
  "hips and legs": ["waistGirth", "highHipGirth", "hipGirth", ...legGirths()],
  arm: armGirths(),
  leg: [...legGirths(), "heelGirth", "footGirth", "instepGirth"],
  foot: ["heelGirth", "footGirth", "instepGirth"],
  hand: ["handGirth"],
  head: ["headGirth"],
};

/**
 * Measures of what is hard and has to be inside the garment as a whole, by the part that it is worn on: there no percentage
 * lets a garment be smaller. Everywhere else cloth lies round soft, tapering parts.
 */
const containedMeasures: Readonly<Partial<Record<WornOn, readonly string[]>>> = {
  "hips and legs": ["footLength"],
  leg: ["footLength"],
  foot: ["footLength", "footWidth"],
  hand: ["handGirth", "handLength"],
  head: ["headGirth"],
};

/** True where a garment must hold the whole of a measure. */
export function isContained(wornOn: WornOn, measure: string): boolean {
  return containedMeasures[wornOn]?.includes(measure) ?? false;
}

function torsoDownTo(last: "waistGirth" | "hipGirth"): readonly string[] {
  const above = [
    "shoulderGirth",
    "upperBustGirth",
    "bustGirth",
    "underBustGirth",
    "waistGirth",
    ...armGirths(),
  ];
  return last === "waistGirth" ? above : [...above, "highHipGirth", "hipGirth"];
}

function armGirths(): readonly string[] {
  return ["upperArmGirth", "elbowGirth", "forearmGirth", "wristGirth"];
}

function legGirths(): readonly string[] {
  return ["thighGirth", "midThighGirth", "kneeGirth", "calfGirth", "ankleGirth"];
}

function of(
  name: string,
  wornOn: WornOn,
  seamEdges: number,
  openings: OpeningPlace[],
  note: string,
  synonyms: string[],
): GarmentClass {
  return { name, wornOn, seamEdges, openings, note, synonyms };
}
