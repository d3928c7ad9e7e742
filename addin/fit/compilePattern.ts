import type { EaseRule } from "../chart/easeRule.ts";
import { isContained } from "../chart/garmentClass.ts";
import type { GarmentParts } from "../chart/garmentParts.ts";
import { hasMeasure } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import { measureById } from "../measures/dictionary.ts";
import { comfortableShare } from "./clearance.ts";
import type { FigureView } from "./figureView.ts";
import type { GarmentContext } from "./garmentMeasure.ts";
import { garmentMeasure } from "./garmentMeasure.ts";
import { givesOf } from "./obstacles.ts";
import { ownRoom } from "./girthOverLayers.ts";
import type { Layer } from "./layers.ts";
import { layersAt } from "./layers.ts";
import { lengthsOf, lineMeasures } from "./lengths.ts";
import { unruledOf } from "./unruled.ts";
import type { ObstacleName } from "./obstacles.ts";
import type { OpeningPlace, WornOn, EndPlace } from "../chart/garmentTerms.ts";
import type { EaseCheck } from "./patternChecks.ts";

export type RouteName =
  | "over the head"
  | "stepped into"
  | "laid round the body"
  | "over the hand"
  | "over the foot"
  | "onto the head";

/** An opening against what it has to pass, for every figure of the chart. */
export interface OpeningCheck {
  readonly place: OpeningPlace;
  readonly obstacle: ObstacleName;
  readonly obstacles: Float64Array;
  /** The measure that each figure’s obstacle is taken from. */
  readonly measures: readonly string[];
  /** mm that the opening reaches, stretched as far as is comfortable, with its placket shut; NaN where not known */
  readonly shutMm: number;
  /** What an undone placket adds: at least and at most. They differ where nobody can say how far down it ends. */
  readonly placket: Placket;
  /** Its own cloth, turned in at the opening. */
  readonly thicknessMm: number;
  readonly layers: readonly Layer[];
}

interface Placket {
  readonly leastMm: number;
  readonly mostMm: number;
}

export interface Route {
  readonly name: RouteName;
  readonly openings: readonly OpeningCheck[];
}

/** A pattern with all that does not depend on the figure worked out. */
export interface CompiledPattern {
  readonly pattern: Pattern;
  readonly eases: readonly EaseCheck[];
  /** What is not judged, in sentences: “Length not judged: …”. */
  readonly unjudged: readonly string[];
  /** Openings that are passed whichever way the garment goes on: cuffs and leg hems. */
  readonly limbs: readonly OpeningCheck[];
  /** The ways of putting it on; one of them must succeed. */
  readonly routes: readonly Route[];
  /** 1 + the comfortable share of the stretch, and 1 + the whole of it; a lacing that stands open gives as well */
  readonly comfort: number;
  readonly full: number;
}

/** Works out once what a pattern asks of any figure of the chart. */
export function compilePattern(pattern: Pattern, context: GarmentContext): CompiledPattern {
  const opening = openingChecks(pattern, context);
  const parts = context.partsOf(pattern);
  const lengths = lengthsOf(pattern, parts, context);
  const { name, wornOn } = pattern.garmentClass;
  const rules = context
    .rulesOf(name)
    .filter(({ measure }) => hasMeasure(wornOn, parts, measure) && !lineMeasures.includes(measure));
  const unruled = unruledOf(
    pattern,
    parts,
    [...rules.map(({ measure }) => measure), ...lengths.measures],
    context.view,
  );
  const lacing = 1 + (pattern.garmentClass.lacingGap ?? 0);
  return {
    pattern,
    eases: [
      ...[...rules, ...unruled.rules].map((rule) => easeCheck(pattern, rule, context)),
      ...lengths.checks,
    ],
    unjudged: [...lengths.unjudged, ...unruled.unjudged],
    limbs: limbOpenings(pattern, parts, opening),
    routes: opensAllTheWay(pattern, context) ? [laidRound] : routesOf(pattern, opening),
    comfort: (1 + pattern.stretch * comfortableShare) * lacing,
    full: (1 + pattern.stretch) * lacing,
  };
}

function easeCheck(pattern: Pattern, rule: EaseRule, context: GarmentContext): EaseCheck {
  const kind = measureById(rule.measure)?.kind ?? "girth";
  return {
    rule,
    kind,
    garmentMm: garmentMeasure(pattern, rule.measure, context),
    layers: kind === "girth" ? layersUnder(pattern, rule.measure, context) : [],
    ownMm: kind === "girth" ? ownRoom(pattern.thicknessMm) : 0,
    ...bodiesOf(context.view, pattern.garmentClass.wornOn, rule.measure),
  };
}

/** What the figures measure where a rule asks, and what of it has to be inside as a whole. */
export function bodiesOf(
  view: FigureView,
  wornOn: WornOn,
  measure: string,
): Pick<EaseCheck, "bodies" | "contained"> {
  const bodies = view.reading(measure);
  const contained = isContained(wornOn, measure)
    ? bodies.map((mm, figure) => mm * givesOf(view.traits[figure]))
    : undefined;
  return { bodies, contained };
}

/** What has to pass an opening on every figure, and what it was measured at. */
export function obstaclesOf(
  view: FigureView,
  obstacle: ObstacleName,
): Pick<OpeningCheck, "obstacles" | "measures"> {
  return { obstacles: view.obstacles[obstacle], measures: view.obstacleMeasures[obstacle] };
}

function layersUnder(pattern: Pattern, measure: string, context: GarmentContext): readonly Layer[] {
  return layersAt(measure, context.underOf(pattern), context.partsOf, (under, at) =>
    garmentMeasure(under, at, context),
  );
}

type MakeOpening = (place: OpeningPlace, obstacle: ObstacleName) => OpeningCheck[];

/** The measure on which the layers under an obstacle lie; head, hand and heel are passed bare. */
const layeredOn: Readonly<Partial<Record<ObstacleName, string>>> = {
  hip: "hipGirth",
  "shoulders and bust": "bustGirth",
};

/** Makes a check of an opening; none where the opening is not given and its class does not need it. */
function openingChecks(pattern: Pattern, context: GarmentContext): MakeOpening {
  const { thicknessMm } = pattern;
  const comfort = 1 + pattern.stretch * comfortableShare;
  const girths: Readonly<Record<OpeningPlace, number>> = {
    neck: pattern.neckMm ?? Number.NaN,
    cuff: pattern.cuffMm ?? Number.NaN,
    hem: pattern.hemMm ?? Number.NaN,
    waist: narrowestMm(pattern, context),
  };
  return (place, obstacle) => {
    const girth = girths[place];
    if (Number.isNaN(girth) && !pattern.garmentClass.openings.includes(place)) return [];
    const measure = layeredOn[obstacle];
    return [
      {
        place,
        obstacle,
        ...obstaclesOf(context.view, obstacle),
        shutMm: girth * comfort,
        placket: placketOf(pattern, place, context),
        thicknessMm,
        layers: measure === undefined ? [] : layersUnder(pattern, measure, context),
      },
    ];
  };
}

/** The narrowest place between neck and hem: the waist opening as given, else the finished waist, else the finished bust. */
function narrowestMm(pattern: Pattern, context: GarmentContext): number {
  if (pattern.waistMm !== undefined) return pattern.waistMm;
  const waist = garmentMeasure(pattern, "waistGirth", context);
  return Number.isNaN(waist) ? garmentMeasure(pattern, "bustGirth", context) : waist;
}

/**
 * What an undone opening adds: twice its length, and nothing more when the cloth stretches. One from the neck reaches
 * the waist only with what it is longer than the way from neck to waist; where that is not known, it may end anywhere.
 */
function placketOf(pattern: Pattern, place: OpeningPlace, context: GarmentContext): Placket {
  const { closure, closureMm = 0 } = pattern;
  if (closure === place || (closure === "side" && place === "waist")) return exactly(2 * closureMm);
  if (closure !== "neck" || place !== "waist") return exactly(0);
  const toWaist = neckToWaistMm(pattern, context);
  if (Number.isNaN(toWaist)) return { leastMm: 0, mostMm: 2 * closureMm };
  return exactly(closureMm > toWaist ? 2 * (closureMm - toWaist) : 0);
}

function exactly(mm: number): Placket {
  return { leastMm: mm, mostMm: mm };
}

/** Down the back of the garment: as given, else of the figure that it was drafted for. */
function neckToWaistMm({ finished, draftedFor }: Pattern, { view }: GarmentContext): number {
  return finished.get("backWaistLength") ?? view.reading("backWaistLength")[draftedFor ?? -1] ?? Number.NaN;
}

/** What a sleeve passes up to where it ends. */
const armOf = { short: "whole arm", elbow: "arm to the elbow", long: "hand" } as const;

/** What a leg passes up to where it ends. */
const legOf: Readonly<Record<EndPlace, ObstacleName>> = {
  "under the bust": "whole leg",
  waist: "whole leg",
  hip: "whole leg",
  thigh: "leg to the thigh",
  knee: "leg to the knee",
  calf: "leg to the calf",
  ankle: "heel",
  floor: "heel",
};

function limbOpenings(
  { garmentClass }: Pattern,
  { sleeve, endsAt }: GarmentParts,
  opening: MakeOpening,
): readonly OpeningCheck[] {
  switch (garmentClass.wornOn) {
    case "upper body":
    case "whole body":
    case "arm":
      return sleeve === "none" ? [] : opening("cuff", armOf[sleeve]);
    case "hand":
      return opening("cuff", "hand");
    case "hips and legs":
      return opening("hem", legOf[endsAt ?? "ankle"]);
    case "body and legs":
      return [
        ...(sleeve === "none" ? [] : opening("cuff", armOf[sleeve])),
        ...opening("hem", legOf[endsAt ?? "ankle"]),
      ];
    case "leg":
    case "foot":
      return opening("hem", "heel");
    default:
      return [];
  }
}

const laidRound: Route = { name: "laid round the body", openings: [] };

/** An opening this near to the whole length is meant to be all of it. The project’s own. */
const wholeShare = 0.99;

/** Said so, or an opening from the neck of what ends at the waist that is as long as its back. */
function opensAllTheWay(pattern: Pattern, context: GarmentContext): boolean {
  const { closure, closureMm = 0, garmentClass } = pattern;
  if (closure === "full length")
    return ["upper body", "whole body", "hips", "hips and legs", "body and legs"].includes(
      garmentClass.wornOn,
    );
  if (closure !== "neck" || context.partsOf(pattern).endsAt !== "waist") return false;
  const backMm = neckToWaistMm(pattern, context);
  return closureMm >= wholeShare * backMm;
}

/** Stepped into from above: hip, shoulders and bust pass the neck. */
function intoTheNeck(opening: MakeOpening): readonly OpeningCheck[] {
  return [...opening("neck", "hip"), ...opening("neck", "shoulders and bust"), ...opening("waist", "hip")];
}

function routesOf({ garmentClass }: Pattern, opening: MakeOpening): readonly Route[] {
  switch (garmentClass.wornOn) {
    case "upper body":
    case "whole body":
      return [
        {
          name: "over the head",
          openings: [
            ...opening("neck", "head"),
            ...opening("waist", "head"),
            ...opening("waist", "shoulders and bust"),
          ],
        },
        {
          name: "stepped into",
          openings: intoTheNeck(opening),
        },
      ];
    // Legs do not go over a head.
    case "body and legs":
      return [{ name: "stepped into", openings: intoTheNeck(opening) }];
    case "hips":
      return [
        { name: "stepped into", openings: opening("waist", "hip") },
        {
          name: "over the head",
          openings: [
            ...opening("waist", "head"),
            ...opening("waist", "shoulders and bust"),
            ...opening("hem", "head"),
            ...opening("hem", "shoulders and bust"),
          ],
        },
      ];
    case "hips and legs":
      return [{ name: "stepped into", openings: opening("waist", "hip") }];
    case "arm":
    case "hand":
      return [{ name: "over the hand", openings: [] }];
    case "leg":
    case "foot":
      return [{ name: "over the foot", openings: [] }];
    case "head":
      return [{ name: "onto the head", openings: [] }];
  }
}
