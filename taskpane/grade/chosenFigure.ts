import type { Chosen } from "../ui/chosenPlace.ts";
import { placeOfChosen } from "../ui/chosenPlace.ts";

/** The place of a chosen figure; the usual one where none is chosen, `undefined` where it is not in the chart any more. */
export function placeOfFigure(
  names: readonly string[],
  chosen: Chosen | undefined,
  usual: number,
): number | undefined {
  if (!chosen) return Math.min(usual, names.length - 1);
  return names.includes(chosen.name) ? placeOfChosen(names, chosen) : undefined;
}
