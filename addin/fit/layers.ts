import type { Pattern } from "../chart/pattern.ts";
import type { GarmentParts } from "../chart/garmentParts.ts";
import { hasMeasure } from "../chart/garmentParts.ts";
import { coveredMeasures } from "../chart/garmentClass.ts";
import { girthOverLayers } from "./girthOverLayers.ts";

/** One garment worn underneath, at one measure. */
export interface Layer {
  readonly thicknessMm: number;
  /** Its own finished girth there in mm; NaN where it is not known. */
  readonly girthMm: number;
}

/**
 * The girth over what is worn underneath, layer by layer from the inside.
 *
 * A layer that is longer around than what it lies on folds, and its cloth takes room all the same: a skirt gathered to
 * three times the hip counts as three layers. (Its section, thickness · length, is the same spread out or folded:
 * geometry.) One whose girth is not known, or that stretches around the body, counts once.
 */
export function girthOverGarments(bareMm: number, layers: readonly Layer[]): number {
  let over = bareMm;
  for (const { thicknessMm, girthMm } of layers) {
    const fullness = girthMm > over ? girthMm / over : 1;
    over = girthOverLayers(over, thicknessMm, fullness);
  }
  return over;
}

/** The layers that lie on one measure, the innermost first. */
export function layersAt(
  measure: string,
  under: readonly Pattern[],
  partsOf: (pattern: Pattern) => GarmentParts,
  girthOf: (pattern: Pattern, measure: string) => number,
): readonly Layer[] {
  return under
    .filter(
      (pattern) =>
        pattern.thicknessMm > 0 &&
        coveredMeasures[pattern.garmentClass.wornOn].includes(measure) &&
        hasMeasure(pattern.garmentClass.wornOn, partsOf(pattern), measure),
    )
    .map((pattern) => ({ thicknessMm: pattern.thicknessMm, girthMm: girthOf(pattern, measure) }));
}
