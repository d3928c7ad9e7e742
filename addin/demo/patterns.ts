import type { EndPlace, SleeveKind } from "../chart/garmentTerms.ts";

/** One pattern of an invented maker. Lengths in mm; openings are shut and not stretched. */
export interface DemoPattern {
  readonly code: string;
  readonly title: string;
  readonly garmentClass: string;
  /** The figure that it was drafted for; its body gives what is not measured on the garment. */
  readonly draftedFor?: string;
  /** 0.3 is 30 % */
  readonly stretch?: number;
  readonly thickness?: number;
  readonly wornOver?: string;
  readonly opens?: "back" | "front" | "side" | "full length";
  readonly openingLength?: number;
  readonly neck?: number;
  readonly cuff?: number;
  readonly hem?: number;
  readonly waistOpening?: number;
  readonly bust?: number;
  readonly waist?: number;
  readonly hip?: number;
  readonly armLength?: number;
  readonly head?: number;
  readonly sleeves?: SleeveKind;
  readonly endsAt?: EndPlace;
  /** From the waist, or from the back of the neck, to the hem. */
  readonly length?: number;
  readonly insideLeg?: number;
}

// prettier-ignore
export const patterns: readonly DemoPattern[] = [
  { code: "B-1", title: "Sedge bodice", garmentClass: "Close-fitting bodice", draftedFor: "Ardwen", thickness: 0.3, opens: "full length" },
  { code: "B-2", title: "Minnow bathing top", garmentClass: "Close-fitting bodice", draftedFor: "Ardwen", stretch: 0.9, thickness: 0.4, neck: 118, bust: 168, waist: 132, sleeves: "none" },
  { code: "D-1", title: "Reed dress", garmentClass: "Dress", draftedFor: "Ardwen", thickness: 0.3, opens: "back", openingLength: 115, neck: 76, cuff: 46, endsAt: "knee" },
  { code: "D-2", title: "Heron sheath", garmentClass: "Sheath dress", draftedFor: "Ardwen", thickness: 0.3, opens: "back", openingLength: 118, neck: 76, endsAt: "knee" },
  { code: "D-3", title: "Bulrush gown", garmentClass: "Dress", draftedFor: "Gwendry", thickness: 0.35, opens: "back", openingLength: 170, neck: 104, cuff: 62, endsAt: "ankle" },
  { code: "D-4", title: "Willow tea dress", garmentClass: "Straight dress", draftedFor: "Fennick", thickness: 0.25, opens: "full length", cuff: 44, bust: 206, hip: 212, endsAt: "calf" },
  { code: "D-5", title: "Millpond smock", garmentClass: "Loose dress", draftedFor: "Tansel", thickness: 0.25, opens: "back", openingLength: 30, neck: 92, cuff: 36, hip: 170, endsAt: "thigh" },
  { code: "D-6", title: "Fog gown", garmentClass: "Tent dress", draftedFor: "Jorvie", thickness: 0.3, opens: "side", openingLength: 45, neck: 178, cuff: 60, bust: 290, hip: 330, endsAt: "floor" },
  { code: "D-7", title: "Eddy dress, first draft", garmentClass: "Dress", draftedFor: "Ardwen", thickness: 0.3, opens: "back", openingLength: 40, neck: 76, cuff: 40, endsAt: "knee" },
  { code: "D-8", title: "Brook dress, from a box of old papers", garmentClass: "Dress", thickness: 0.3, opens: "full length", bust: 200 },
  { code: "T-1", title: "Ferry shirt", garmentClass: "Loose top", draftedFor: "Pellory", thickness: 0.25, opens: "full length", cuff: 52, endsAt: "hip" },
  { code: "T-2", title: "Raft pullover", garmentClass: "Loose top", draftedFor: "Ardwen", stretch: 0.4, thickness: 0.6, neck: 142, cuff: 40, bust: 218, endsAt: "hip" },
  { code: "T-3", title: "Skimmer blouse", garmentClass: "Loose top", draftedFor: "Corvane", thickness: 0.2, opens: "back", openingLength: 48, neck: 64, cuff: 36, endsAt: "hip" },
  { code: "J-1", title: "Weir jacket", garmentClass: "Jacket", draftedFor: "Ardwen", thickness: 0.7, wornOver: "D-1", opens: "full length", cuff: 54, endsAt: "hip" },
  { code: "J-2", title: "Lock-keeper’s jacket", garmentClass: "Jacket", draftedFor: "Pellory", thickness: 0.8, wornOver: "T-1", opens: "full length", cuff: 58, armLength: 146, endsAt: "hip" },
  { code: "C-1", title: "Winter crossing coat", garmentClass: "Coat", draftedFor: "Ardwen", thickness: 1.1, wornOver: "D-1, J-1", opens: "full length", cuff: 62, endsAt: "calf" },
  { code: "C-2", title: "Puddle coat", garmentClass: "Coat", draftedFor: "Tansel", thickness: 0.8, wornOver: "D-5", opens: "full length", cuff: 44, bust: 160, endsAt: "knee" },
  { code: "S-1", title: "Quay skirt", garmentClass: "Fitted skirt", draftedFor: "Ardwen", thickness: 0.35, opens: "back", openingLength: 40, endsAt: "knee" },
  { code: "S-2", title: "Harbour skirt", garmentClass: "Fitted skirt", draftedFor: "Jorvie", stretch: 0.2, thickness: 0.4, opens: "side", openingLength: 32, hip: 238, length: 96 },
  { code: "F-1", title: "Whirlpool skirt", garmentClass: "Flared skirt", draftedFor: "Ardwen", thickness: 0.2, opens: "back", openingLength: 34, hip: 420, endsAt: "calf" },
  { code: "F-2", title: "Foam petticoat", garmentClass: "Flared skirt", draftedFor: "Gwendry", thickness: 0.15, waistOpening: 290, hip: 620, endsAt: "ankle" },
  { code: "P-1", title: "Towpath trousers", garmentClass: "Trousers", draftedFor: "Pellory", thickness: 0.4, opens: "front", openingLength: 30, hem: 84 },
  { code: "P-2", title: "Tadpole leggings", garmentClass: "Leggings", draftedFor: "Tansel", stretch: 0.5, thickness: 0.4, hem: 44, waistOpening: 112, waist: 108, hip: 122 },
  { code: "P-3", title: "Sluice trousers", garmentClass: "Trousers", draftedFor: "Ardwen", thickness: 0.3, opens: "side", openingLength: 36, hem: 64.5, insideLeg: 172 },
  { code: "U-1", title: "Pebble briefs", garmentClass: "Briefs", draftedFor: "Ardwen", stretch: 0.5, thickness: 0.3, waistOpening: 160, waist: 124, hip: 180 },
  { code: "U-2", title: "Ripple drawers", garmentClass: "Briefs", draftedFor: "Mirrowen", stretch: 0.4, thickness: 0.3, waistOpening: 176, waist: 164, hip: 190 },
  { code: "L-1", title: "Heather sleeves", garmentClass: "Sleeve", draftedFor: "Ardwen", thickness: 0.3, cuff: 39 },
  { code: "H-1", title: "Still-water stockings", garmentClass: "Hosiery", draftedFor: "Ardwen", stretch: 0.8, thickness: 0.25, hem: 48, endsAt: "thigh" },
  { code: "H-2", title: "Newt socks", garmentClass: "Ankle socks", draftedFor: "Tansel", stretch: 0.6, thickness: 0.3, hem: 42 },
  { code: "X-1", title: "Landing shoes", garmentClass: "Shoe", draftedFor: "Ardwen", thickness: 0.6 },
  { code: "X-2", title: "Evening sandals", garmentClass: "Shoe", draftedFor: "Dovelle", thickness: 0.4 },
  { code: "G-1", title: "Ice gloves", garmentClass: "Glove", draftedFor: "Ardwen", stretch: 0.2, thickness: 0.2 },
  { code: "W-1", title: "Storm hat", garmentClass: "Headwear", draftedFor: "Ardwen", thickness: 0.8 },
  { code: "W-2", title: "Bobbin cap", garmentClass: "Headwear", draftedFor: "Mirrowen", stretch: 0.25, thickness: 0.5, head: 224 },
];
