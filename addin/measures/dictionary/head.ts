import type { Measure } from "../measure.ts";

/**
 * Measures of the head.
 *
 * Of the ISO terms, head height is from memory of ISO 8559-1; head girth stands in the published list of its forerunner
 * ISO 8559:1989.
 */
export const head: readonly Measure[] = [
  {
    id: "headGirth",
    name: "Head girth",
    shortName: "Head",
    isoTerm: "head girth",
    definition: "The greatest level girth of the head, above the ears and over the forehead.",
    onFigures:
      "Take it without the wig. On moulded hair measure over the hair, and note so: it is what a neck opening has to pass.",
    kind: "girth",
    zone: "head",
    synonyms: ["head", "head size", "hat size", "head above ears", "forehead", "wig size", "cap size"],
    tolerance: { floorMm: 3, percent: 2 },
    governs: true,
  },
  {
    id: "headHeight",
    name: "Head height",
    shortName: "Head height",
    isoTerm: "head height",
    definition: "From the top of the head straight down to the underside of the chin.",
    onFigures: "Take it without the wig; push the head down on its neck joint first.",
    kind: "length",
    zone: "head",
    synonyms: ["head length", "crown to chin", "chin to crown", "top of head to chin", "head ht"],
    tolerance: { floorMm: 2, percent: 3 },
    governs: false,
  },
  {
    id: "faceWidth",
    name: "Face width",
    shortName: "Face width",
    definition: "Across the face at its widest, between the ears.",
    onFigures: "Measure straight across with a rule or sliding gauge, without the wig.",
    kind: "width",
    zone: "head",
    synonyms: ["head width", "ear to ear", "face"],
    tolerance: { floorMm: 2, percent: 3 },
    governs: false,
  },
];
