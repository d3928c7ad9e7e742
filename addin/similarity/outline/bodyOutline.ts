import type { Chart } from "../../chart/chart.ts";
import { medianOf } from "../../checking/medianOf.ts";
import { usualShareOfHeight } from "../../measures/usualShareOfHeight.ts";
import { measureById } from "../../measures/dictionary.ts";
import { halfWidthOfGirth } from "./ellipse.ts";
import { filledReadings } from "../map/filledReadings.ts";
import type { BodyLength } from "./levelHeights.ts";
import { levelHeights } from "./levelHeights.ts";

/** A diagram of a figure from the front: points for one half, the other is its mirror image. Not a likeness. */
export interface BodyOutline {
  readonly figure: string;
  /** From the sole up; empty when the figure has too few readings. Arms are left out. */
  readonly levels: readonly OutlineLevel[];
  /** Names of measures of the dictionary that would make it truer, as this figure has no reading of them. */
  readonly missing: readonly string[];
  /** What has to be known to read it, in whole sentences; often none. */
  readonly notes: readonly string[];
}

/** A place on the body, all lengths in mm. */
export interface OutlineLevel {
  /** In plain words, for example “Waist”. */
  readonly name: string;
  /** Above the soles, so that figures over each other stand on one floor. */
  readonly heightMm: number;
  /** From the middle line to the outer edge. */
  readonly halfWidthMm: number;
  /** From the middle line to the inner edge: above 0 between the legs alone. */
  readonly innerMm: number;
  /** True when the height or the width is not from readings of this figure. */
  readonly estimated: boolean;
  readonly isHeightEstimated: boolean;
  readonly isWidthEstimated: boolean;
}

/** How a width is found at a level. */
interface Section {
  readonly name: string;
  /** A width of the dictionary, which goes before the girth. */
  readonly width?: string;
  readonly girth?: string;
  /** Depth divided by width of the section: the project’s own starting values, after usual bodies, from memory. */
  readonly depthToWidth: number;
  readonly isLeg?: true;
  /** Left out rather than estimated by usual proportions. */
  readonly isOptional?: true;
}

/** From the sole up. */
const sections: readonly Section[] = [
  { name: "Sole", width: "footWidth", girth: "ankleGirth", depthToWidth: 1, isLeg: true },
  { name: "Ankle", girth: "ankleGirth", depthToWidth: 1, isLeg: true },
  { name: "Calf", girth: "calfGirth", depthToWidth: 1, isLeg: true, isOptional: true },
  { name: "Knee", girth: "kneeGirth", depthToWidth: 1, isLeg: true },
  { name: "Mid-thigh", girth: "midThighGirth", depthToWidth: 1, isLeg: true, isOptional: true },
  { name: "Top of the leg", girth: "thighGirth", depthToWidth: 1, isLeg: true },
  { name: "Hip", girth: "hipGirth", depthToWidth: 0.7 },
  { name: "High hip", girth: "highHipGirth", depthToWidth: 0.72, isOptional: true },
  { name: "Waist", girth: "waistGirth", depthToWidth: 0.75 },
  { name: "Under-bust", girth: "underBustGirth", depthToWidth: 0.75, isOptional: true },
  { name: "Bust", girth: "bustGirth", depthToWidth: 0.85 },
  { name: "Upper bust", girth: "upperBustGirth", depthToWidth: 0.75, isOptional: true },
  { name: "Shoulder", width: "shoulderWidth", depthToWidth: 1 },
  { name: "Neck base", girth: "neckBaseGirth", depthToWidth: 1, isOptional: true },
  { name: "Neck", girth: "neckGirth", depthToWidth: 1 },
  { name: "Head", width: "faceWidth", girth: "headGirth", depthToWidth: 1.25 },
];

/**
 * The outline of a figure from its girths and lengths. A width that the chart has is taken as it is; a girth is taken to be
 * that of an ellipse with the depth and width of `sections`. Legs hang straight down from where they touch. Heights are
 * as `levelHeights` says.
 *
 * What the figure lacks is estimated, and marked: from the other figures where the chart has the measure, see
 * `filledReadings`; else a width from the usual proportions in `usualShareOfHeight`, for the size that the known
 * girths and widths suggest. At levels that can be done without there is no such estimate, the level is left out.
 *
 * @param figure where the figure stands in the chart, from 0
 */
export function bodyOutline(chart: Chart, figure: number): BodyOutline {
  const read = lengthsOf(chart, figure);
  const name = chart.figures[figure] ?? "";
  const keys = sections.flatMap(({ width, girth }) => [width ?? [], girth ?? []].flat());
  const size = medianOf(keys.map((key) => measured(read(key)) / usual(key)));
  const heights = levelHeights(read);
  if (Number.isNaN(size) || !heights) {
    const lacks = heights ? "girths or widths" : "height or length of the body";
    const note = `The chart has no ${lacks} of ${name}, so that nothing can be drawn. Measure it first.`;
    return { figure: name, levels: [], missing: namesOf(keys), notes: [note] };
  }

  const half = (section: Section): { readonly mm: number; readonly isEstimated: boolean } => {
    const width = section.width === undefined ? undefined : read(section.width);
    const girth = section.girth === undefined ? undefined : read(section.girth);
    if (width && !width.isEstimated) return { mm: width.mm / 2, isEstimated: false };
    if (girth) {
      const isEstimated = girth.isEstimated || section.name === "Sole";
      return { mm: halfWidthOfGirth(girth.mm, section.depthToWidth), isEstimated };
    }
    if (width) return { mm: width.mm / 2, isEstimated: true };
    const mm =
      section.girth === undefined
        ? (size * usual(section.width ?? "")) / 2
        : halfWidthOfGirth(size * usual(section.girth), section.depthToWidth);
    return { mm: section.isOptional ? Number.NaN : mm, isEstimated: true };
  };

  const legMm = sections.filter((section) => section.isLeg).map((section) => half(section).mm);
  /** From the middle line to the middle of a leg: where it is widest, the legs touch. */
  const legAxisMm = Math.max(...legMm.filter((mm) => !Number.isNaN(mm)));
  const levels = sections.flatMap((section): readonly OutlineLevel[] => {
    const { mm, isEstimated } = half(section);
    const height = heights.at(section.name);
    if (Number.isNaN(mm) || !height) return [];
    return [
      {
        name: section.name,
        heightMm: height.mm,
        halfWidthMm: section.isLeg ? legAxisMm + mm : mm,
        innerMm: section.isLeg ? legAxisMm - mm : 0,
        estimated: isEstimated || height.isEstimated,
        isHeightEstimated: height.isEstimated,
        isWidthEstimated: isEstimated,
      },
    ];
  });
  const top: OutlineLevel = {
    name: "Top of the head",
    heightMm: heights.heightMm.mm,
    halfWidthMm: 0,
    innerMm: 0,
    estimated: heights.heightMm.isEstimated,
    isHeightEstimated: heights.heightMm.isEstimated,
    isWidthEstimated: false,
  };
  const { kept, contradictions } = inOrder([...levels, top]);
  const lacking = [...keys, ...heights.asked].filter((key) => !read(key) || read(key)?.isEstimated);
  return { figure: name, levels: kept, missing: namesOf(lacking), notes: contradictions };
}

/** A reading of the figure by the dictionary’s id, or an estimate from the rest of the chart; undefined without either. */
function lengthsOf(chart: Chart, figure: number): (key: string) => BodyLength | undefined {
  const columns = chart.measures.map((column) => ({ column }));
  const { mm } = filledReadings(chart, columns);
  return (key) => {
    const at = chart.measures.findIndex((column) => column.key === key);
    const filled = mm[at]?.[figure] ?? Number.NaN;
    if (!(filled > 0)) return undefined;
    return { mm: filled, isEstimated: Number.isNaN(chart.measures[at]!.mm[figure] ?? Number.NaN) };
  };
}

function measured(length: BodyLength | undefined): number {
  return length && !length.isEstimated ? length.mm : Number.NaN;
}

function usual(key: string): number {
  return usualShareOfHeight[key] ?? Number.NaN;
}

function namesOf(keys: readonly string[]): readonly string[] {
  return [...new Set(keys)].flatMap((key) => measureById(key)?.name ?? []);
}

/**
 * The levels that lie above one another, as on a body. Of two that do not, the one with an estimated height goes; where both are
 * from readings, the readings contradict one another.
 */
function inOrder(levels: readonly OutlineLevel[]): {
  readonly kept: readonly OutlineLevel[];
  readonly contradictions: readonly string[];
} {
  const kept: OutlineLevel[] = [];
  const contradictions: string[] = [];
  for (const level of levels) {
    while (kept.length > 0 && kept.at(-1)!.heightMm >= level.heightMm && kept.at(-1)!.isHeightEstimated) {
      if (level.isHeightEstimated) break;
      kept.pop();
    }
    const below = kept.at(-1);
    if (!below || below.heightMm < level.heightMm) kept.push(level);
    else if (!level.isHeightEstimated) {
      contradictions.push(
        `By the lengths of this figure “${level.name}” would not lie above “${below.name}”: one of its lengths is wrong. Check them.`,
      );
    }
  }
  return { kept, contradictions };
}
