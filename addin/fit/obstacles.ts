import type { FigureTraits } from "../chart/figureTraits.ts";

export const obstacleNames = [
  "head",
  "hand",
  "arm to the elbow",
  "whole arm",
  "heel",
  "leg to the calf",
  "leg to the knee",
  "leg to the thigh",
  "whole leg",
  "hip",
  "shoulders and bust",
] as const;
/** What an opening has to pass when the garment is put on. */
export type ObstacleName = (typeof obstacleNames)[number];

/** One obstacle of one figure. */
export interface Obstacle {
  /** mm; NaN where it is not known */
  readonly mm: number;
  /** The measure of the dictionary that it is taken from. */
  readonly measure: string;
  /** What has to pass, as in “the wrist”. */
  readonly words: string;
  /** Why that, where it is not the usual, as in “the hands come off”. */
  readonly because?: string;
  /** Ids of the measures to take where it is not known. */
  readonly lacking: readonly string[];
}

/**
 * A straight, hard arm without a joint goes into a sleeve at a slant and cannot turn: the sleeve needs a tenth more than
 * the hand. The project’s own starting value.
 */
export const stiffArmFactor = 1.1;

/** A stuffed body gives when it is pushed through an opening: by a twentieth of its girth. The project’s own starting value. */
export const softBodyFactor = 0.95;

/** What is left of a hard measure when it is pushed in: less of a stuffed body, all of any other. */
export function givesOf(traits: FigureTraits | undefined): number {
  return traits?.softBody === true ? softBodyFactor : 1;
}

type ReadingOf = (measure: string) => number;
type ObstacleOf = (readingOf: ReadingOf, traits: FigureTraits) => Obstacle;

/** What each kind of opening has to pass on one figure, from its readings in mm (NaN where missing) and what it is like. */
export const obstacleOf: Readonly<Record<ObstacleName, ObstacleOf>> = {
  head: (readingOf, { headOff, wig }) => {
    if (headOff) return one(readingOf, "neckGirth", "the neck", "the head comes off");
    return one(readingOf, "headGirth", "the head", wig ? "without its wig" : undefined);
  },
  hand: stiffArm(handOf),
  "arm to the elbow": stiffArm((...figure) => largest(handOf(...figure), figure[0], ["forearmGirth"])),
  "whole arm": stiffArm((...figure) =>
    largest(handOf(...figure), figure[0], ["forearmGirth", "elbowGirth", "upperArmGirth"]),
  ),
  heel: heelOf,
  "leg to the calf": (...figure) => largest(heelOf(...figure), figure[0], ["calfGirth"]),
  "leg to the knee": (...figure) => largest(heelOf(...figure), figure[0], ["calfGirth", "kneeGirth"]),
  "leg to the thigh": (...figure) =>
    largest(heelOf(...figure), figure[0], ["calfGirth", "kneeGirth", "midThighGirth"]),
  "whole leg": (...figure) =>
    largest(heelOf(...figure), figure[0], ["calfGirth", "kneeGirth", "midThighGirth", "thighGirth"]),
  hip: (readingOf, traits) => soft(one(readingOf, "hipGirth", "the hip"), traits),
  "shoulders and bust": (readingOf, traits) => soft(shouldersAndBust(readingOf, traits), traits),
};

function handOf(readingOf: ReadingOf, { handsOff }: FigureTraits): Obstacle {
  return handsOff
    ? one(readingOf, "wristGirth", "the wrist", "the hands come off")
    : one(readingOf, "handGirth", "the hand");
}

function stiffArm(obstacleOn: ObstacleOf): ObstacleOf {
  return (readingOf, traits) => {
    const arm = obstacleOn(readingOf, traits);
    return isStiff(traits)
      ? more(arm, stiffArmFactor, "a tenth more, since the arm is stiff and has no joint")
      : arm;
  };
}

function heelOf(readingOf: ReadingOf, { feetOff }: FigureTraits): Obstacle {
  if (feetOff) return one(readingOf, "ankleGirth", "the ankle", "the feet come off");
  const heel = one(readingOf, "heelGirth", "the heel and instep");
  const foot = one(readingOf, "footGirth", "the ball of the foot", "the heel is not measured");
  return Number.isNaN(heel.mm) && !Number.isNaN(foot.mm) ? foot : heel;
}

const limbWords: Readonly<Record<string, string>> = {
  forearmGirth: "the forearm",
  elbowGirth: "the elbow",
  upperArmGirth: "the upper arm",
  calfGirth: "the calf",
  kneeGirth: "the knee",
  midThighGirth: "the middle of the thigh",
  thighGirth: "the thigh",
};

/** A short sleeve or leg passes the end of the limb and then all of it up to where it ends. What is not measured there is left out. */
function largest(end: Obstacle, readingOf: ReadingOf, measures: readonly string[]): Obstacle {
  if (Number.isNaN(end.mm)) return end;
  return measures
    .map((measure) => one(readingOf, measure, limbWords[measure] ?? measure))
    .reduce((most, each) => (each.mm > most.mm ? each : most), end);
}

/** Arms that lift let a garment pass over shoulders that were not measured; stiff arms do not. */
function shouldersAndBust(readingOf: ReadingOf, traits: FigureTraits): Obstacle {
  const shoulders = one(readingOf, "shoulderGirth", "the shoulders");
  const bust = one(readingOf, "bustGirth", "the bust");
  if (Number.isNaN(bust.mm) || Number.isNaN(shoulders.mm)) {
    if (!Number.isNaN(shoulders.mm) || isStiff(traits)) return shoulders;
    return { ...bust, because: "the shoulders are not measured" };
  }
  return bust.mm > shoulders.mm ? bust : shoulders;
}

function isStiff({ jointed, softBody }: FigureTraits): boolean {
  return jointed === false && softBody !== true;
}

function soft(obstacle: Obstacle, { softBody }: FigureTraits): Obstacle {
  return softBody ? more(obstacle, softBodyFactor, "a twentieth less, since the body is soft") : obstacle;
}

function more(obstacle: Obstacle, factor: number, reason: string): Obstacle {
  const because = [obstacle.because, reason].filter((each) => each !== undefined).join("; ");
  return { ...obstacle, mm: obstacle.mm * factor, because };
}

function one(readingOf: ReadingOf, measure: string, words: string, because?: string): Obstacle {
  const mm = readingOf(measure);
  const lacking = Number.isNaN(mm) ? [measure] : [];
  return because === undefined ? { mm, measure, words, lacking } : { mm, measure, words, lacking, because };
}
