import type { z } from "zod";
import { didYouMean } from "../measures/nearNames.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { cutShort, quote, someOf } from "../measures/quote.ts";
import type { garmentClassSchema } from "./fitSchemas.ts";
import type { WornOn, OpeningPlace } from "./garmentTerms.ts";

/** A class of garments that are put on alike and judged by the same ease rules. */
export type GarmentClass = Readonly<z.infer<typeof garmentClassSchema>>;

/** The share of the body round which the lacing of a corset may stand open. The project’s own. */
export const corsetGap = 0.12;

/**
 * The classes that come with the project. Which part a class is worn on and what it has to pass are common practice of
 * the trade; the number of seam edges is that of the usual cut, and the project’s own choice where cuts vary.
 */
export const defaultGarmentClasses: readonly GarmentClass[] = [
  of("Close-fitting bodice", "upper body", 4, ["neck"], "Fitted to bust and waist, ends at the waist.", {
    ...{ endsAt: "waist", names: "bodice, fitted bodice, close-fitting top, fitted top, bathing top" },
  }),
  of("Corset", "upper body", 4, ["neck"], "Laced over bust and waist; the lacing may stand open.", {
    ...{ sleeve: "none", lacingGap: corsetGap, names: "stays, bustier, basque, waspie, laced bodice" },
  }),
  of("Sheath dress", "whole body", 4, ["neck"], "Close to bust, waist and hip.", {
    names: "sheath, close-fitting dress, close dress, pencil dress",
  }),
  of("Dress", "whole body", 4, ["neck"], "With a waist that fits; the skirt as it likes.", {
    names: "frock, gown, princess dress, fitted dress, waisted dress, tea dress, ball gown",
  }),
  of("Pinafore", "whole body", 4, ["neck"], "A dress without sleeves, over other clothes.", {
    ...{ sleeve: "none", names: "pinafore dress, pinny, apron dress, jumper dress" },
  }),
  of("Straight dress", "whole body", 4, ["neck"], "Falls past the waist: no waist is fitted.", {
    names: "shift, shift dress, column dress, semi-fitted dress, chemise",
  }),
  of("Loose dress", "whole body", 4, ["neck"], "Hangs from the shoulders, free of the body.", {
    names: "smock, nightdress, nightgown, nightie, kaftan, caftan, sack dress",
  }),
  of("Tent dress", "whole body", 4, ["neck"], "Stands off the body everywhere.", {
    names: "very loose dress, muumuu, trapeze dress",
  }),
  of("Wrapped robe", "whole body", 4, [], "Crosses over in front, tied with a belt or sash.", {
    ...{
      sleeve: "long",
      names: "kimono, yukata, dressing gown, bathrobe, robe, wrap dress, wrapper, housecoat",
    },
  }),
  of("Loose top", "upper body", 4, ["neck"], "Hangs free of the body: shirt, blouse, tunic.", {
    names: "top, shirt, blouse, tunic, jumper, sweater, pullover, t-shirt, tee, sweatshirt, pyjama top",
  }),
  of("Cape", "upper body", 2, ["neck"], "Hangs from neck and shoulders over the arms.", {
    ...{ sleeve: "none", names: "cloak, capelet, poncho, mantelet, pelerine" },
  }),
  of("Jacket", "whole body", 4, ["neck"], "A loose outer layer down to the hip.", {
    ...{ sleeve: "long", names: "blazer, cardigan, loose jacket, anorak, bolero" },
  }),
  of("Coat", "whole body", 4, ["neck"], "The outermost layer, over dress or jacket.", {
    ...{ sleeve: "long", names: "overcoat, mantle, raincoat, mackintosh, duffle coat" },
  }),
  of("Fitted skirt", "hips", 4, ["waist"], "Follows waist and hip.", {
    names: "straight skirt, pencil skirt, skirt, tube skirt",
  }),
  of("Flared skirt", "hips", 4, ["waist"], "Fitted at the waist only: flared, gathered or pleated.", {
    names: "full skirt, gathered skirt, circle skirt, pleated skirt, petticoat, underskirt, kilt, tutu",
  }),
  of(
    "Trousers",
    "hips and legs",
    4,
    ["waist", "hem"],
    "Legs to the ankle unless said otherwise, fitted at waist and hip.",
    {
      ...{ endsAt: "ankle", names: "pants, breeches, jeans, slacks, pyjama trousers, pyjama bottoms" },
    },
  ),
  of(
    "Shorts",
    "hips and legs",
    4,
    ["waist", "hem"],
    "Legs to the thigh unless said otherwise, fitted at waist and hip.",
    {
      ...{ endsAt: "thigh", names: "short trousers, short pants, bermudas, bloomers" },
    },
  ),
  of(
    "Jumpsuit",
    "body and legs",
    4,
    ["neck", "hem"],
    "Bodice and trousers in one, to the ankle unless said otherwise; stepped into through the neck.",
    {
      endsAt: "ankle",
      names:
        "overalls, overall, dungarees, boiler suit, coveralls, playsuit, romper, rompers, onesie, sleepsuit, all-in-one, siren suit",
    },
  ),
  of("Leggings", "hips and legs", 2, ["waist", "hem"], "Of knit, close to the legs down to the ankle.", {
    ...{ endsAt: "ankle", names: "legging, treggings, running tights" },
  }),
  of("Briefs", "hips and legs", 4, ["waist"], "Underwear for the hips.", {
    ...{ endsAt: "hip", names: "underpants, knickers, drawers, panties, swim trunks, boxers, boxer shorts" },
  }),
  of("Tights", "hips and legs", 2, ["waist"], "Of knit, from the waist down over the feet.", {
    ...{ endsAt: "floor", names: "pantyhose, nylons" },
  }),
  of("Sleeve", "arm", 2, ["cuff"], "A sleeve by itself.", {
    sleeve: "long",
    names: "sleeves, fitted sleeve, arm warmers",
  }),
  of(
    "Hosiery",
    "leg",
    2,
    ["hem"],
    "Stockings up to the thigh; the hem opening is the narrowest place, at the ankle.",
    {
      ...{ endsAt: "thigh", names: "stockings, stocking, hold-ups, thigh-highs" },
    },
  ),
  of(
    "Socks",
    "leg",
    2,
    ["hem"],
    "Socks up to the calf; the hem opening is the narrowest place, at the ankle.",
    {
      ...{ endsAt: "calf", names: "sock, knee socks, knee highs, leg warmers" },
    },
  ),
  of("Ankle socks", "leg", 2, ["hem"], "Socks that end at the ankle, which is their narrowest place.", {
    ...{ endsAt: "ankle", names: "ankle sock, short socks, bobby socks" },
  }),
  of("Shoe", "foot", 2, [], "Shoe or boot; measured inside.", {
    names: "shoes, boot, boots, sandal, sandals, pumps, trainers, clogs",
  }),
  of("Slipper", "foot", 2, [], "Flat and soft; measured inside.", {
    names: "slippers, mules, moccasins, bootee, bootees, ballet shoes",
  }),
  of("Glove", "hand", 2, [], "Glove or mitten.", { names: "gloves, mitten, mittens" }),
  of("Headwear", "head", 2, [], "Hat, cap or bonnet that sits on the head.", {
    names: "hat, cap, bonnet, headdress, wig, beret, crown, headband",
  }),
  of("Hood", "head", 2, [], "Lies over head and hair, open in front.", { names: "hoods, cowl, coif" }),
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
    `${where}: ${quote(text)} is not a garment class.${near || ` Which is nearest: ${someOf(names.map(cutShort), 50)}? Write it, or add your own.`}`,
  );
}

/** Measures that a garment lies on, by the part that it is worn on; there it takes room under another garment. */
export const coveredMeasures: Readonly<Record<WornOn, readonly string[]>> = {
  "upper body": torsoDownTo("waistGirth"),
  "whole body": torsoDownTo("hipGirth"),
  hips: ["waistGirth", "highHipGirth", "hipGirth"],
  "hips and legs": ["waistGirth", "highHipGirth", "hipGirth", ...legGirths()],
  "body and legs": [...torsoDownTo("hipGirth"), ...legGirths()],
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
  "body and legs": ["footLength"],
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

interface Further extends Pick<GarmentClass, "sleeve" | "endsAt" | "lacingGap"> {
  /** Everyday names, with commas. */
  readonly names: string;
}

function of(
  name: string,
  wornOn: WornOn,
  seamEdges: number,
  openings: OpeningPlace[],
  note: string,
  { names, ...further }: Further,
): GarmentClass {
  return { name, wornOn, seamEdges, openings, note, synonyms: names.split(", "), ...further };
}
