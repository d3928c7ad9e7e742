import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { cellText } from "../../addin/chart/cell.ts";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import { readTolerances, toleranceOf } from "../../addin/chart/tolerances.ts";
import { fromMm } from "../../addin/measures/units.ts";
import { findMeasureColumn } from "../../addin/chart/find.ts";
import type { Tolerance, Zone } from "../../addin/measures/measure.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { toleranceOfUnknownMeasure } from "../../addin/similarity/columns.ts";
import type { Edit, RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { StarterTable, TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";
import { usualTolerances } from "./readGroups.ts";

interface GarmentsToBegin {
  readonly heading: string;
  /** How many times the tolerance of the body they may use. */
  readonly times: number;
  /** Where they are worn: a measure of another part does not matter to them. */
  readonly zones: readonly Zone[];
  /** Ids of measures that they hang past. */
  readonly hangsPast: readonly string[];
}

/** Classes of garments to begin with: the project’s own values. Clothes do not need the same head, nor the same legs. */
const classes: readonly GarmentsToBegin[] = [
  { heading: "Fitted clothes", times: 1, zones: ["torso", "arms"], hangsPast: [] },
  {
    ...{ heading: "Loose clothes", times: 4, zones: ["torso", "arms"] },
    hangsPast: ["underBustGirth", "waistGirth", "highHipGirth"],
  },
];

/** A class’s tolerance of a measure; undefined where the measure does not matter to it. */
function textFor(
  { zones, times, hangsPast }: GarmentsToBegin,
  column: MeasureColumn,
  tolerance: Tolerance,
): string | undefined {
  const counts =
    column.kind !== "height" &&
    column.zone !== undefined &&
    zones.includes(column.zone) &&
    !hangsPast.includes(column.key);
  return counts ? toleranceText(tolerance, times, column.unit) : undefined;
}

/** The usual tolerances of all measures of a chart as a table to be changed, with two classes of garments. */
export function tolerancesStarter(chart: Chart, taken: TakenNames): StarterTable {
  const rows = chart.measures.map((column): readonly Cell[] => {
    const tolerance = toleranceOf(column) ?? toleranceOfUnknownMeasure;
    const cells = classes.map((each) => textFor(each, column, tolerance));
    return [column.heading, toleranceText(tolerance, 1, column.unit), ...cells];
  });
  return starterTable("Tolerances", usualTolerances, taken, {
    says: "How far two readings may differ and still count as the same: for the body, then for classes of garments. Empty: the measure does not matter to them.",
    cells: [["Measure", "Tolerance", ...classes.map(({ heading }) => heading)], ...rows],
    widths: [160, 130, 130, 130],
  });
}

/** The edits that add the classes of garments to a table of tolerances that has none. */
export function classColumns(chart: Chart, table: TableInfo, data: RangeData): readonly Edit[] {
  const own = readTolerances(data.values, chart, data.formats);
  return classes.map((each): Edit => ({
    kind: "column",
    table: table.name,
    heading: each.heading,
    values: data.values.slice(1).map((row) => {
      const column = findMeasureColumn(chart, cellText(row[measureAt(data.values)]));
      const tolerance = column && (own.get(column.key) ?? column.measure?.tolerance);
      return column && tolerance ? textFor(each, column, tolerance) : undefined;
    }),
  }));
}

function measureAt(cells: Cells): number {
  return (cells[0] ?? []).findIndex((cell) => /^measure/iu.test(cellText(cell)));
}

/** “3 mm or 2%” */
export function toleranceText({ floorMm, percent }: Tolerance, times: number, unit: LengthUnit): string {
  const tidy = (value: number): string => String(Number(value.toPrecision(12)));
  return [
    ...(floorMm > 0 ? [`${tidy(fromMm(floorMm * times, unit))} ${unit}`] : []),
    ...(percent > 0 ? [`${tidy(percent * times)}%`] : []),
  ].join(" or ");
}
