import type { EaseRule } from "../chart/easeRule.ts";
import type { GarmentParts } from "../chart/garmentParts.ts";
import { hasMeasure } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import { measureById } from "../measures/dictionary.ts";
import { lengthWords } from "../measures/lengthWords.ts";
import type { Zone } from "../measures/measure.ts";
import type { FigureView } from "./figureView.ts";
import { usualLengthRule } from "./lengths.ts";
import type { OpeningPlace, WornOn } from "../chart/garmentTerms.ts";

/** Parts of the body that a garment reaches. */
const zonesOf: Readonly<Record<WornOn, readonly Zone[]>> = {
  "upper body": ["torso", "arms"],
  "whole body": ["torso", "arms"],
  hips: ["torso"],
  "hips and legs": ["torso", "legs", "feet"],
  "body and legs": ["torso", "arms", "legs", "feet"],
  arm: ["arms"],
  leg: ["legs", "feet"],
  foot: ["feet", "legs"],
  hand: ["hands", "arms"],
  head: ["head"],
};

/** Openings that a garment can have anything to pass at. */
const openingsOf: Readonly<Record<WornOn, readonly OpeningPlace[]>> = {
  "upper body": ["neck", "cuff", "waist"],
  "whole body": ["neck", "cuff", "waist"],
  hips: ["waist", "hem"],
  "hips and legs": ["waist", "hem"],
  "body and legs": ["neck", "cuff", "waist", "hem"],
  arm: ["cuff"],
  leg: ["hem"],
  foot: ["hem"],
  hand: ["cuff"],
  head: [],
};

/** Lengths between the legs, where a garment may hang but not pull. */
const mayHang: readonly string[] = ["bodyRise", "crotchLength", "torsoLength", "torsoGirth"];

const goesRound = "Common sense: cloth has to go round what it covers, and may be as wide as it likes";
const hangs = "Common sense: it may hang, but must not pull between the legs";
const startsAndEnds = "Common sense: it begins and ends where the body’s own measure does";

/** What is given with a garment, though no rule of its class names it. */
export interface Unruled {
  /** Rules that hold by common sense. */
  readonly rules: readonly EaseRule[];
  /** What is not judged, each with the reason, in a sentence. */
  readonly unjudged: readonly string[];
}

/** Finished measures and openings that no rule uses: judged where common sense can, else named. */
export function unruledOf(
  pattern: Pattern,
  parts: GarmentParts,
  ruled: readonly string[],
  view: FigureView,
): Unruled {
  const rules: EaseRule[] = [];
  const unjudged: string[] = [];
  const { garmentClass, finished, neckMm, cuffMm, hemMm, waistMm } = pattern;
  const { name: className, wornOn } = garmentClass;
  const say = (what: string, mm: number, measure: string, why: string): void => {
    unjudged.push(`${what} ${lengthWords(mm, view.unitOf(measure))} was not judged: ${why}.`);
  };
  for (const [id, mm] of finished) {
    const measure = measureById(id);
    if (!measure) continue;
    if (!hasMeasure(wornOn, parts, id)) say(measure.name, mm, id, notReached(wornOn, parts, measure.zone));
    else if (ruled.includes(id)) continue;
    else if (!zonesOf[wornOn].includes(measure.zone)) {
      say(measure.name, mm, id, `a garment of the class ${className} does not reach there`);
    } else if (measure.kind === "height") say(measure.name, mm, id, `no rule of ${className} names it`);
    else rules.push(commonSense(className, id, measure.kind === "girth"));
  }
  const openings = { neck: neckMm, cuff: cuffMm, hem: hemMm, waist: waistMm };
  for (const place of ["neck", "cuff", "hem", "waist"] as const) {
    const mm = openings[place];
    if (mm === undefined || openingsOf[wornOn].includes(place)) continue;
    const name = `${place.charAt(0).toUpperCase()}${place.slice(1)} opening`;
    say(name, mm, "", `on a garment of the class ${className} it has nothing to pass`);
  }
  return { rules, unjudged };
}

function notReached(wornOn: WornOn, { sleeve, endsAt }: GarmentParts, zone: Zone): string {
  if (zone === "arms") return sleeve === "none" ? "it has no sleeves" : "its sleeves do not reach there";
  return wornOn === "leg" ? `it reaches up to the ${endsAt ?? ""}` : `it ends at the ${endsAt ?? ""}`;
}

function commonSense(garmentClass: string, measure: string, isGirth: boolean): EaseRule {
  const least = { percent: 0, mm: 0 };
  if (mayHang.includes(measure)) return { garmentClass, measure, least, required: false, source: hangs };
  return isGirth
    ? { garmentClass, measure, least, required: false, source: goesRound }
    : { ...usualLengthRule, garmentClass, measure, source: startsAndEnds };
}
