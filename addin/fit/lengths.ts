import { lengthWords } from "../measures/lengthWords.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { EndPlace, GarmentParts, SleeveKind } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import type { EaseCheck } from "./compilePattern.ts";
import type { FigureView } from "./figureView.ts";
import type { GarmentContext } from "./garmentMeasure.ts";

/** How far a length may be off before it is a little short or long, where the rules of its class say nothing of it. */
const usualLengthRule: Omit<EaseRule, "garmentClass" | "measure"> = {
  least: { percent: -3, mm: -0.5 },
  most: { percent: 3, mm: 0.5 },
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

/** One reading that a length rests on, for every figure. */
interface Used {
  readonly measure: string;
  readonly mm: Float64Array;
}

/** A line of the body along which a garment’s length runs. */
interface Line {
  readonly place: string;
  /** The measure whose rule counts, and whose unit the result goes out in. */
  readonly measure: string;
  /** The heading under which the length of the garment is given. */
  readonly heading: string;
  readonly givenMm: number | undefined;
  /** Where on the line it ends, as far as the row or the class says. */
  readonly end: Stretch | undefined;
  /** Where the line begins on each figure, and how long it is, in mm. */
  readonly starts: Float64Array;
  readonly lengths: Float64Array;
  readonly uses: readonly Used[];
}

/** The lengths of a pattern that can be judged, and in sentences those that cannot. */
export interface Lengths {
  readonly checks: readonly EaseCheck[];
  readonly unjudged: readonly string[];
}

/**
 * Where a garment ends, against where it is meant to end. Beside a figure that it was drafted for, that is the same share of
 * the way on every body; else the stretch that Sleeves or Ends at names.
 */
export function lengthsOf(pattern: Pattern, parts: GarmentParts, context: GarmentContext): Lengths {
  const found = linesOf(pattern, parts, context.view).map((line) => judgeLine(line, pattern, context));
  return {
    checks: found.flatMap((each) => (typeof each === "string" ? [] : [each])),
    unjudged: found.flatMap((each) => (typeof each === "string" ? [each] : [])),
  };
}

/** Measures of finished garments that {@link lengthsOf} takes care of. */
export const lineMeasures: readonly string[] = ["armLength", "insideLeg", "outsideLeg"];

function linesOf(pattern: Pattern, { sleeve, endsAt }: GarmentParts, view: FigureView): readonly Line[] {
  const { garmentClass, finished, lengthMm } = pattern;
  const none = new Float64Array(view.size);
  const along = (measure: string, heading: string, place: string, end: Stretch | undefined): Line => {
    const mm = view.reading(measure);
    const givenMm = finished.get(measure);
    return { place, measure, heading, givenMm, end, starts: none, lengths: mm, uses: [{ measure, mm }] };
  };
  const sleeves =
    sleeve === "none" ? [] : [along("armLength", "Arm length", "Sleeve length", sleeveEnds[sleeve])];
  const hem = {
    heading: "Length",
    givenMm: lengthMm ?? finished.get("outsideLeg"),
    end: endsAt && hemEnds[endsAt],
  };
  const fromNape = { mm: view.reading("backWaistLength"), measure: "backWaistLength" };
  switch (garmentClass.wornOn) {
    case "arm":
      return sleeves;
    case "hips and legs":
      return endsAt === "hip"
        ? []
        : [along("insideLeg", "Inside leg", "Inside leg", endsAt && legEnds[endsAt])];
    case "hips":
      return [
        { ...hem, place: "Hem", measure: "outsideLeg", starts: none, ...waistToFloor(pattern, view, []) },
      ];
    case "upper body":
    case "whole body": {
      const isCropped = endsAt === "waist" || endsAt === "under the bust";
      const line = { ...hem, place: "Hem", measure: "outsideLeg", starts: fromNape.mm };
      return [...sleeves, ...(isCropped ? [] : [{ ...line, ...waistToFloor(pattern, view, [fromNape]) }])];
    }
    default:
      return [];
  }
}

/** Down the side as it was measured, or rise and inside leg together; of two figures that are compared the same of both. */
function waistToFloor(
  { draftedFor }: Pattern,
  view: FigureView,
  before: readonly Used[],
): Pick<Line, "lengths" | "uses"> {
  const outside = view.reading("outsideLeg");
  const rise = view.reading("bodyRise");
  const inside = view.reading("insideLeg");
  const isOutside =
    draftedFor === undefined ? outside.some(Number.isFinite) : Number.isFinite(outside[draftedFor]);
  return isOutside
    ? { lengths: outside, uses: [...before, { measure: "outsideLeg", mm: outside }] }
    : {
        lengths: rise.map((mm, figure) => mm + (inside[figure] ?? Number.NaN)),
        uses: [...before, { measure: "bodyRise", mm: rise }, { measure: "insideLeg", mm: inside }],
      };
}

/** A check of the line, or in a sentence why there is none. */
function judgeLine(line: Line, pattern: Pattern, context: GarmentContext): EaseCheck | string {
  const { place, heading, givenMm, end, starts, lengths, measure, uses } = line;
  const own = context.rulesOf(pattern.garmentClass.name).find((rule) => rule.measure === measure);
  const rule: EaseRule = own ?? { ...usualLengthRule, garmentClass: pattern.garmentClass.name, measure };
  const at = (share: number): Float64Array =>
    lengths.map((mm, figure) => (starts[figure] ?? Number.NaN) + share * mm);
  const { draftedFor = -1 } = pattern;
  const start = starts[draftedFor] ?? Number.NaN;
  const length = lengths[draftedFor] ?? Number.NaN;
  const isDrafted = Number.isFinite(start + length);
  const check = (garmentMm: number, from: Float64Array, to: Float64Array): EaseCheck => ({
    ...{
      rule,
      place,
      kind: "length",
      garmentMm,
      bodies: lengths,
      layers: [],
      ownMm: 0,
      contained: undefined,
    },
    ends: { from, to, uses },
  });
  if (givenMm !== undefined && isDrafted) {
    const same = at((givenMm - start) / length);
    return check(givenMm, same, same);
  }
  if (givenMm !== undefined && end) return check(givenMm, at(end.from), at(end.to));
  if (givenMm !== undefined && own) return check(givenMm, at(1), at(1));
  if (isDrafted && end) {
    const usual = at(end.usual);
    return check(start + end.usual * length, usual, usual);
  }
  const what = place === "Hem" ? "Length" : place;
  if (givenMm === undefined) return `${what} not judged: give ${heading}, or Drafted for and Ends at.`;
  const given = `${heading} ${lengthWords(givenMm, context.view.unitOf(uses[0]?.measure ?? measure))}`;
  return `${what} not judged: ${given} says nothing without Ends at or Drafted for.`;
}
