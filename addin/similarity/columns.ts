import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { GarmentTolerances, ToleranceTable } from "../chart/tolerances.ts";
import { toleranceOf } from "../chart/tolerances.ts";
import { InputError } from "../measures/inputError.ts";
import type { Tolerance, Zone } from "../measures/measure.ts";
import { zones } from "../measures/measure.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote, someOf } from "../measures/quote.ts";

/** `body` is torso, arms and legs together; `all` is every measure of the chart, height included. */
export type ZoneChoice = "body" | Zone | "all";

/** A measure that takes part in the comparison of figures. */
export interface ComparedColumn {
  readonly column: MeasureColumn;
  readonly tolerance: Tolerance;
  /** True when two figures cannot be compared without it. */
  readonly required: boolean;
}

/**
 * For a measure that the dictionary does not know and no tolerance is given for: 2 mm, or 2 % where that is more.
 * The project’s own starting value.
 */
export const toleranceOfUnknownMeasure: Tolerance = { floorMm: 2, percent: 2 };

/**
 * Dictionary ids without which nobody can say that two figures share a body. Common practice: bust, waist and hip
 * are the first three measures of any chart.
 */
export const requiredMeasures: readonly string[] = ["bustGirth", "waistGirth", "hipGirth"];

/**
 * The measures by which figures are compared.
 *
 * - `torso`, `arms`, `legs`: the measures of that part that decide whether a fitted garment can be shared;
 *   height is kept apart. `body`: those three together.
 * - `head`, `hands`, `feet`: every measure of that part.
 * - `all`: every measure of the chart.
 *
 * A measure that the dictionary does not know takes part in `all`, and in any zone when the tolerances name it.
 * Estimates are left out, see {@link countingEstimates}. A column without a single reading is left out, so that an empty column
 * does not count as not compared.
 *
 * @param options.tolerances the user’s own; the usual tolerance of each measure stands in where it names none
 * @param options.zone `body` when omitted
 * @throws {InputError} when the chart has no measure for that zone
 */
export function comparedColumns(
  chart: Chart,
  options: { readonly tolerances?: ToleranceTable | undefined; readonly zone?: ZoneChoice | undefined } = {},
): readonly ComparedColumn[] {
  const { tolerances, zone = "body" } = options;
  const columns = columnsOfZone(chart, zone, tolerances);
  if (columns.length > 0) return columns;
  const empty = chart.measures.filter((column) => takesPart(column, zone, tolerances));
  throw new InputError(empty.length > 0 ? nothingRead(empty) : nothingToCompare(chart, zone));
}

/** The same, and none for a zone without a measure. */
export function columnsOfZone(
  chart: Chart,
  zone: ZoneChoice,
  tolerances?: ToleranceTable,
): readonly ComparedColumn[] {
  return chart.measures
    .filter((column) => takesPart(column, zone, tolerances))
    .map(withoutEstimates)
    .filter(hasReadings)
    .map((column) => compareBy(column, usableTolerance(column, tolerances)));
}

/** Every measure of the chart that the tolerances name, and no other; none where they name none of them. */
export function columnsNamed(chart: Chart, tolerances: ToleranceTable): readonly ComparedColumn[] {
  return chart.measures
    .map(withoutEstimates)
    .filter(hasReadings)
    .flatMap((column) => {
      const tolerance = tolerances.get(column.key);
      return tolerance ? [compareBy(column, tolerance)] : [];
    });
}

/** An estimate is no reading, and says nothing about who shares a body. */
function withoutEstimates(column: MeasureColumn): MeasureColumn {
  const { origins, mm } = column;
  if (!origins) return column;
  return {
    ...column,
    mm: mm.map((length, figure) => (origins.get(figure) === "estimated" ? Number.NaN : length)),
  };
}

/** The chart with its estimates counted as if they were readings, for those who ask for it. */
export function countingEstimates(chart: Chart): Chart {
  return { ...chart, measures: chart.measures.map((column) => ({ ...column, origins: new Map() })) };
}

function hasReadings(column: MeasureColumn): boolean {
  return column.mm.some((mm) => !Number.isNaN(mm));
}

function compareBy(column: MeasureColumn, tolerance: Tolerance): ComparedColumn {
  return { column, tolerance, required: requiredMeasures.includes(column.key) };
}

function takesPart(column: MeasureColumn, zone: ZoneChoice, tolerances?: ToleranceTable): boolean {
  if (zone === "all") return true;
  if (!column.measure) return tolerances?.has(column.key) ?? false;
  switch (zone) {
    case "body":
      return isOfBody(column.zone) && decidesFit(column);
    case "torso":
    case "arms":
    case "legs":
      return column.zone === zone && decidesFit(column);
    default:
      return column.zone === zone;
  }
}

function isOfBody(zone: Zone | undefined): boolean {
  return zone === "torso" || zone === "arms" || zone === "legs";
}

function decidesFit(column: MeasureColumn): boolean {
  return column.kind !== "height" && (column.measure?.governs ?? true);
}

function usableTolerance(column: MeasureColumn, tolerances?: ToleranceTable): Tolerance {
  const tolerance = toleranceOf(column, tolerances) ?? toleranceOfUnknownMeasure;
  if (Math.max(tolerance.floorMm, tolerance.percent) > 0) return tolerance;
  throw new InputError(
    `The tolerance of ${quote(column.heading)} is 0, so that no two figures could ever count as the same. Write a tolerance above 0.`,
  );
}

function nothingRead(columns: readonly MeasureColumn[]): string {
  const headings = someOf(columns.map((column) => quote(column.heading)));
  return `No figure of the chart has a reading of ${headings}, so that there is nothing to compare. Take them first, or choose another part of the body.`;
}

function nothingToCompare(chart: Chart, zone: ZoneChoice): string {
  const found = someOf(
    chart.measures.map((column) => quote(column.heading)),
    50,
  );
  const wanted: Record<ZoneChoice, string> = {
    all: "readings of any measure",
    body: "readings that decide the fit on torso, arms or legs",
    torso: "readings that decide the fit on the torso",
    arms: "readings that decide the fit on the arms",
    legs: "readings that decide the fit on the legs",
    head: "readings of the head",
    hands: "readings of the hands",
    feet: "readings of the feet",
  };
  const measures = found ? ` Its measures are ${found}.` : "";
  return `The chart has no ${wanted[zone]}.${measures} Add a measure, or choose another part of the body.`;
}

/** The parts of a figure that can be compared. */
export const zoneChoices: readonly ZoneChoice[] = ["body", ...zones, "all"];

/** Tolerances for the body, and those for single classes of garments. */
export interface GivenTolerances {
  readonly tolerances?: ToleranceTable | undefined;
  readonly garments?: readonly GarmentTolerances[] | undefined;
}

/**
 * The measures by which figures are compared for a part of the body, or for a class of garments that has tolerances of
 * its own. A name that is both is the part of the body.
 *
 * @param part a zone, or the heading of a class of garments; any case
 * @throws {InputError} when the name is neither, or the chart has none of its measures
 * @example columnsOfPart(chart, "Loose clothes", { garments: readGarmentTolerances(cells, chart) })
 */
export function columnsOfPart(
  chart: Chart,
  part: string,
  { tolerances, garments = [] }: GivenTolerances = {},
): readonly ComparedColumn[] {
  const wanted = part.trim().toLowerCase();
  const zone = zoneChoices.find((each) => each === wanted);
  if (zone) return comparedColumns(chart, { tolerances, zone });
  const garment = garments.find((each) => each.garment.toLowerCase() === wanted);
  if (!garment) throw new InputError(unknownPart(part, garments));
  const columns = columnsNamed(chart, garment.tolerances);
  if (columns.length > 0) return columns;
  throw new InputError(
    `The chart has readings of none of the measures that ${quote(garment.garment)} has a tolerance for. Add one, or name another part.`,
  );
}

function unknownPart(part: string, garments: readonly GarmentTolerances[]): string {
  const classes = garments.map(({ garment }) => garment);
  const ofGarments =
    classes.length > 0
      ? `, or a class of the tolerances: ${someOf(classes.map(quote), 30)}`
      : ". The tolerances have no column for a class of garments";
  const near = didYouMean(part, [...zoneChoices, ...classes]);
  return `${quote(part)} is not known here.${near || ` Write ${zoneChoices.join(", ")}${ofGarments}.`}`;
}
