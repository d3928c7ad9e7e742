import { lengthWords } from "../measures/lengthWords.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { GarmentParts } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import type { FigureView } from "./figureView.ts";
import type { GarmentContext } from "./garmentMeasure.ts";
import type { EndPlace, SleeveKind } from "../chart/garmentTerms.ts";
import type { EaseCheck, BodyLine, LineEnds } from "./patternChecks.ts";

/** How far a length may be off before it is a little short or long, where the rules of its class say nothing of it. */
export const usualLengthRule: Omit<EaseRule, "garmentClass" | "measure"> = {
  least: { percent: -3, mm: 0 },
  most: { percent: 3, mm: 0 },
  required: false,
  source:
    "The project’s own: full size this is about an inch on an inside leg, the step between short, regular and long legs; on a figure of 16 in 6 mm, which shows",
};

/** A part of the line along which a length runs: from here to there, and where in it the usual garment ends. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly usual: number;
}

// Shares of the line, after usual proportions of people: the project’s own.
const sleeveEnds: Readonly<Record<Exclude<SleeveKind, "none">, Stretch>> = {
  short: { from: 0.1, to: 0.5, usual: 0.3 },
  elbow: { from: 0.5, to: 0.75, usual: 0.56 },
  long: { from: 0.97, to: 1.06, usual: 1 },
};
const legEnds: Readonly<Partial<Record<EndPlace, Stretch>>> = {
  thigh: { from: 0.05, to: 0.33, usual: 0.2 },
  knee: { from: 0.33, to: 0.5, usual: 0.4 },
  calf: { from: 0.5, to: 0.82, usual: 0.66 },
  ankle: { from: 0.85, to: 0.96, usual: 0.92 },
  floor: { from: 0.95, to: 1, usual: 0.98 },
};
const hemEnds: Readonly<Partial<Record<EndPlace, Stretch>>> = {
  hip: { from: 0.1, to: 0.25, usual: 0.18 },
  thigh: { from: 0.25, to: 0.49, usual: 0.39 },
  knee: { from: 0.49, to: 0.62, usual: 0.55 },
  calf: { from: 0.62, to: 0.85, usual: 0.74 },
  ankle: { from: 0.87, to: 0.96, usual: 0.94 },
  floor: { from: 0.95, to: 1, usual: 0.98 },
};

/** The line on the figures of a chart: its length, and where a garment is to end. */
export function onFigures(
  { starts, lengths, from, to }: BodyLine,
  view: FigureView,
): { readonly bodies: Float64Array; readonly ends: LineEnds } {
  const start = sumOf(starts, view);
  const bodies = sumOf(lengths, view);
  const at = (share: number): Float64Array => bodies.map((mm, figure) => (start[figure] ?? 0) + share * mm);
  const uses = [...starts, ...lengths].map((measure) => ({ measure, mm: view.reading(measure) }));
  return { bodies, ends: { from: at(from), to: at(to), uses } };
}

function sumOf(measures: readonly string[], view: FigureView): Float64Array {
  return Float64Array.from({ length: view.size }, (_, figure) =>
    measures.reduce((sum, measure) => sum + (view.reading(measure)[figure] ?? Number.NaN), 0),
  );
}

/** A length of a garment, and the line that it runs along. */
interface GarmentLength extends Pick<BodyLine, "starts" | "lengths"> {
  readonly place: string;
  /** The measure whose rule counts. */
  readonly measure: string;
  /** The heading under which the length of the garment is given. */
  readonly heading: string;
  readonly givenMm: number | undefined;
  /** Where on the line it ends, as far as the row or the class says. */
  readonly end: Stretch | undefined;
}

/** The lengths of a pattern that can be judged, and in sentences those that cannot. */
export interface Lengths {
  readonly checks: readonly EaseCheck[];
  /** The measures that these are about, by the dictionary’s ids. */
  readonly measures: readonly string[];
  readonly unjudged: readonly string[];
}

/**
 * Where a garment ends, against where it is meant to end. Beside a figure that it was drafted for, that is the same share of
 * the way on every body; else the stretch that Sleeves or Ends at names.
 */
export function lengthsOf(pattern: Pattern, parts: GarmentParts, context: GarmentContext): Lengths {
  const lengths = garmentLengths(pattern, parts, context.view);
  const found = lengths.map((each) => judgeLength(each, pattern, context));
  return {
    measures: lengths.map(({ measure }) => measure),
    checks: found.flatMap((each) => (typeof each === "string" ? [] : [each])),
    unjudged: found.flatMap((each) => (typeof each === "string" ? [each] : [])),
  };
}

/** Measures of finished garments that {@link lengthsOf} takes care of. */
export const lineMeasures: readonly string[] = ["armLength", "insideLeg", "outsideLeg"];

function garmentLengths(
  pattern: Pattern,
  { sleeve, endsAt }: GarmentParts,
  view: FigureView,
): readonly GarmentLength[] {
  const { garmentClass, finished, lengthMm } = pattern;
  const along = (
    measure: string,
    heading: string,
    place: string,
    end: Stretch | undefined,
  ): GarmentLength => {
    const givenMm = finished.get(measure);
    return { place, measure, heading, givenMm, end, starts: [], lengths: [measure] };
  };
  const sleeves =
    sleeve === "none" ? [] : [along("armLength", "Arm length", "Sleeve length", sleeveEnds[sleeve])];
  const hem = {
    ...{ place: "Hem", measure: "outsideLeg", heading: "Length" },
    givenMm: lengthMm ?? finished.get("outsideLeg"),
    end: endsAt && hemEnds[endsAt],
    lengths: waistToFloor(pattern, view),
  };
  const legs =
    endsAt === "hip"
      ? []
      : [
          along("insideLeg", "Inside leg", "Inside leg", endsAt && legEnds[endsAt]),
          ...(finished.has("outsideLeg")
            ? [along("outsideLeg", "Outside leg", "Outside leg", endsAt && hemEnds[endsAt])]
            : []),
        ];
  switch (garmentClass.wornOn) {
    case "arm":
      return sleeves;
    case "hips and legs":
      return legs;
    case "body and legs":
      return [...sleeves, ...legs];
    case "hips":
      return [{ ...hem, starts: [] }];
    case "upper body":
    case "whole body":
      if (endsAt === "waist" || endsAt === "under the bust") return sleeves;
      return [...sleeves, { ...hem, starts: ["backWaistLength"] }];
    default:
      return [];
  }
}

/** Down the side where it was measured, else rise and inside leg together. */
function waistToFloor({ draftedFor }: Pattern, view: FigureView): readonly string[] {
  const outside = view.reading("outsideLeg");
  const isMeasured =
    draftedFor === undefined ? outside.some(Number.isFinite) : Number.isFinite(outside[draftedFor]);
  return isMeasured ? ["outsideLeg"] : ["bodyRise", "insideLeg"];
}

/** A check of the length, or in a sentence why there is none. */
function judgeLength(each: GarmentLength, pattern: Pattern, context: GarmentContext): EaseCheck | string {
  const { place, heading, givenMm, end, starts, lengths, measure } = each;
  const own = context.rulesOf(pattern.garmentClass.name).find((rule) => rule.measure === measure);
  const rule: EaseRule = own ?? { ...usualLengthRule, garmentClass: pattern.garmentClass.name, measure };
  const { draftedFor = -1 } = pattern;
  const start = sumOf(starts, context.view)[draftedFor] ?? Number.NaN;
  const length = sumOf(lengths, context.view)[draftedFor] ?? Number.NaN;
  const isDrafted = Number.isFinite(start + length);
  const check = (garmentMm: number, from: number, to = from): EaseCheck => {
    const line = { starts, lengths, from, to };
    return {
      ...{ rule, place, kind: "length", garmentMm, layers: [], ownMm: 0, contained: undefined, line },
      ...onFigures(line, context.view),
    };
  };
  if (givenMm !== undefined && isDrafted) return check(givenMm, (givenMm - start) / length);
  if (givenMm !== undefined && end) return check(givenMm, end.from, end.to);
  if (givenMm !== undefined && own) return check(givenMm, 1);
  if (isDrafted && end) return check(start + end.usual * length, end.usual);
  const what = place === "Hem" ? "Length" : place;
  if (givenMm === undefined) return `${what} not judged: give ${heading}, or Drafted for and Ends at.`;
  const given = `${heading} ${lengthWords(givenMm, context.view.unitOf(lengths[0] ?? measure))}`;
  return `${what} not judged: ${given} says nothing without Ends at or Drafted for.`;
}
