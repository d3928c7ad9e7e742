import type { GarmentTolerances } from "../../addin/chart/tolerances.ts";
import type { ZoneChoice } from "../../addin/similarity/columns.ts";
import { zoneChoices } from "../../addin/similarity/columns.ts";

const zoneWords: Readonly<Record<ZoneChoice, string>> = {
  body: "Body: torso, arms and legs",
  torso: "Torso",
  arms: "Arms",
  legs: "Legs",
  head: "Head",
  hands: "Hands",
  feet: "Feet",
  all: "Every measure of the chart",
};

/** What can be compared: parts of the figure, then the classes of garments that have tolerances of their own. */
export function partOptions(
  garments: readonly GarmentTolerances[],
): readonly (readonly [part: string, words: string])[] {
  return [
    ...zoneChoices.map((zone) => [zone, zoneWords[zone]] as const),
    ...garments
      .filter(({ garment }) => !zoneChoices.some((zone) => zone === garment.toLowerCase()))
      .map(({ garment }) => [garment, `For: ${garment}`] as const),
  ];
}

/** A part in a sentence: “body: torso, arms and legs”. */
export function partOf(options: readonly (readonly [part: string, words: string])[], part: string): string {
  const words = options.find(([each]) => each === part)?.[1] ?? part;
  return words.charAt(0).toLowerCase() + words.slice(1);
}
