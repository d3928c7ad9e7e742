import type { EaseRule } from "../chart/easeRule.ts";
import { easeMm } from "../chart/easeRule.ts";
import { isContained } from "../chart/garmentClass.ts";
import type { GarmentParts } from "../chart/garmentParts.ts";
import type { Pattern } from "../chart/pattern.ts";
import { measureById } from "../measures/dictionary.ts";
import type { FigureView } from "./figureView.ts";
import { comfortableShare } from "./clearance.ts";
import { ownRoom } from "./girthOverLayers.ts";
import { girthOverGarments, layersAt } from "./layers.ts";

/** What is needed to say what a garment measures. */
export interface GarmentContext {
  readonly view: FigureView;
  /** The rules of a garment class. */
  rulesOf(garmentClass: string): readonly EaseRule[];
  underOf(pattern: Pattern): readonly Pattern[];
  partsOf(pattern: Pattern): GarmentParts;
}

/**
 * A finished measure of a garment in mm: as given, else the body that it was drafted for, over what is worn underneath,
 * with the design ease of its class and room for its own cloth. NaN where neither is known.
 */
export function garmentMeasure(pattern: Pattern, measure: string, context: GarmentContext): number {
  const given = pattern.finished.get(measure);
  if (given !== undefined) return given;
  const rule = context.rulesOf(pattern.garmentClass.name).find((each) => each.measure === measure);
  if (pattern.draftedFor === undefined || !rule) return Number.NaN;
  const bare = context.view.reading(measure)[pattern.draftedFor] ?? Number.NaN;
  const lacing = 1 + (pattern.garmentClass.lacingGap ?? 0);
  const comfort = (1 + pattern.stretch * comfortableShare) * lacing;
  if (measureById(measure)?.kind !== "girth") {
    const must = isContained(pattern.garmentClass.wornOn, measure) ? bare / comfort - bare : -Infinity;
    return bare + designEase(rule, bare, must);
  }
  const layers = layersAt(measure, context.underOf(pattern), context.partsOf, (under) =>
    garmentMeasure(under, measure, context),
  );
  const inside = girthOverGarments(bare, layers) + ownRoom(pattern.thicknessMm);
  return inside + designEase(rule, bare, inside / comfort - inside);
}

/**
 * Half way between least and most; half as far again inside where there is one limit. The project’s own choice.
 *
 * @param reachMm the least that the cloth can have and reach the body with comfort: nobody drafts it smaller
 */
function designEase({ least, most }: EaseRule, bodyMm: number, reachMm: number): number {
  const from = Math.max(easeMm(least, bodyMm, -Infinity), reachMm);
  const to = easeMm(most, bodyMm, Number.NaN);
  if (!least && !most) return 0;
  if (!most) return from + Math.abs(from) / 2;
  return least ? (from + to) / 2 : to - Math.abs(to) / 2;
}
