import type { Chart } from "../chart/chart.ts";
import type { GarmentTolerances, ToleranceTable } from "../chart/tolerances.ts";
import { InputError } from "../measures/inputError.ts";
import { zones } from "../measures/measure.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { ComparedColumn, ZoneChoice } from "./comparedColumns.ts";
import { columnsNamed, comparedColumns } from "./comparedColumns.ts";

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
      ? `, or one of the classes of garments in the tolerances: ${classes.join(", ")}`
      : ". The tolerances have no column for a class of garments";
  return `${quote(part)} is not known here. Write ${zoneChoices.join(", ")}${ofGarments}.${didYouMean(part, [...zoneChoices, ...classes])}`;
}
