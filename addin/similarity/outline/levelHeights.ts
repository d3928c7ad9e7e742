import { medianOf } from "../../checking/medianOf.ts";
import { usualShareOfHeight } from "../../measures/usualShareOfHeight.ts";

/** A length on a body in mm, read or estimated. */
export interface BodyLength {
  readonly mm: number;
  readonly isEstimated: boolean;
}

/** How high above the soles the places of a body lie. */
export interface LevelHeights {
  /** Of the whole figure. */
  readonly heightMm: BodyLength;
  /** Of a level of `bodyOutline`; undefined for any other name. */
  at(level: string): BodyLength | undefined;
  /** The dictionary’s ids of the lengths that were asked for. */
  readonly asked: readonly string[];
}

/** Lengths that tell how tall a figure is when its height is not known. */
const longLengths = ["insideLeg", "outsideLeg", "torsoLength", "backWaistLength", "armLength", "kneeHeight"];

/** Height in head lengths. Source: Extension Circular 306, Pattern Selection and Alteration (1943): 7½ for a grown woman. */
const headsInHeight = 7.5;

/**
 * The places of a body, each from the lengths that are known: the top of the leg from the inside leg; the waist from the
 * outside leg, the inside leg with the body rise, or the back waist length down from the neck; the hip from the
 * waist-to-hip length; the knee from its height or its distance from the waist; the bust from the depth of the bust point; the
 * chin from the head height. What is missing lies by usual proportions of the figure below the chin, so that a large head does not stretch
 * the body, and is marked as estimated. Those are the shares in `usualShareOfHeight` and, between its places,
 * the project’s own starting values from memory.
 *
 * @param read a length by the dictionary’s id
 * @returns `undefined` when no length tells how tall the figure is
 */
export function levelHeights(read: (key: string) => BodyLength | undefined): LevelHeights | undefined {
  const height = read("height") ?? guessedHeight(read);
  if (!height) return undefined;
  const head = read("headHeight") ?? estimate(height.mm / headsInHeight);
  const chin = minus(height, head);
  const ofBody = (share: number) => estimate(chin.mm * (share / (1 - 1 / headsInHeight)));

  const fromFloor = read("outsideLeg");
  const rise = read("bodyRise");
  const crotch =
    read("insideLeg") ?? (fromFloor && rise && minus(fromFloor, rise)) ?? ofBody(usualOf("insideLeg"));
  const toNeck = read("backWaistLength");
  const usualNeck = ofBody(0.86);
  const waist =
    fromFloor ??
    (rise && plus(crotch, rise)) ??
    (toNeck && minus(usualNeck, toNeck)) ??
    ofBody(usualOf("outsideLeg"));
  const torso = read("torsoLength");
  const neckPoint = (torso && plus(crotch, torso)) ?? (toNeck && plus(waist, toNeck)) ?? usualNeck;
  const toHip = read("waistToHip");
  const hip = toHip ? minus(waist, toHip) : between(crotch, waist, 0.25);
  const waistToKnee = read("waistToKnee");
  const knee =
    read("kneeHeight") ??
    (waistToKnee
      ? minus(waist, waistToKnee)
      : between(floor, crotch, usualOf("kneeHeight") / usualOf("insideLeg")));
  const bustDepth = read("bustPointDepth");
  const bust = bustDepth ? minus(neckPoint, bustDepth) : between(waist, neckPoint, 0.42);
  const ankle = ofBody(0.04);
  const shoulder = between(waist, neckPoint, 0.83);

  const levels: Readonly<Record<string, BodyLength>> = {
    Sole: floor,
    Ankle: ankle,
    Calf: between(ankle, knee, 0.7),
    Knee: knee,
    // Midway by definition, as the high hip is.
    "Mid-thigh": midway(knee, hip),
    "Top of the leg": crotch,
    Hip: hip,
    "High hip": midway(hip, waist),
    Waist: waist,
    "Under-bust": between(waist, bust, 0.65),
    Bust: bust,
    "Upper bust": between(bust, shoulder, 0.5),
    Shoulder: shoulder,
    "Neck base": between(shoulder, chin, 0.4),
    Neck: between(shoulder, chin, 0.75),
    Head: between(chin, height, 0.55),
  };
  return {
    heightMm: height,
    at: (level) => levels[level],
    asked: ["height", "headHeight", "insideLeg", "outsideLeg", "backWaistLength", "waistToHip", "kneeHeight"],
  };
}

const floor: BodyLength = { mm: 0, isEstimated: false };

function guessedHeight(read: (key: string) => BodyLength | undefined): BodyLength | undefined {
  const mm = medianOf(longLengths.map((key) => (read(key)?.mm ?? Number.NaN) / usualOf(key)));
  return Number.isNaN(mm) ? undefined : estimate(mm);
}

function usualOf(key: string): number {
  return usualShareOfHeight[key] ?? Number.NaN;
}

function estimate(mm: number): BodyLength {
  return { mm, isEstimated: true };
}

function plus(a: BodyLength, b: BodyLength): BodyLength {
  return { mm: a.mm + b.mm, isEstimated: a.isEstimated || b.isEstimated };
}

function minus(a: BodyLength, b: BodyLength): BodyLength {
  return { mm: a.mm - b.mm, isEstimated: a.isEstimated || b.isEstimated };
}

/** A usual place between two others, as a share of the way up. */
function between(low: BodyLength, high: BodyLength, share: number): BodyLength {
  return estimate(low.mm + share * (high.mm - low.mm));
}

function midway(a: BodyLength, b: BodyLength): BodyLength {
  return { mm: (a.mm + b.mm) / 2, isEstimated: a.isEstimated || b.isEstimated };
}
