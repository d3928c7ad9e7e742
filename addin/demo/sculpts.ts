/**
 * The moulds of an invented maker. A figure is a body with a head, a pair of hands and a pair of feet; several
 * figures share a body. All lengths in mm, as the mould has them: readings vary by up to half a millimetre.
 * The proportions are invented, and lie where people and figures of this size commonly lie.
 */

/** The measures of a body, in the order of the rows of `bodies`. */
export const bodyMeasures = [
  "Neck",
  "Shoulder width",
  "Bust",
  "Under-bust",
  "Waist",
  "Hip",
  "Back waist length",
  "Waist to hip",
  "Waist to knee",
  "Body rise",
  "Arm length",
  "Upper arm",
  "Wrist",
  "Inside leg",
  "Thigh",
  "Knee",
  "Calf",
  "Ankle",
] as const;
export interface Body {
  readonly line: string;
  readonly material: string;
  readonly isSoft?: true;
  /** True where neither elbow nor shoulder bends. */
  readonly isStiff?: true;
  /** What comes off, so that a garment needs not pass over it. */
  readonly comesOff: "" | "hands" | "head" | "hands and head";
  readonly hair: "wig" | "rooted" | "painted";
  /** From the sole to the neck joint. */
  readonly neckHeight: number;
  /** In the order of `bodyMeasures`. */
  readonly readings: readonly number[];
}

// prettier-ignore
export const bodies = {
  larch: { // slim woman, 16 in
    line: "Larch", material: "resin", neckHeight: 340,
    comesOff: "hands", hair: "wig",
    readings: [68, 82, 182, 152, 134, 194, 88, 44, 140, 66, 128, 50, 33, 186, 108, 72, 74, 44],
  },
  larchFirst: { // the first edition of the same line: slimmer
    line: "Larch, first edition", material: "vinyl", neckHeight: 339,
    comesOff: "", hair: "rooted",
    readings: [64, 79, 175, 147, 125, 186, 86, 42, 140, 65, 125, 46, 30.5, 188, 102, 68, 69, 41],
  },
  oak: { // full-figured woman, as tall as Larch
    line: "Oak", material: "resin", neckHeight: 338,
    comesOff: "hands", hair: "wig",
    readings: [74, 88, 216, 184, 170, 232, 90, 46, 141, 70, 124, 62, 37, 178, 130, 84, 86, 50],
  },
  clover: { // child, as tall as Larch
    line: "Clover", material: "vinyl and cloth", neckHeight: 318,
    comesOff: "", hair: "painted",
    readings: [78, 80, 186, 178, 174, 200, 84, 40, 138, 74, 116, 56, 40, 160, 112, 82, 80, 56],
  },
  alder: { // man, 17 in
    line: "Alder", material: "resin", neckHeight: 366,
    comesOff: "hands and head", hair: "wig",
    readings: [82, 104, 208, 186, 160, 196, 100, 46, 147, 68, 142, 64, 40, 198, 118, 80, 83, 50],
  },
  pip: { // child, 10 in
    line: "Pip", material: "resin", neckHeight: 201,
    comesOff: "head", hair: "wig",
    readings: [50, 51, 118, 113, 110, 127, 53, 25, 88, 48, 73, 36, 26, 100, 72, 52, 51, 36],
  },
  wren: { // fashion figure, as tall as Pip
    line: "Wren", material: "vinyl", neckHeight: 216,
    comesOff: "", hair: "rooted", isStiff: true,
    readings: [43, 52, 116, 97, 84, 124, 55, 28, 90, 42, 82, 32, 21, 119, 70, 46, 47, 28],
  },
  rowan: { // half-grown girl, 12 1/2 in
    line: "Rowan", material: "resin", neckHeight: 268,
    comesOff: "hands", hair: "wig",
    readings: [57, 66, 141, 124, 112, 150, 69, 34, 111, 53, 101, 41, 28, 146, 86, 59, 60, 38],
  },
  holm: { // woman, 22 in
    line: "Holm", material: "resin", neckHeight: 478,
    comesOff: "hands", hair: "wig",
    readings: [94, 114, 252, 214, 188, 270, 123, 62, 199, 95, 178, 70, 46, 260, 150, 100, 102, 61],
  },
  sallow: { // dancer, made once
    line: "Single pieces", material: "porcelain", neckHeight: 402,
    comesOff: "", hair: "painted", isStiff: true,
    readings: [78, 98, 204, 178, 154, 210, 102, 52, 167, 78, 154, 57, 38, 222, 126, 84, 88, 52],
  },
  pommel: { // stylised: a very large head, thin limbs
    line: "Single pieces", material: "cloth", neckHeight: 196,
    comesOff: "", hair: "painted", isSoft: true,
    readings: [31, 42, 128, 124, 122, 140, 60, 26, 81, 44, 98, 23, 15.5, 92, 50, 31, 30, 21],
  },
} as const satisfies Record<string, Body>;
export type BodyName = keyof typeof bodies;

export interface Hands {
  readonly girth: number;
}

export const hands = {
  slim: { girth: 39 },
  gesturing: { girth: 43 },
  full: { girth: 43.5 },
  childLarge: { girth: 48 },
  man: { girth: 50 },
  childSmall: { girth: 31 },
  wren: { girth: 25.5 },
  rowan: { girth: 34 },
  holm: { girth: 55 },
  dancer: { girth: 46 },
  mitten: { girth: 39 },
} as const satisfies Record<string, Hands>;
export type HandsName = keyof typeof hands;

export interface Feet {
  readonly heelGirth: number;
  /** Around the ball of the foot. */
  readonly ballGirth: number;
  readonly length: number;
  /** In sixteenths of an inch: the maker lists foot widths in inches. */
  readonly widthSixteenths: number;
  /** Of the shoe that the foot is made for, in mm; a flat foot has none. */
  readonly heelHeight?: number;
}

export const feet = {
  flat: { heelGirth: 62, ballGirth: 50, length: 52, widthSixteenths: 12 },
  arched: { heelGirth: 58, ballGirth: 46, length: 45, widthSixteenths: 11, heelHeight: 18 },
  full: { heelGirth: 68, ballGirth: 55, length: 53, widthSixteenths: 13 },
  childLarge: { heelGirth: 78, ballGirth: 62, length: 58, widthSixteenths: 15 },
  man: { heelGirth: 72, ballGirth: 59, length: 62, widthSixteenths: 14 },
  childSmall: { heelGirth: 50, ballGirth: 40, length: 37, widthSixteenths: 10 },
  wren: { heelGirth: 39, ballGirth: 31, length: 31, widthSixteenths: 8, heelHeight: 12 },
  rowan: { heelGirth: 53, ballGirth: 42, length: 43, widthSixteenths: 11 },
  holm: { heelGirth: 86, ballGirth: 69, length: 72, widthSixteenths: 17 },
  dancer: { heelGirth: 74, ballGirth: 60, length: 64, widthSixteenths: 14 },
  shoe: { heelGirth: 58, ballGirth: 60, length: 54, widthSixteenths: 17 },
} as const satisfies Record<string, Feet>;
export type FeetName = keyof typeof feet;
