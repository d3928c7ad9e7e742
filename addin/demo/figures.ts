import type { BodyName, FeetName, HandsName } from "./sculpts.ts";

/** One figure of the invented maker. */
export interface Figure {
  readonly name: string;
  readonly body: BodyName;
  readonly hands: HandsName;
  readonly feet: FeetName;
  readonly head: string;
  /** Head girth, mm. */
  readonly headGirth: number;
  /** From the neck joint to the top of the head, mm. */
  readonly headHeight: number;
  readonly notes?: string;
}

export const maker = "Ottermere Figure Works";

// prettier-ignore
export const figures: readonly Figure[] = [
  { name: "Ardwen", body: "larch", hands: "slim", feet: "flat", head: "Calm", headGirth: 165, headHeight: 66 },
  { name: "Belsory", body: "larch", hands: "slim", feet: "flat", head: "Smile", headGirth: 168, headHeight: 66 },
  { name: "Cattrin", body: "larch", hands: "gesturing", feet: "flat", head: "Dreamer", headGirth: 171, headHeight: 67 },
  { name: "Dovelle", body: "larch", hands: "slim", feet: "arched", head: "Proud", headGirth: 161, headHeight: 66, notes: "Arched feet for heeled shoes" },
  { name: "Elmory", body: "larch", hands: "gesturing", feet: "arched", head: "Singer", headGirth: 174, headHeight: 67 },
  { name: "Fennick", body: "larch", hands: "slim", feet: "flat", head: "Freckles", headGirth: 163, headHeight: 66 },
  { name: "Garlow", body: "larchFirst", hands: "slim", feet: "flat", head: "Calm, first edition", headGirth: 158, headHeight: 66 },
  { name: "Hessamy", body: "larchFirst", hands: "slim", feet: "flat", head: "Smile, first edition", headGirth: 160.5, headHeight: 66 },
  { name: "Ildrith", body: "larchFirst", hands: "slim", feet: "arched", head: "Proud, first edition", headGirth: 155, headHeight: 66 },
  { name: "Jorvie", body: "oak", hands: "full", feet: "full", head: "Laughing", headGirth: 170, headHeight: 67 },
  { name: "Kestrin", body: "oak", hands: "full", feet: "full", head: "Thoughtful", headGirth: 173, headHeight: 67 },
  { name: "Lowick", body: "oak", hands: "full", feet: "full", head: "Matron", headGirth: 167, headHeight: 67 },
  { name: "Mirrowen", body: "clover", hands: "childLarge", feet: "childLarge", head: "Round", headGirth: 226, headHeight: 87, notes: "Legs of stuffed cloth: measure without pulling" },
  { name: "Norrim", body: "clover", hands: "childLarge", feet: "childLarge", head: "Pout", headGirth: 222, headHeight: 87 },
  { name: "Ostrey", body: "clover", hands: "childLarge", feet: "childLarge", head: "Sleepy", headGirth: 230, headHeight: 88 },
  { name: "Pellory", body: "alder", hands: "man", feet: "man", head: "Sailor", headGirth: 182, headHeight: 70 },
  { name: "Quenby", body: "alder", hands: "man", feet: "man", head: "Scholar", headGirth: 185, headHeight: 71 },
  { name: "Rushen", body: "alder", hands: "man", feet: "man", head: "Bearded", headGirth: 190, headHeight: 71, notes: "Measured without the beard" },
  { name: "Sorbin", body: "alder", hands: "man", feet: "man", head: "Young", headGirth: 179, headHeight: 70 },
  { name: "Tansel", body: "pip", hands: "childSmall", feet: "childSmall", head: "Round", headGirth: 143, headHeight: 55 },
  { name: "Umbrie", body: "pip", hands: "childSmall", feet: "childSmall", head: "Pout", headGirth: 140, headHeight: 54 },
  { name: "Velloway", body: "pip", hands: "childSmall", feet: "childSmall", head: "Sleepy", headGirth: 146, headHeight: 55 },
  { name: "Wickory", body: "pip", hands: "childSmall", feet: "childSmall", head: "Grin", headGirth: 138, headHeight: 54 },
  { name: "Yarrick", body: "wren", hands: "wren", feet: "wren", head: "Evening", headGirth: 104, headHeight: 39 },
  { name: "Zinnow", body: "wren", hands: "wren", feet: "wren", head: "Morning", headGirth: 106.5, headHeight: 39 },
  { name: "Ambrisel", body: "wren", hands: "wren", feet: "wren", head: "Noon", headGirth: 101.5, headHeight: 39 },
  { name: "Bryndle", body: "wren", hands: "wren", feet: "wren", head: "Dusk", headGirth: 109, headHeight: 40 },
  { name: "Corvane", body: "rowan", hands: "rowan", feet: "rowan", head: "Plaits", headGirth: 146, headHeight: 52 },
  { name: "Dunmarra", body: "rowan", hands: "rowan", feet: "rowan", head: "Curls", headGirth: 143, headHeight: 52 },
  { name: "Esterby", body: "rowan", hands: "rowan", feet: "rowan", head: "Fringe", headGirth: 149, headHeight: 52 },
  { name: "Farrowin", body: "holm", hands: "holm", feet: "holm", head: "Regal", headGirth: 222, headHeight: 84 },
  { name: "Gwendry", body: "holm", hands: "holm", feet: "holm", head: "Gentle", headGirth: 226, headHeight: 84 },
  { name: "Hollisane", body: "holm", hands: "holm", feet: "holm", head: "Stern", headGirth: 218, headHeight: 83 },
  { name: "Isolmay", body: "sallow", hands: "dancer", feet: "dancer", head: "Dancer", headGirth: 184, headHeight: 69, notes: "Made once" },
  { name: "Pommel", body: "pommel", hands: "mitten", feet: "shoe", head: "Moon", headGirth: 305, headHeight: 104, notes: "Stylised on purpose" },
];
