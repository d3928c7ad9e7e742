import type { EndPlace, OpeningPlace, WornOn } from "../chart/garmentTerms.ts";
import type { Pattern } from "../chart/pattern.ts";
import { compilePattern } from "./compilePattern.ts";
import type { GarmentContext } from "./garmentMeasure.ts";
import { lengthsOf } from "./lengths.ts";

/** What has to be known of a garment, and what else of it is judged where it is given: nothing that plays no part for it. */
export interface Asked {
  /** Words for where it opens; empty where an opening of any kind plays no part. */
  readonly opens: readonly string[];
  readonly sleeves: boolean;
  /** Places where it can end; empty where that plays no part. */
  readonly ends: readonly EndPlace[];
  readonly openings: readonly { readonly place: OpeningPlace; readonly needed: boolean }[];
  /** Finished measures that a rule of its class is about, by the dictionary’s ids. */
  readonly measures: readonly AskedMeasure[];
  /** Lengths that can be given: to the hem, or by the dictionary’s ids. */
  readonly lengths: readonly ("hem" | "armLength" | "insideLeg")[];
}

export interface AskedMeasure {
  readonly measure: string;
  /** True where the verdict is not known without it. */
  readonly needed: boolean;
  /** What is taken for it while it is not given, in mm: of the figure that it was drafted for. NaN where that is not known. */
  readonly assumedMm: number;
}

/** What is to be asked of a garment, from its class and what is said of it so far: from what its verdict would rest on. */
export function askedOf(pattern: Pattern, context: GarmentContext): Asked {
  const { garmentClass, sleeve, endsAt } = pattern;
  const { wornOn, openings } = garmentClass;
  const parts = context.partsOf(pattern);
  const whole = compilePattern(
    { ...pattern, sleeve: sleeve ?? parts.sleeve, endsAt: endsAt ?? parts.endsAt, ...anyOpenings },
    context,
  );
  const limbs = new Set(whole.limbs.map(({ place }) => place));
  const passed = new Set([
    ...limbs,
    ...whole.routes.flatMap((route) => route.openings.map((each) => each.place)),
  ]);
  const ruled = context.rulesOf(garmentClass.name);
  return {
    opens: opensOf[wornOn],
    sleeves:
      garmentClass.sleeve !== "none" && ["upper body", "whole body", "body and legs", "arm"].includes(wornOn),
    ends: endsOf[wornOn],
    openings: (["neck", "waist", "cuff", "hem"] as const)
      .filter((place) => passed.has(place) && (limbs.has(place) || openings.includes(place)))
      .map((place) => ({ place, needed: openings.includes(place) })),
    measures: compilePattern({ ...pattern, finished: new Map() }, context)
      .eases.filter(({ rule, ends }) => ruled.includes(rule) && !ends)
      .map(({ rule, garmentMm }) => ({
        measure: rule.measure,
        needed: rule.required && Number.isNaN(garmentMm),
        assumedMm: garmentMm,
      })),
    lengths: lengthsOf(pattern, parts, context).measures.flatMap((measure) =>
      measure === "outsideLeg"
        ? ["hem"]
        : measure === "armLength" || measure === "insideLeg"
          ? [measure]
          : [],
    ),
  };
}

/** Every opening with some girth, to see which of them anything has to pass. */
const anyOpenings = { neckMm: 1, cuffMm: 1, hemMm: 1, waistMm: 1 };

const torso = ["none", "back", "front", "side", "full length"];
const opensOf: Readonly<Record<WornOn, readonly string[]>> = {
  "upper body": torso,
  "whole body": torso,
  hips: torso,
  "hips and legs": torso,
  "body and legs": torso,
  arm: [],
  leg: [],
  foot: [],
  hand: [],
  head: [],
};

const fromHip = ["hip", "thigh", "knee", "calf", "ankle", "floor"] as const;
const endsOf: Readonly<Record<WornOn, readonly EndPlace[]>> = {
  "upper body": ["under the bust", "waist", "hip", "thigh"],
  "whole body": ["waist", ...fromHip],
  hips: fromHip,
  "hips and legs": fromHip,
  "body and legs": fromHip,
  arm: [],
  leg: ["thigh", "knee", "calf", "ankle"],
  foot: [],
  hand: [],
  head: [],
};
