import type { WornOn, SleeveKind, EndPlace } from "./garmentTerms.ts";
import { sleeveKinds, endPlaces } from "./garmentTerms.ts";

/** What a garment has beside its body; `endsAt` is undefined where it is not known. */
export interface GarmentParts {
  readonly sleeve: SleeveKind;
  readonly endsAt: EndPlace | undefined;
}

/** The shortest sleeve that has the measure. */
const sleeveOf: Readonly<Partial<Record<string, SleeveKind>>> = {
  armscyeGirth: "short",
  upperArmGirth: "short",
  armLength: "short",
  upperArmLength: "elbow",
  elbowGirth: "elbow",
  forearmGirth: "long",
  wristGirth: "long",
  underarmLength: "long",
};

/** The place that a garment from above, or a stocking from below, has to reach for it to have the measure. */
const placeOf: Readonly<Partial<Record<string, EndPlace>>> = {
  underBustGirth: "under the bust",
  waistGirth: "waist",
  backWaistLength: "waist",
  frontWaistLength: "waist",
  centreFrontLength: "waist",
  sideWaistLength: "waist",
  highHipGirth: "hip",
  hipGirth: "hip",
  waistToHip: "hip",
  thighGirth: "thigh",
  midThighGirth: "thigh",
  kneeGirth: "knee",
  calfGirth: "calf",
  ankleGirth: "ankle",
};

/** False where a garment does not reach a measure: there it is not judged, and takes no room under another one. */
export function hasMeasure(wornOn: WornOn, { sleeve, endsAt }: GarmentParts, measure: string): boolean {
  const needed = sleeveOf[measure];
  if (needed) return sleeveKinds.indexOf(sleeve) >= sleeveKinds.indexOf(needed);
  const place = placeOf[measure];
  if (!place || endsAt === undefined) return true;
  const reach = endPlaces.indexOf(endsAt) - endPlaces.indexOf(place);
  return wornOn === "leg" ? reach <= 0 : reach >= 0;
}
