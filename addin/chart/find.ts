import { findMeasure } from "../measures/dictionary.ts";
import { readHeading } from "../measures/heading.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { Chart, MeasureColumn } from "./chart.ts";

/**
 * The place of a figure in the chart, from 0: by its name as written, else by any case and spacing. A figure that is in
 * the chart twice is found at its first row.
 *
 * @throws {InputError} “absent” when the chart has no such figure, with near names; “value” when the name is blank
 */
export function figureIndex(chart: Chart, name: string): number {
  if (name.trim() === "") throw new InputError("Name a figure of the chart; the name is blank.");
  const exact = chart.figures.indexOf(name);
  const index =
    exact >= 0 ? exact : chart.figures.findIndex((figure) => figureKey(figure) === figureKey(name));
  if (index < 0) {
    throw new InputError(
      `The chart has no figure ${quote(name)}.${didYouMean(name, chart.figures)}`,
      "absent",
    );
  }
  return index;
}

/**
 * The column of a measure: by its heading, else by any name that means the same measure, with or without a unit.
 *
 * @throws {InputError} “absent” when the chart has no such column, with near names; “value” when the name is blank or the unit of the
 * column is not known
 */
export function measureColumn(chart: Chart, name: string): MeasureColumn {
  if (name.trim() === "") throw new InputError("Name a measure of the chart; the name is blank.");
  const column = findMeasureColumn(chart, name);
  if (column) return withKnownUnit(chart, column);
  const known = findMeasure(name);
  const what = known ? `${quote(name)} (${known.name})` : quote(name);
  const headings = chart.measures.map(({ heading }) => heading);
  throw new InputError(`The chart has no column for ${what}.${didYouMean(name, headings)}`, "absent");
}

function withKnownUnit({ problems }: Chart, column: MeasureColumn): MeasureColumn {
  const asked = problems.find(
    ({ kind, unstated }) => kind === "unit not known" && unstated?.columns.includes(column.position),
  );
  if (asked) throw new InputError(asked.message);
  return column;
}

/** As {@link measureColumn}, but undefined when the chart has no such column. */
export function findMeasureColumn(chart: Chart, name: string): MeasureColumn | undefined {
  const heading = readHeading(name, "mm");
  const keys = [headingKey(name), headingKey(heading.name)];
  return (
    chart.measures.find((column) => column.heading === name.trim()) ??
    chart.measures.find((column) => keys.includes(headingKey(column.heading))) ??
    chart.measures.find((column) => column.key === (heading.measure?.id ?? keys[1]))
  );
}

/** The form in which figure names are compared. */
export function figureKey(name: string): string {
  return name.normalize("NFKC").replace(/\s+/gu, " ").trim().toLowerCase();
}
