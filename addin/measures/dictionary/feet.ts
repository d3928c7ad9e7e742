import type { Measure } from "../measure.ts";

/**
 * Measures of the feet.
 *
 * Of the ISO terms, foot width is from memory of ISO 8559-1; foot length stands in the published list of its forerunner
 * ISO 8559:1989.
 */
export const feet: readonly Measure[] = [
  {
    id: "heelGirth",
    name: "Heel girth",
    shortName: "Heel",
    definition:
      "Around the foot from the point of the heel over the instep, the foot stretched: what a stocking or trouser hem has to pass.",
    onFigures: "On a moulded shoe measure over the shoe. Where the foot comes off leave it empty.",
    kind: "girth",
    zone: "feet",
    synonyms: [
      "heel",
      "heel to instep",
      "heel and instep",
      "heel instep",
      "ankle heel",
      "heel ankle",
      "around heel",
      "passing heel",
      "long heel",
    ],
    tolerance: { floorMm: 1.5, percent: 3 },
    governs: false,
  },
  {
    id: "footGirth",
    name: "Foot girth",
    shortName: "Foot around",
    definition: "Around the ball of the foot, at its widest.",
    onFigures: "On a moulded shoe measure over the shoe.",
    kind: "girth",
    zone: "feet",
    synonyms: ["ball of foot", "ball girth", "foot ball", "foot around", "ball"],
    tolerance: { floorMm: 1.5, percent: 3 },
    governs: false,
  },
  {
    id: "instepGirth",
    name: "Instep girth",
    shortName: "Instep",
    definition: "Around the middle of the foot over the highest point of the instep.",
    onFigures: "On an arched foot keep the tape square to the sole.",
    kind: "girth",
    zone: "feet",
    synonyms: ["instep", "foot instep", "arch girth"],
    tolerance: { floorMm: 1.5, percent: 3 },
    governs: false,
  },
  {
    id: "footLength",
    name: "Foot length",
    shortName: "Foot length",
    isoTerm: "foot length",
    definition: "From the back of the heel to the tip of the longest toe, along the sole.",
    onFigures:
      "On an arched foot measure along the ground from the heel’s plumb line to the toe, and note the heel height. On a moulded shoe measure the shoe and note so.",
    kind: "length",
    zone: "feet",
    synonyms: ["foot", "heel to toe", "sole length", "foot len"],
    tolerance: { floorMm: 1.5, percent: 2 },
    governs: true,
  },
  {
    id: "footWidth",
    name: "Foot width",
    shortName: "Foot width",
    isoTerm: "foot width",
    definition: "Across the sole at the ball of the foot, at its widest.",
    onFigures: "On a moulded shoe measure the shoe and note so.",
    kind: "width",
    zone: "feet",
    synonyms: ["ball width", "sole width", "width foot"],
    tolerance: { floorMm: 1, percent: 3 },
    governs: true,
  },
  {
    id: "heelHeight",
    name: "Heel height",
    shortName: "Heel height",
    definition:
      "How far the heel is above the floor when the figure stands on the ball of its foot; 0 for a flat foot.",
    onFigures:
      "Stand the figure on the ball of its bare foot and measure from the floor to the underside of the heel.",
    kind: "height",
    zone: "feet",
    synonyms: ["arch height", "heel lift", "foot arch", "heel rise", "shoe heel height"],
    tolerance: { floorMm: 2, percent: 5 },
    governs: false,
  },
];
