import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { figureIndex, figureKey, measureColumn } from "../chart/find.ts";
import { notes } from "../checking/doubts.ts";
import type { Flag } from "../checking/flag.ts";
import { findMeasure } from "../measures/dictionary.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { Publication } from "./publication.ts";

/** Why a reading is not published as it stands. */
export type Doubt = "doubtful" | "estimated";

/** The measures that buyers ask for first, in the order of a chart; the usual ones of those that a chart has. */
const usualMeasures = [
  "height",
  "headGirth",
  "bustGirth",
  "waistGirth",
  "hipGirth",
  "backWaistLength",
  "armLength",
  "insideLeg",
  "footLength",
];

/**
 * The figures that are published, as places in the chart: those named one by one and with their bodies, as far as they have one
 * of the words of every column that is named.
 *
 * @param groups the number of the body of each figure of the chart
 * @throws {InputError} when a figure is not in the chart, or none is left
 */
export function chosenFigures(
  chart: Chart,
  { figures, bodies, where }: Publication,
  groups: readonly number[],
): readonly number[] {
  const named = new Set(figures.map((name) => figureIndex(chart, name)));
  const grouped = new Set(bodies.map((name) => groups[figureIndex(chart, name)]));
  const isNamed = (figure: number): boolean =>
    figures.length + bodies.length === 0 || named.has(figure) || grouped.has(groups[figure]);
  const columns = [...new Set(where.map(({ heading }) => headingKey(heading)))].map((key) => ({
    values: chart.attributes.find((each) => headingKey(each.heading) === key)?.values,
    words: where.filter(({ heading }) => headingKey(heading) === key).map(({ value }) => figureKey(value)),
  }));
  const applies = (figure: number): boolean =>
    columns.every(({ values, words }) => values && words.includes(figureKey(values[figure] ?? "")));
  const chosen = chart.figures.flatMap((_, at) => (isNamed(at) && applies(at) ? [at] : []));
  if (chosen.length > 0) return chosen;
  const asked = where.map(({ heading, value }) => quote(`${heading} = ${value}`)).join(" or ");
  throw new InputError(
    `No figure is chosen${asked === "" ? "" : `: the chart has none with ${asked}`}. Choose at least one figure to publish.`,
  );
}

/**
 * The measures that are published, in the order that was chosen. The usual ones are those that have a reading to publish.
 *
 * @throws {InputError} when the chart has no such measure, or none that can be shown
 */
export function chosenColumns(chart: Chart, { measures }: Publication): readonly MeasureColumn[] {
  if (measures.length > 0) return [...new Set(measures.map((name) => measureColumn(chart, name)))];
  const hasReadings = ({ mm }: MeasureColumn): boolean => mm.some((length) => !Number.isNaN(length));
  const usual = usualMeasures
    .flatMap((id) => chart.measures.filter(({ key }) => key === id))
    .filter(hasReadings);
  return usual.length > 0 ? usual : chart.measures.slice(0, usualMeasures.length);
}

/** Readings that are doubted or estimated: by the key of the column, then by the place of the figure. */
export type Doubts = ReadonlyMap<string, ReadonlyMap<number, Doubt>>;

/**
 * Which readings are doubted by the check of the chart, or are called estimated by the chart itself: in a column of text
 * headed Estimated, which names measures.
 *
 * @param flags of `checkChart`, without those that the maker has confirmed
 */
export function doubtsOf(chart: Chart, flags: readonly Flag[]): Doubts {
  const doubts = new Map(chart.measures.map(({ key }) => [key, new Map<number, Doubt>()]));
  const doubt = (column: MeasureColumn, figure: number, what: Doubt): void => {
    if (figure >= 0) doubts.get(column.key)?.set(figure, what);
  };
  for (const { heading, values } of chart.attributes) {
    if (!["estimated", "estimate", "estimates"].includes(headingKey(heading))) continue;
    for (const [figure, text] of values.entries()) {
      for (const name of text.split(/[,;\n]/u)) {
        const id = findMeasure(name.trim())?.id;
        const column = chart.measures.find(
          ({ key, heading: own }) => key === id || headingKey(own) === headingKey(name),
        );
        if (column && name.trim() !== "") doubt(column, figure, "estimated");
      }
    }
  }
  for (const column of chart.measures)
    for (const [figure, origin] of column.origins ?? [])
      if (origin === "estimated") doubt(column, figure, "estimated");
  for (const flag of flags) {
    if (notes.has(flag.kind)) continue;
    for (const { row, column: at } of [flag, ...flag.corrections]) {
      const column = chart.measures.find(({ position }) => position === at);
      const figure = chart.rows.indexOf(row);
      if (column && row > 0) doubt(column, figure, "doubtful");
      else if (column)
        chart.figures.forEach((_, each) => {
          doubt(column, each, "doubtful");
        });
      else
        chart.measures.forEach((each) => {
          doubt(each, figure, "doubtful");
        });
    }
  }
  return doubts;
}

/** The chart without the readings that are not published as they stand. */
export function withoutDoubts(chart: Chart, doubts: Doubts, { flagged, estimated }: Publication): Chart {
  const isKept = (doubt: Doubt | undefined): boolean =>
    doubt === undefined || (doubt === "doubtful" ? flagged : estimated);
  return {
    ...chart,
    measures: chart.measures.map((column) => ({
      ...column,
      mm: column.mm.map((mm, figure) => (isKept(doubts.get(column.key)?.get(figure)) ? mm : Number.NaN)),
    })),
  };
}

/** A part of a chart: the figures at some places, in that order. */
export function partOf(chart: Chart, figures: readonly number[]): Chart {
  return {
    figures: figures.map((at) => chart.figures[at] ?? ""),
    rows: figures.map((at) => chart.rows[at] ?? 0),
    measures: chart.measures.map(({ origins, ...column }) => ({
      ...column,
      mm: Float64Array.from(figures, (at) => column.mm[at] ?? Number.NaN),
      ...(origins && { origins: originsAt(origins, figures) }),
    })),
    attributes: chart.attributes.map((column) => ({
      ...column,
      values: figures.map((at) => column.values[at] ?? ""),
    })),
    problems: [],
  };
}

function originsAt<T>(origins: ReadonlyMap<number, T>, figures: readonly number[]): ReadonlyMap<number, T> {
  return new Map(
    figures.flatMap((figure, at) => {
      const origin = origins.get(figure);
      return origin === undefined ? [] : [[at, origin] as const];
    }),
  );
}
