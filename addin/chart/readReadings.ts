import { serialToDay } from "../measures/dateFractions.ts";
import { readHeading } from "../measures/heading.ts";
import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank } from "./cell.ts";
import type { Chart, MeasureColumn } from "./chart.ts";
import { figureIndex, figureKey, measureColumn } from "./find.ts";
import { readCell } from "./readCell.ts";
import type { TableColumn, TableOptions } from "./tableRows.ts";
import { columnNamed, neededColumn, tableColumns, tableRows } from "./tableRows.ts";
import { unitOfFraction } from "./unitsOfColumns.ts";

/** One reading of one measure of one figure, as it came off the tape. */
export interface TakenReading {
  /** Row within the table, from 0 (row 0 is the headings). */
  readonly row: number;
  /** Where the figure stands in the chart, from 0: at its first row. */
  readonly figure: number;
  readonly column: MeasureColumn;
  readonly mm: number;
  /** As 2026-03-01, or as it is written; "" where it is not said. */
  readonly date: string;
  readonly by: string;
  readonly tool: string;
}

/** A row that counts for nothing, and why. */
export interface ReadingProblem {
  readonly row: number;
  readonly message: string;
}

export interface TakenReadings {
  /** In the order of the rows. */
  readonly readings: readonly TakenReading[];
  readonly problems: readonly ReadingProblem[];
}

/** The headings of the table, as it is written. Reading states its unit: “Reading (mm)”. */
export const readingsHeadings = ["Figure", "Measure", "Reading", "Date", "By", "Tool"] as const;

/**
 * The table Readings: one row for every time that a tape was laid on. A row rather than columns for a first, second and third
 * reading, since each has a day, a hand and a tool of its own, since nobody knows beforehand how often a measure will be taken,
 * and since what is worked out of it – means, medians, deviations within a figure – takes any number of readings in any order.
 *
 * Figures and measures are those of the chart, under any of their names. A number is in the unit that the name of the measure
 * states, else the heading Reading, else in that of the measure’s column. Rows that cannot be used are told in `problems`; a blank reading is
 * none. Estimates and lengths from a list are no readings.
 *
 * @throws {InputError} when the headings Figure, Measure or Reading are not there
 */
export function readReadings(cells: Cells, chart: Chart, options: TableOptions = {}): TakenReadings {
  const places = readingsColumns(cells);
  const figures = new Map([...chart.figures.entries()].reverse().map(([at, name]) => [figureKey(name), at]));
  const named = new Map<string, MeasureColumn>();
  const readings: TakenReading[] = [];
  const problems: ReadingProblem[] = [];
  for (const { row, cells: line, formats } of tableRows(cells, "readings", options)) {
    const at = (place: TableColumn | undefined): Cell => (place ? line[place.position] : undefined);
    const refuse = (message: string): void => {
      problems.push({ row, message: `Row ${String(row + 1)} of the readings: ${message}` });
    };
    const name = cellText(at(places.figure));
    const measure = cellText(at(places.measure));
    if (isBlank(at(places.reading)) || (options.zeroIsEmpty && at(places.reading) === 0)) continue;
    let figure: number;
    let of: MeasureColumn;
    try {
      figure = figures.get(figureKey(name)) ?? figureIndex(chart, name);
      of = named.get(measure) ?? measureColumn(chart, measure);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refuse(error.message);
      continue;
    }
    named.set(measure, of);
    const { unit, isStated } = unitOf(measure, places.reading, of.unit);
    const reading = readCell(at(places.reading), unit, {
      format: formats?.[places.reading.position],
      ...(isStated ? {} : { fractionUnit: unitOfFraction }),
    });
    if (reading.kind === "missing") continue;
    if (reading.kind === "refused") refuse(reading.reason);
    else if (reading.origin) refuse(`${quote(cellText(at(places.reading)))} was not read off a tape.`);
    else if (!(reading.mm > 0) && of.key !== "heelHeight") refuse("a reading of 0 is none. Empty the cell.");
    else
      readings.push({
        ...{ row, figure, column: of, mm: reading.mm },
        date: dayText(at(places.date)),
        by: cellText(at(places.by)),
        tool: cellText(at(places.tool)),
      });
  }
  return { readings, problems };
}

/** Where the columns of the table stand. @throws {InputError} when one that is needed is not there */
export function readingsColumns(cells: Cells) {
  const columns = tableColumns(cells);
  const needed = (...names: readonly string[]): TableColumn => neededColumn(columns, names, "readings");
  return {
    figure: needed("Figure", "Figures", "Name"),
    measure: needed("Measure", "Measurement"),
    reading: needed("Reading", "Readings", "Length"),
    date: columnNamed(columns, ["Date", "Day"]),
    by: columnNamed(columns, ["By", "Taken by", "Who", "Person"]),
    tool: columnNamed(columns, ["Tool", "Tape"]),
  };
}

function unitOf(
  measure: string,
  { heading }: TableColumn,
  ofColumn: LengthUnit,
): { readonly unit: LengthUnit; readonly isStated: boolean } {
  const named = readHeading(measure, ofColumn);
  if (named.unitStated) return { unit: named.unit, isStated: true };
  return heading.unitStated ? { unit: heading.unit, isStated: true } : { unit: ofColumn, isStated: false };
}

/** A day that a spreadsheet keeps as a number is written out. */
function dayText(cell: Cell): string {
  const day = typeof cell === "number" ? serialToDay(cell) : undefined;
  if (!day) return cellText(cell);
  return [day.year ?? "", day.month, day.day].map((part) => String(part).padStart(2, "0")).join("-");
}
