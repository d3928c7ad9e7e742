import type { EaseRule } from "../chart/easeRule.ts";
import type { GarmentClass } from "../chart/garmentClass.ts";
import { isContained } from "../chart/garmentClass.ts";
import { measureById } from "../measures/dictionary.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Check } from "./check.ts";
import { comfortableShare } from "./clearance.ts";
import { explainEase } from "./explainEase.ts";
import { ownRoom } from "./girthOverLayers.ts";
import type { ReadingError } from "./readingError.ts";
import { usualReadingError } from "./readingError.ts";

/** One finished measure of a garment beside one body. Lengths in mm. */
export interface EaseQuestion {
  readonly garmentMm: number;
  readonly bodyMm: number;
  readonly garmentClass: GarmentClass;
  readonly rule: EaseRule;
  /** fraction: 0.25 is 25 % */
  readonly stretch?: number;
  /** All layers worn under the garment, added up. */
  readonly underMm?: number;
  /** One layer of the garment’s own cloth. */
  readonly thicknessMm?: number;
  readonly unit?: LengthUnit;
  readonly readingError?: ReadingError;
}

/** Judges one finished measure against an ease rule, without chart or pattern. */
export function easeCheck(question: EaseQuestion): Check {
  const { garmentMm, bodyMm, garmentClass, rule, unit = "mm" } = question;
  const { stretch = 0, underMm = 0, thicknessMm = 0 } = question;
  const kind = measureById(rule.measure)?.kind ?? "girth";
  const bodies = Float64Array.of(bodyMm);
  const lacing = 1 + (garmentClass.lacingGap ?? 0);
  const check = {
    rule,
    kind,
    garmentMm,
    bodies,
    layers: [{ thicknessMm: underMm, girthMm: Number.NaN }],
    ownMm: kind === "girth" ? ownRoom(thicknessMm) : 0,
    contained: isContained(garmentClass.wornOn, rule.measure) ? bodies : undefined,
  } as const;
  return explainEase(
    check,
    {
      pattern: {
        code: "the garment",
        title: "",
        garmentClass,
        stretch,
        thicknessMm,
        wornOver: [],
        closure: "none",
        finished: new Map(),
      },
      eases: [check],
      unjudged: [],
      limbs: [],
      routes: [],
      comfort: (1 + stretch * comfortableShare) * lacing,
      full: (1 + stretch) * lacing,
    },
    { index: 0, name: "the body", unit },
    question.readingError ?? usualReadingError,
  );
}
