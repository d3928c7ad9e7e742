import type { Chart, MeasureColumn } from "../../chart/chart.ts";
import { usualShareOfHeight } from "../../measures/usualShareOfHeight.ts";
import { measureById } from "../../measures/dictionary.ts";
import { bodyOutline } from "../../similarity/outline/bodyOutline.ts";
import { outlinePath } from "../../similarity/outline/outlinePath.ts";

/** The girth that is taken at each level of the outline, from the head down. */
const girthAt: Readonly<Record<string, string>> = {
  Head: "headGirth",
  Neck: "neckGirth",
  "Upper bust": "upperBustGirth",
  Bust: "bustGirth",
  "Under-bust": "underBustGirth",
  Waist: "waistGirth",
  "High hip": "highHipGirth",
  Hip: "hipGirth",
  "Top of the leg": "thighGirth",
  "Mid-thigh": "midThighGirth",
  Knee: "kneeGirth",
  Calf: "calfGirth",
  Ankle: "ankleGirth",
};

/** A drawing of where girths are taken; paths as in SVG, y down, within `width` and `height`. */
export interface WhereTaken {
  readonly width: number;
  readonly height: number;
  readonly body: string;
  /** From the head down: the tape in front, the line to its label, and where the label begins, on its baseline. */
  readonly tapes: readonly {
    readonly term: string;
    readonly tape: string;
    readonly lead: string;
    readonly x: number;
    readonly y: number;
  }[];
}

const height = 400;
const width = 360;
const middle = 96;
const labelsFrom = 200;
const leastBetweenLabels = 17;

/**
 * Where girths are taken, on a body of usual proportions: nobody’s readings are in it.
 *
 * @param terms the terms of the measures to show, by id
 * @returns undefined when none of them is a girth that the drawing has a place for
 */
export function whereTaken(terms: ReadonlyMap<string, string>): WhereTaken | undefined {
  const outline = bodyOutline(usualBody(), 0);
  const scale = (height - 20) / 1000;
  const x = (mm: number): number => middle + mm * scale;
  const y = (mm: number): number => height - 10 - mm * scale;
  const levels = outline.levels
    .flatMap((level) => {
      const term = terms.get(girthAt[level.name] ?? "");
      return term === undefined ? [] : [{ ...level, term }];
    })
    .reverse();
  if (levels.length === 0) return undefined;
  let above = -leastBetweenLabels;
  const tapes = levels.map(({ heightMm, halfWidthMm, innerMm, term }) => {
    const at = y(heightMm);
    const label = Math.max(at, above + leastBetweenLabels);
    above = label;
    const [from, to] = [x(innerMm), x(halfWidthMm)];
    const left = innerMm > 0 ? from : x(-halfWidthMm);
    // The front of a level tape, seen a little from above.
    const sag = (to - left) * 0.09;
    return {
      ...{ term, x: labelsFrom, y: label + 4.5 },
      tape: `M${n(left)} ${n(at)}Q${n((left + to) / 2)} ${n(at + 2 * sag)} ${n(to)} ${n(at)}`,
      lead: `M${n(to + 4)} ${n(at)}L${n(labelsFrom - 24)} ${n(label)}H${n(labelsFrom - 6)}`,
    };
  });
  return { width, height, body: outlinePath(outline, x, y), tapes };
}

function n(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** A chart of one figure with the usual proportions, 1,000 mm tall. */
function usualBody(): Chart {
  return {
    figures: [""],
    rows: [1],
    measures: Object.entries(usualShareOfHeight).map(([key, share], position): MeasureColumn => {
      const measure = measureById(key);
      return {
        key,
        heading: key,
        ...(measure && { measure }),
        kind: measure?.kind,
        zone: measure?.zone,
        unit: "mm",
        mm: Float64Array.of(1000 * share),
        position: position + 1,
      };
    }),
    attributes: [],
    problems: [],
  };
}
