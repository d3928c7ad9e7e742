import type { Chart, MeasureColumn } from "../../chart/chart.ts";
import { requiredMeasures } from "../../similarity/columns.ts";
import { bodyOutline } from "../../similarity/outline/bodyOutline.ts";
import { outlinePath } from "../../similarity/outline/outlinePath.ts";

/** The outline of a body, in mm: a path as in SVG, y down, the floor at 0, the middle line at x = 0. */
export interface BodyDrawing {
  readonly names: readonly string[];
  readonly path: string;
  readonly halfWidthMm: number;
  readonly heightMm: number;
}

/**
 * Outlines of bodies, to be drawn at one scale. Nothing goes into them but what is published: the means of the readings as they are
 * shown, and usual proportions for all else. A body without height, bust, waist or hip has none.
 *
 * @param bodies of several figures, as places in the columns
 * @param columns as they are shown
 */
export function bodyDrawings(
  bodies: readonly (readonly number[])[],
  columns: readonly MeasureColumn[],
  figures: readonly string[],
): readonly BodyDrawing[] {
  return bodies.flatMap((members) => {
    const chart = meanOf(members, columns);
    const isRead = (key: string): boolean =>
      chart.measures.some((column) => column.key === key && !Number.isNaN(column.mm[0]));
    if (!["height", ...requiredMeasures].every(isRead)) return [];
    const outline = bodyOutline(chart, 0);
    const path = outlinePath(
      outline,
      (mm) => mm,
      (mm) => -mm,
    );
    if (path === "") return [];
    return [
      {
        names: members.map((at) => figures[at] ?? ""),
        path,
        halfWidthMm: Math.max(...outline.levels.map(({ halfWidthMm }) => halfWidthMm)),
        heightMm: Math.max(...outline.levels.map(({ heightMm }) => heightMm)),
      },
    ];
  });
}

/** A chart of one figure that is the mean of several. */
function meanOf(members: readonly number[], columns: readonly MeasureColumn[]): Chart {
  return {
    figures: [""],
    rows: [1],
    measures: columns.map((column) => {
      const read = members.flatMap((at) => (Number.isNaN(column.mm[at]) ? [] : [column.mm[at] ?? 0]));
      const sum = read.reduce((total, mm) => total + mm, 0);
      const mm = Float64Array.of(read.length === 0 ? Number.NaN : sum / read.length);
      return { ...column, mm, origins: new Map() };
    }),
    attributes: [],
    problems: [],
  };
}
