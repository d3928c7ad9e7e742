import type { Chart } from "../chart/chart.ts";
import type { FigureTraits } from "../chart/figureTraits.ts";
import { figureTraits } from "../chart/figureTraits.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Obstacle, ObstacleName } from "./obstacles.ts";
import { obstacleNames, obstacleOf } from "./obstacles.ts";

/** The figures of a chart as the fit of garments needs them: columns of readings and of obstacles, in mm. */
export interface FigureView {
  readonly chart: Chart;
  readonly size: number;
  readonly traits: readonly FigureTraits[];
  /** A column by the id of its measure; NaN throughout where the chart has none. */
  reading(measure: string): Float64Array;
  readonly obstacles: Readonly<Record<ObstacleName, Float64Array>>;
  /** The measure that each of them is taken from. */
  readonly obstacleMeasures: Readonly<Record<ObstacleName, readonly string[]>>;
  /** One obstacle of one figure, with its words. */
  obstacle(name: ObstacleName, figure: number): Obstacle;
  /** The unit that results on a measure go out in. */
  unitOf(measure: string): LengthUnit;
}

export function figureView(chart: Chart): FigureView {
  const size = chart.figures.length;
  const traits = figureTraits(chart);
  const unknown = new Float64Array(size).fill(Number.NaN);
  const columns = new Map(chart.measures.map((column) => [column.key, column]));
  const heels = heelHeights(columns.get("heelHeight")?.mm ?? unknown, traits);
  const reading = (measure: string): Float64Array =>
    measure === "heelHeight" ? heels : (columns.get(measure)?.mm ?? unknown);
  const obstacle = (name: ObstacleName, figure: number): Obstacle =>
    obstacleOf[name]((measure) => reading(measure)[figure] ?? Number.NaN, traits[figure] ?? nothingSaid);
  const columnsOf = (name: ObstacleName): readonly Obstacle[] =>
    Array.from({ length: size }, (_, figure) => obstacle(name, figure));
  const found = obstacleNames.map((name) => [name, columnsOf(name)] as const);
  return {
    chart,
    size,
    traits,
    reading,
    obstacles: Object.fromEntries(
      found.map(([name, each]) => [name, Float64Array.from(each, ({ mm }) => mm)]),
    ) as Record<ObstacleName, Float64Array>,
    obstacleMeasures: Object.fromEntries<readonly string[]>(
      found.map(([name, each]) => [name, each.map(({ measure }) => measure)]),
    ) as Record<ObstacleName, readonly string[]>,
    obstacle,
    unitOf: (measure) => columns.get(measure)?.unit ?? chart.measures[0]?.unit ?? "mm",
  };
}

const nothingSaid: FigureTraits = {
  handsOff: undefined,
  headOff: undefined,
  feetOff: undefined,
  wig: undefined,
  softBody: undefined,
  jointed: undefined,
  heeledFoot: undefined,
};

/** A foot that is said to be flat has a heel height of 0 without being measured. */
function heelHeights(readings: Float64Array, traits: readonly FigureTraits[]): Float64Array {
  return readings.map((mm, figure) => (Number.isNaN(mm) && traits[figure]?.heeledFoot === false ? 0 : mm));
}
