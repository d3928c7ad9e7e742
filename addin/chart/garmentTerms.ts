/** Parts of the figure that a class of garment is worn on; it decides how the garment is put on and what it covers. */
export const wornOnParts = [
  "upper body",
  "whole body",
  "hips",
  "hips and legs",
  "body and legs",
  "arm",
  "leg",
  "foot",
  "hand",
  "head",
] as const;

export type WornOn = (typeof wornOnParts)[number];

export const openingPlaces = ["neck", "cuff", "hem", "waist"] as const;

/** Openings of a garment that something has to pass. */
export type OpeningPlace = (typeof openingPlaces)[number];

/** How far a sleeve reaches down the arm. */
export const sleeveKinds = ["none", "short", "elbow", "long"] as const;

export type SleeveKind = (typeof sleeveKinds)[number];

/** Where a garment ends: at its lower edge; a stocking or sock at its upper one. From above down. */
export const endPlaces = [
  "under the bust",
  "waist",
  "hip",
  "thigh",
  "knee",
  "calf",
  "ankle",
  "floor",
] as const;

export type EndPlace = (typeof endPlaces)[number];

export const closures = ["none", "neck", "side", "waist", "full length"] as const;

/** Where a garment opens: from the neck down, at the side, from the waist down, or down its whole length. */
export type Closure = (typeof closures)[number];
