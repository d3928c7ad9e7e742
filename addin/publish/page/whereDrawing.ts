import type { Chart } from "../../chart/chart.ts";
import { usualShareOfHeight } from "../../measures/usualShareOfHeight.ts";
import { measureById } from "../../measures/dictionary.ts";
import { bodyOutline } from "../../similarity/outline/bodyOutline.ts";
import { outlinePath } from "../../similarity/outline/outlinePath.ts";
import type { Html } from "./html.ts";
import { asIs, markup } from "./html.ts";

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
export function whereDrawing(terms: ReadonlyMap<string, string>, title: string): Html | undefined {
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
    // The front of a level tape, seen a little from above.
    const left = innerMm > 0 ? from : x(-halfWidthMm);
    const sag = (to - left) * 0.09;
    return markup`<path
        class="tape"
        d="${`M${n(left)} ${n(at)}Q${n((left + to) / 2)} ${n(at + 2 * sag)} ${n(to)} ${n(at)}`}"
      /><path
        class="lead"
        fill="none"
        d="${`M${n(to + 4)} ${n(at)}L${n(labelsFrom - 24)} ${n(label)}H${n(labelsFrom - 6)}`}"
      /><text x="${n(labelsFrom)}" y="${n(label + 4.5)}">${term}</text>`;
  });
  return markup`<figure class="drawing">
    <svg
      viewBox="${`0 0 ${String(width)} ${String(height)}`}"
      role="img"
      aria-label="${`${title}: ${levels.map(({ term }) => term).join(", ")}`}"
    >
      <path class="body" d="${asIs(outlinePath(outline, x, y))}" />
      ${tapes}
    </svg>
  </figure>`;
}

function n(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** A chart of one figure with the usual proportions, 1,000 mm tall. */
function usualBody(): Chart {
  return {
    figures: [""],
    rows: [1],
    measures: Object.entries(usualShareOfHeight).map(([key, share], position) => {
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
