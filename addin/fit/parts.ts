import type { GarmentParts } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import type { FigureView } from "./figureView.ts";
import type { EndPlace, SleeveKind } from "../chart/garmentTerms.ts";

/**
 * The parts of a garment: as its row says, else as its class does, else from what is given of it. A top or dress without a
 * word of sleeves and without a cuff or any measure of an arm has none.
 */
export function partsOf(pattern: Pattern, view: FigureView): GarmentParts {
  return { sleeve: sleeveOf(pattern), endsAt: endOf(pattern, view) };
}

function sleeveOf({ garmentClass, sleeve, cuffMm, finished }: Pattern): SleeveKind {
  if (sleeve ?? garmentClass.sleeve) return sleeve ?? garmentClass.sleeve ?? "none";
  if (garmentClass.wornOn === "arm") return "long";
  const has = (...measures: readonly string[]): boolean => measures.some((measure) => finished.has(measure));
  if (cuffMm !== undefined || has("wristGirth", "forearmGirth", "armLength", "underarmLength")) return "long";
  if (has("elbowGirth", "upperArmLength")) return "elbow";
  return has("upperArmGirth", "armscyeGirth") ? "short" : "none";
}

/** The shares of the inside leg at which legs end, each up to the next: the project’s own, after usual proportions. */
const legEnds: readonly (readonly [from: number, place: EndPlace])[] = [
  [0.97, "floor"],
  [0.82, "ankle"],
  [0.5, "calf"],
  [0.33, "knee"],
  [0, "thigh"],
];

function endOf(
  { garmentClass, endsAt, finished, draftedFor }: Pattern,
  view: FigureView,
): EndPlace | undefined {
  if (endsAt) return endsAt;
  const insideLeg = finished.get("insideLeg");
  const hasLegs = garmentClass.wornOn === "hips and legs" || garmentClass.wornOn === "body and legs";
  if (!hasLegs || insideLeg === undefined) return garmentClass.endsAt;
  const share = insideLeg / (view.reading("insideLeg")[draftedFor ?? -1] ?? Number.NaN);
  return legEnds.find(([from]) => share >= from)?.[1];
}
