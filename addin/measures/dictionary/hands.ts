import type { Measure } from "../measure.ts";

/**
 * Measures of the hands.
 *
 * The ISO terms stand in the published list of ISO 8559:1989, the forerunner of ISO 8559-1.
 */
export const hands: readonly Measure[] = [
  {
    id: "handGirth",
    name: "Hand girth",
    shortName: "Hand",
    isoTerm: "hand girth",
    definition: "Around the hand at its widest, over the knuckles, without the thumb.",
    onFigures:
      "Where fingers or thumb are moulded apart include whatever a sleeve has to pass in one go. Leave empty if the hands come off for dressing.",
    kind: "girth",
    zone: "hands",
    synonyms: ["hand", "palm", "knuckle", "around hand", "hand around"],
    tolerance: { floorMm: 1.5, percent: 3 },
    governs: true,
  },
  {
    id: "handLength",
    name: "Hand length",
    shortName: "Hand length",
    isoTerm: "hand length",
    definition: "From the wrist crease to the tip of the longest finger.",
    onFigures: "From the joint line of the wrist; on bent moulded fingers follow the back of the hand.",
    kind: "length",
    zone: "hands",
    synonyms: ["wrist to fingertip", "wrist to finger tip"],
    tolerance: { floorMm: 1.5, percent: 3 },
    governs: false,
  },
];
