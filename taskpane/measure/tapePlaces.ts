/**
 * Where the tape goes for each measure of the dictionary, on a figure of our own that is 100 wide and 212 high: drawn from
 * the front, arms a little away from the body. A drawing of places, not of proportions.
 */
export type TapePlace =
  /** Around: the middle, half the width, and how far the tape is tilted, in degrees. */
  | {
      readonly kind: "around";
      readonly x: number;
      readonly y: number;
      readonly half: number;
      readonly tilt?: number;
    }
  /** Along or across: the points that the tape goes through; on the back it is drawn dashed. */
  | { readonly kind: "along"; readonly points: readonly Point[]; readonly onBack?: true };

export type Point = readonly [x: number, y: number];

const around = (x: number, y: number, half: number, tilt = 0): TapePlace => ({
  ...{ kind: "around", x, y, half },
  ...(tilt === 0 ? {} : { tilt }),
});
const along = (...points: readonly Point[]): TapePlace => ({ kind: "along", points });
const onBack = (...points: readonly Point[]): TapePlace => ({ kind: "along", points, onBack: true });

/** By the id of the measure, from head to foot. */
export const tapePlaces: Readonly<Record<string, TapePlace>> = {
  height: along([88, 2], [88, 206]),
  headGirth: around(50, 10, 9.5),
  faceWidth: along([41, 15], [59, 15]),
  headHeight: along([64, 2], [64, 27]),
  neckGirth: around(50, 30, 4.5),
  neckBaseGirth: around(50, 34, 7),
  shoulderLength: along([55, 34], [69, 40]),
  shoulderWidth: onBack([31, 40], [50, 36], [69, 40]),
  shoulderGirth: around(50, 46, 23),
  armscyeGirth: around(68, 45, 6, 70),
  acrossFront: along([36, 46], [64, 46]),
  acrossBack: onBack([36, 46], [64, 46]),
  upperBustGirth: around(50, 52, 16),
  bustGirth: around(50, 58, 16.5),
  bustPointWidth: along([43, 59], [57, 59]),
  bustPointDepth: along([45, 34], [43, 59]),
  frontWaistLength: along([45, 34], [43, 59], [44, 80]),
  centreFrontLength: along([50, 36], [50, 80]),
  backWaistLength: onBack([50, 33], [50, 80]),
  sideWaistLength: along([65.5, 52], [62, 80]),
  underBustGirth: around(50, 65, 14),
  torsoGirth: along([41, 36], [44, 58], [48, 108], [46, 58], [41, 36]),
  torsoLength: onBack([50, 33], [50, 108]),
  upperArmGirth: around(27.5, 58, 4.6, 14),
  elbowGirth: around(23, 76, 3.8, 14),
  forearmGirth: around(20.5, 86, 3.8, 14),
  wristGirth: around(16, 105, 2.6, 14),
  upperArmLength: along([69, 40], [77.5, 76]),
  armLength: along([69, 40], [77.5, 76], [84, 105]),
  underarmLength: along([66.5, 53], [74, 78], [81, 105]),
  handGirth: around(14.3, 112, 3.2, 14),
  handLength: along([84, 105], [88, 121]),
  waistGirth: around(50, 80, 12),
  highHipGirth: around(50, 88, 15),
  waistToHip: along([62, 80], [68, 98]),
  bodyRise: along([62, 80], [68, 98], [68, 107]),
  hipGirth: around(50, 98, 18),
  crotchLength: along([50, 80], [50, 108]),
  outsideLeg: along([62, 80], [68, 98], [68, 206]),
  waistToKnee: along([62, 80], [68, 98], [64, 150]),
  thighGirth: around(41, 113, 8.8),
  midThighGirth: around(41.5, 128, 7.8),
  insideLeg: along([50, 108], [50, 206]),
  kneeHeight: along([60, 150], [60, 206]),
  kneeGirth: around(42, 150, 5.8),
  calfGirth: around(42, 166, 6),
  ankleGirth: around(42.5, 193, 3.6),
  heelGirth: around(41.5, 199, 5.2, -35),
  instepGirth: around(40.5, 200, 4.4, -20),
  footGirth: around(39.5, 204, 4.6, -10),
  footWidth: along([54, 206], [65, 206]),
  footLength: along([58, 197], [63, 208]),
  heelHeight: along([70, 197], [70, 206]),
};

/** How high on the figure a measure is, for the order from head to foot; what is not drawn comes last. */
export function heightOf(measureId: string | undefined): number {
  const place = measureId === undefined ? undefined : tapePlaces[measureId];
  if (!place) return Number.POSITIVE_INFINITY;
  return place.kind === "around" ? place.y : Math.min(...place.points.map(([, y]) => y));
}

/** The figure itself: closed outlines and open lines, as the data of svg paths. */
export const figureLines: readonly string[] = [
  // Head and hair line
  "M50 2 C56 2 60 7 60 14 C60 21 55.5 27 50 27 C44.5 27 40 21 40 14 C40 7 44 2 50 2 Z",
  // Neck, trunk and legs
  "M46 26 L46 31 C45 34 40 36 33 38.5 C30 40 30.5 47 34 53 C33 58 35 61 36 65 C37 71 38 76 38 80 " +
    "C36 86 32 92 32 99 C32 106 33 118 34.5 128 C36 138 36 144 36.2 150 C35.6 158 35.8 166 37.5 175 " +
    "C38.6 183 39 188 39 193 C38 198 35 203 34.5 206 L45.5 206 C46.5 200 46 196 46 193 C46.5 186 48 176 48 166 " +
    "C48 158 47.6 154 47.8 150 C48.6 138 49.6 122 50 108 " +
    "C50.4 122 51.4 138 52.2 150 C52.4 154 52 158 52 166 C52 176 53.5 186 54 193 C54 196 53.5 200 54.5 206 L65.5 206 " +
    "C65 203 62 198 61 193 C61 188 61.4 183 62.5 175 C64.2 166 64.4 158 63.8 150 C64 144 64 138 65.5 128 " +
    "C67 118 68 106 68 99 C68 92 64 86 62 80 C62 76 63 71 64 65 C65 61 67 58 66 53 C69.5 47 70 40 67 38.5 " +
    "C60 36 55 34 54 31 L54 26",
  // Arms, with hands as mittens
  "M33 38.5 C28 40 26 46 25 54 C23.5 62 20.5 70 19 76 C17 84 14.5 95 13.2 104 C10.5 108 10 115 11.5 121 " +
    "C15 121 18 114 18.6 105.5 C21 96 25 86 27 78 C29.5 70 32 62 34 53",
  "M67 38.5 C72 40 74 46 75 54 C76.5 62 79.5 70 81 76 C83 84 85.5 95 86.8 104 C89.5 108 90 115 88.5 121 " +
    "C85 121 82 114 81.4 105.5 C79 96 75 86 73 78 C70.5 70 68 62 66 53",
];

/** The tape as it is drawn: lines, those behind the body apart, and the marks at its ends. */
export interface TapeLines {
  readonly strokes: readonly { readonly path: string; readonly isBehind: boolean }[];
  readonly ends: readonly Point[];
  readonly transform: string | undefined;
}

export function tapeOn(place: TapePlace): TapeLines {
  if (place.kind === "around") {
    const { x, y, tilt } = place;
    const strokes = [
      { path: halfRing(place, 0), isBehind: true },
      { path: halfRing(place, 1), isBehind: false },
    ];
    const transform = tilt === undefined ? undefined : `rotate(${String(tilt)} ${String(x)} ${String(y)})`;
    return { strokes, ends: [], transform };
  }
  const { points, onBack: isBehind = false } = place;
  const path = points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${String(x)} ${String(y)}`).join(" ");
  return { strokes: [{ path, isBehind }], ends: endsOf(points), transform: undefined };
}

/** Half of a flat ring: in front (1) below its middle, behind (0) above it. */
function halfRing({ x, y, half }: Extract<TapePlace, { kind: "around" }>, sweep: 0 | 1): string {
  const rise = Math.max(1.2, half * 0.22);
  const [from, to] = [x + half, x - half].map(String);
  return `M${from ?? ""} ${String(y)} A${String(half)} ${String(rise)} 0 0 ${String(sweep)} ${to ?? ""} ${String(y)}`;
}

function endsOf(points: readonly Point[]): readonly Point[] {
  const [first] = points;
  const last = points.at(-1);
  return first && last ? (first === last || points.length < 2 ? [first] : [first, last]) : [];
}

/** What the drawing shows, for those who do not see it. */
export function spokenPlace(name: string, place: TapePlace): string {
  if (place.kind === "around") return `${name}: the tape goes around here.`;
  return place.onBack ? `${name}: along the back.` : `${name}: from one mark to the other.`;
}
