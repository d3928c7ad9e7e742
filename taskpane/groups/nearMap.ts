import { median } from "simple-statistics";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { FigureMap } from "../../addin/similarity/map/figureMap.ts";
import { figureMap } from "../../addin/similarity/map/figureMap.ts";
import { someFigures } from "./someFigures.ts";

/** A map, and the names of the figures that are left out because they lie far off. */
export interface NearMap {
  readonly map: FigureMap;
  readonly far: readonly string[];
}

/** So many times as far from the middle as the middle figure is far off: a starting value of the project. */
const farAway = 6;
/** Fewer figures are all shown. */
const fewest = 5;

/**
 * The map of a chart, without the figures that lie so far off that all others would fall on one spot: a reading in the wrong
 * unit is enough for that. Each time one is left out the rest is mapped anew.
 *
 * @param withoutFar false for the map of all figures
 */
export function nearMap(chart: Chart, columns: readonly ComparedColumn[], withoutFar: boolean): NearMap {
  let map = mapOf(chart, columns, [...chart.figures.keys()]);
  const empty = new Set(map.leftOut);
  for (;;) {
    const near = withoutFar ? nearPoints(map) : map.points;
    if (near.length === map.points.length || near.length < fewest) break;
    map = mapOf(
      chart,
      columns,
      near.map(({ place }) => place),
    );
  }
  const shown = new Set(map.points.map(({ place }) => place));
  return { map, far: chart.figures.filter((name, place) => !shown.has(place) && !empty.has(name)) };
}

/** The map of some figures, with their places in the whole chart. */
function mapOf(chart: Chart, columns: readonly ComparedColumn[], places: readonly number[]): FigureMap {
  const part = someFigures(chart, columns, places);
  const map = figureMap(part.chart, part.columns);
  return { ...map, points: map.points.map((point) => ({ ...point, place: places[point.place] ?? 0 })) };
}

function nearPoints({ points }: FigureMap): FigureMap["points"] {
  if (points.length === 0) return points;
  const middle = { x: median(points.map(({ x }) => x)), y: median(points.map(({ y }) => y)) };
  const distance = ({ x, y }: { readonly x: number; readonly y: number }): number =>
    Math.hypot(x - middle.x, y - middle.y);
  const usual = median(points.map(distance));
  return usual === 0 ? points : points.filter((point) => distance(point) <= farAway * usual);
}
