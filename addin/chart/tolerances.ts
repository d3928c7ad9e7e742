import { findMeasure, measures } from "../measures/dictionary.ts";
import { readHeading } from "../measures/heading.ts";
import { InputError } from "../measures/inputError.ts";
import type { Tolerance } from "../measures/measure.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { parseReading } from "../measures/parseReading.ts";
import { cutShort, quote, someOf } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import { toMm } from "../measures/units.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank, isCellError, isEmpty } from "./cell.ts";
import type { Chart, MeasureColumn } from "./chart.ts";
import { findMeasureColumn } from "./find.ts";
import { isPercentFormat, toPercent } from "./numberFormat.ts";
import { unitOfFraction } from "./unitsOfColumns.ts";

/** Tolerances by the key of the column. */
export type ToleranceTable = ReadonlyMap<string, Tolerance>;

/** Below this a plain number may as well be a percentage that arrives as a share: 3 % as 0.03. */
const leastPlainNumber = 0.1;

/**
 * A range with the headings Measure and Tolerance → tolerances for the columns of a chart. Further columns are left
 * alone, see `readGarmentTolerances`. A tolerance is a number in the unit of the measure’s column (or of its own heading, `Tolerance (mm)`), a length
 * with a unit (`2 mm`), a percentage of the reading (`3%`), or both (`2 mm or 3%`: the larger counts). A blank one leaves
 * the dictionary’s starting value. Measures that this chart does not have are passed over.
 *
 * Hosts may hand over `3%` as 0.03 without saying so: a plain number below 0.1 is refused unless a format tells what
 * it is, or it is a whole number of 1/64 in a column of inches.
 *
 * @param formats the number format of every cell, in the shape of the cells
 * @throws {InputError} naming the row: unknown measure, a measure twice, a tolerance that is 0, negative or unreadable
 */
export function readTolerances(
  cells: Cells,
  chart: Chart,
  formats?: readonly (readonly string[])[],
): ToleranceTable {
  const { measureAt, toleranceAt } = readHeadings(cells[0] ?? []);
  return readColumn({ cells, chart, measureAt, at: toleranceAt, formats, isEmpty: isBlank });
}

/** The tolerances of one class of garments. */
export interface GarmentTolerances {
  /** The heading of its column. */
  readonly garment: string;
  /** Only the measures that matter to it. */
  readonly tolerances: ToleranceTable;
}

/** Headings of columns that are for the reader only. */
const remarks = ["note", "notes", "remark", "remarks", "comment", "comments", "unit"];

/**
 * The other columns of a range that `readTolerances` reads, one for each class of garments, under the name of the class: how
 * far each measure may differ for garments of that class to be shared. A measure whose cell is empty or 0 does not matter
 * to that class. Cells as for the column Tolerance. Columns without a heading, of remarks, or without a single
 * tolerance are left alone.
 *
 * @throws {InputError} as `readTolerances`, or when two columns have one heading
 */
export function readGarmentTolerances(
  cells: Cells,
  chart: Chart,
  formats?: readonly (readonly string[])[],
): readonly GarmentTolerances[] {
  const headings = cells[0] ?? [];
  const { measureAt, toleranceAt } = readHeadings(headings);
  const garments: GarmentTolerances[] = [];
  headings.forEach((heading, at) => {
    const garment = readHeading(cellText(heading), "mm").name;
    if (at === measureAt || at === toleranceAt || garment === "") return;
    if (remarks.includes(garment.toLowerCase()) || !cells.slice(1).some((row) => isTolerance(row[at])))
      return;
    if (garments.some((other) => other.garment.toLowerCase() === garment.toLowerCase())) {
      throw new InputError(`The tolerances have two columns ${quote(garment)}. Keep one of them.`);
    }
    const tolerances = readColumn({ cells, chart, measureAt, at, formats, isEmpty });
    garments.push({ garment, tolerances });
  });
  return garments;
}

/** True for a cell that is meant as a tolerance: a number, or text that begins as one. */
function isTolerance(cell: Cell): boolean {
  if (typeof cell === "number") return cell !== 0;
  return typeof cell === "string" && /^\s*(±|\+\/-)?\s*[\d.,]*\d/u.test(cell);
}

function readColumn(options: {
  readonly cells: Cells;
  readonly chart: Chart;
  readonly measureAt: number;
  readonly at: number;
  readonly formats: readonly (readonly string[])[] | undefined;
  readonly isEmpty: (cell: Cell) => boolean;
}): ToleranceTable {
  const { cells, chart, measureAt, at, formats, isEmpty } = options;
  const heading = readHeading(cellText(cells[0]?.[at]), "mm");
  const unit = heading.unitStated ? heading.unit : undefined;
  const table = new Map<string, Tolerance>();
  const rowOf = new Map<string, number>();
  for (let row = 1; row < cells.length; row++) {
    const name = cellText(cells[row]?.[measureAt]);
    const cell = cells[row]?.[at];
    if (isEmpty(cell) && (name === "" || name === "0")) continue;
    const column = columnNamed(name, chart, row);
    if (!column) continue;
    const before = rowOf.get(column.key);
    if (before !== undefined) {
      throw new InputError(
        `${quote(name)} is in row ${String(before + 1)} and in row ${String(row + 1)} of the tolerances. Keep one of them.`,
      );
    }
    rowOf.set(column.key, row);
    if (isEmpty(cell)) continue;
    const place = {
      name,
      row,
      unit: unit ?? column.unit,
      isStated: heading.unitStated,
      format: formats?.[row]?.[at],
    };
    table.set(column.key, readTolerance(cell, place));
  }
  return table;
}

/** The tolerance of a column: from the table, else the dictionary’s starting value; undefined when neither has one. */
export function toleranceOf(column: MeasureColumn, table?: ToleranceTable): Tolerance | undefined {
  return table?.get(column.key) ?? column.measure?.tolerance;
}

function readHeadings(headings: readonly Cell[]): {
  measureAt: number;
  toleranceAt: number;
} {
  const read = headings.map((cell) => readHeading(cellText(cell), "mm"));
  const find = (...names: string[]): number =>
    read.findIndex(({ name }) => names.includes(name.toLowerCase().replace(/[.:]$/, "")));
  const measureAt = find("measure", "measures", "measurement");
  const toleranceAt = find("tolerance", "tolerances", "tol");
  if (measureAt < 0 || toleranceAt < 0) {
    const found = read.filter(({ name }) => name !== "").map(({ name }) => quote(name));
    throw new InputError(
      `The tolerances need the headings Measure and Tolerance in their first row; found ${someOf(found) || "none"}.`,
    );
  }
  return { measureAt, toleranceAt };
}

function columnNamed(name: string, chart: Chart, row: number): MeasureColumn | undefined {
  if (name === "" || name === "0")
    throw new InputError(
      `Row ${String(row + 1)} of the tolerances has a tolerance but no measure. Name the measure.`,
    );
  const column = findMeasureColumn(chart, name);
  if (column || findMeasure(readHeading(name, "mm").name)) return column;
  const names = [...chart.measures.map(({ heading }) => heading), ...measures.map((measure) => measure.name)];
  throw new InputError(
    `Row ${String(row + 1)} of the tolerances names ${quote(name)}, which is neither in the chart nor in the dictionary.${didYouMean(name, names)}`,
    "absent",
  );
}

interface Place {
  readonly name: string;
  readonly row: number;
  readonly unit: LengthUnit;
  /** True where the heading of the tolerances states the unit. */
  readonly isStated: boolean;
  readonly format: string | undefined;
}

function readTolerance(cell: Cell, place: Place): Tolerance {
  if (isCellError(cell))
    throw refusal(cellText(cell), place, "is an error. Mend its formula or type the tolerance");
  if (typeof cell === "number") return numberTolerance(cell, place);
  const parts = cellText(cell).split(/\s+or\s+/i);
  const read = parts.map((part) => textTolerance(part, place));
  const floors = read.filter(({ floorMm }) => floorMm > 0);
  const percents = read.filter(({ percent }) => percent > 0);
  if (floors.length > 1 || percents.length > 1) {
    throw refusal(
      cellText(cell),
      place,
      "gives two of a kind. Give one length, one percentage, or one of each",
    );
  }
  return { floorMm: floors[0]?.floorMm ?? 0, percent: percents[0]?.percent ?? 0 };
}

function numberTolerance(value: number, place: Place): Tolerance {
  if (!(value > 0))
    throw refusal(
      String(value),
      place,
      "is not above 0. Leave it empty for the usual tolerance, or remove the row",
    );
  const percent = toPercent(value);
  if (place.format !== undefined && isPercentFormat(place.format))
    return percentTolerance(percent, `${String(percent)}%`, place);
  const isTapeFraction = place.unit === "in" && Number.isInteger(value * 64);
  if (place.format === undefined && value < leastPlainNumber && !isTapeFraction) {
    throw refusal(
      String(value),
      place,
      `can be ${String(percent)}% or ${String(value)} ${place.unit}. Type “${String(percent)}%” or “${String(value)} ${place.unit}” as text`,
    );
  }
  return { floorMm: toMm(value, place.unit), percent: 0 };
}

function textTolerance(text: string, place: Place): Tolerance {
  const percent = /^\+?\s*(.*\S)\s*[%％]$/u.exec(text);
  const amount = parseReading(percent?.[1] ?? text.replace(/^\s*(±|\+\/-)\s*/u, ""), {
    unit: percent ? "none" : place.unit,
    ...(place.isStated || percent ? {} : { fractionUnit: unitOfFraction }),
  });
  if (amount.kind !== "length") {
    throw refusal(text, place, "is neither a length nor a percentage. Write a number, 2 mm or 3%");
  }
  if (amount.mm === 0)
    throw refusal(text, place, "is not above 0. Leave it empty for the usual tolerance, or remove the row");
  return percent ? percentTolerance(amount.mm, text, place) : { floorMm: amount.mm, percent: 0 };
}

function percentTolerance(percent: number, text: string, place: Place): Tolerance {
  if (percent >= 100) throw refusal(text, place, "is 100 % or more. Check the percentage");
  return { floorMm: 0, percent };
}

function refusal(text: string, { name, row }: Place, what: string): InputError {
  return new InputError(
    `Row ${String(row + 1)} of the tolerances, ${cutShort(name)}: ${quote(text)} ${what}.`,
  );
}
