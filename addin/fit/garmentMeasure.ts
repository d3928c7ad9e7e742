import type { EaseRule } from "../chart/easeRule.ts";
import { easeMm } from "../chart/easeRule.ts";
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
  if (measureById(measure)?.kind !== "girth") return bare + designEase(rule, bare);
  const layers = layersAt(measure, context.underOf(pattern), (under) =>
    garmentMeasure(under, measure, context),
  );
  const inside = girthOverGarments(bare, layers) + ownRoom(pattern.thicknessMm);
  // Nobody drafts it smaller than its cloth stretches with comfort.
  const reaches = inside / (1 + pattern.stretch * comfortableShare);
  return Math.max(inside + designEase(rule, bare), reaches);
}

/** Half way between least and most; half as far again inside where there is one limit. The project’s own choice. */
function designEase({ least, most }: EaseRule, bodyMm: number): number {
  const from = easeMm(least, bodyMm, Number.NaN);
  const to = easeMm(most, bodyMm, Number.NaN);
  if (!least && !most) return 0;
  if (!most) return from + Math.abs(from) / 2;
  return least ? (from + to) / 2 : to - Math.abs(to) / 2;
}
