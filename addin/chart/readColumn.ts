import { measures, splitSide } from "../measures/dictionary.ts";
import type { Heading } from "../measures/heading.ts";
import { readHeading } from "../measures/heading.ts";
import { headingKey } from "../measures/headingKey.ts";
import { didYouMean } from "../measures/nearNames.ts";
import type { Reading, Written } from "../measures/parseReading.ts";
import { quote } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank, isCellError, isEmpty } from "./cell.ts";
import type { AttributeColumn, ChartProblem, MeasureColumn } from "./chart.ts";
import { readCell } from "./readCell.ts";
import type { ColumnUnit } from "./unitsOfColumns.ts";
import { unitOfFraction } from "./unitsOfColumns.ts";

export interface ChartOptions {
  /** The unit of columns whose heading states none, where it is known; when left out it is decided, see {@link unitsOfColumns}. */
  readonly unit?: LengthUnit;
  /** The number format of every cell, in the shape of the cells: tells dates and percentages from readings. */
  readonly formats?: readonly (readonly string[])[];
  /** Reads texts, where there is another way than that of tape readings in a worksheet. */
  readonly readText?: (text: string) => Written;
  /** True for a chart that is about to be filled: headings without figures are no fault then. */
  readonly mayBeEmpty?: boolean;
}

/** A range whose figures are known, on the way to a chart. Problems are added as they are met. */
export interface Sheet {
  readonly cells: Cells;
  readonly figures: readonly string[];
  readonly rows: readonly number[];
  readonly options: ChartOptions;
  readonly problems: ChartProblem[];
  /** The unit of each column beside the names. */
  readonly units: readonly ColumnUnit[];
}

const unitWord: Readonly<Record<LengthUnit, string>> = { mm: "mm", cm: "cm", in: "inches" };

/** One column beside the names; undefined for an empty one and for one that had to be left out. */
export function readColumn(
  sheet: Sheet,
  position: number,
  before: readonly MeasureColumn[],
): MeasureColumn | AttributeColumn | undefined {
  const { cells, rows, options, problems } = sheet;
  const top = cells[0]?.[position];
  const filled = rows.filter((row) => !isEmpty(cells[row]?.[position])).length;
  if (isCellError(top)) {
    problems.push({
      kind: "error cell",
      row: 0,
      column: position,
      message: `The heading of column ${String(position + 1)} shows the error ${top.error}, so the column is left out. Type the heading.`,
    });
    return undefined;
  }
  if (isBlank(top)) {
    if (filled > 0)
      problems.push({ kind: "no heading", row: 0, column: position, message: noHeading(cells, position) });
    return undefined;
  }
  const { unit, from } = sheet.units[position - 1] ?? { unit: options.unit ?? "mm", from: "usual" };
  const heading = { ...readHeading(cellText(top), unit), unit };
  const fractionUnit = heading.unitStated ? undefined : unitOfFraction;
  const readings = rows.map((row) =>
    readCell(cells[row]?.[position], unit, {
      format: options.formats?.[row]?.[position],
      readText: options.readText,
      fractionUnit,
    }),
  );
  if (heading.foreignUnit !== undefined) {
    problems.push({
      kind: "unit differs",
      row: 0,
      column: position,
      message: `${quote(cellText(top))} is in ${heading.foreignUnit}, which a column cannot be in; it is kept as text. Use mm, cm or in.`,
    });
    return attribute(sheet, heading, position);
  }
  return isMeasure(sheet, heading, readings, position)
    ? measure(sheet, heading, from === "nothing" ? readings.map(notKnown) : readings, position, before)
    : attribute(sheet, heading, position);
}

/** A length whose unit is not known is no reading. */
function notKnown(reading: Reading): Reading {
  return reading.kind === "length" && reading.unitFrom === "assumed" ? { kind: "missing" } : reading;
}

function noHeading(cells: Cells, position: number): string {
  const left = [...(cells[0] ?? []).slice(1, position)].reverse().find((cell) => !isBlank(cell));
  const merged =
    left === undefined
      ? ""
      : ` If its heading is merged with ${quote(cellText(left))}, split the merged cell.`;
  return `Column ${String(position + 1)} of the chart has entries but no heading, so it is left out.${merged} Give each column a heading of its own.`;
}

/** Headings of numbers that are no lengths; the column is an attribute unless its heading states a unit. */
const notLengths = new Set([
  "age",
  "code",
  "cost",
  "count",
  "date",
  "edition",
  "id",
  "made",
  "no",
  "number",
  "nr",
  "price",
  "qty",
  "quantity",
  "released",
  "row",
  "scale",
  "size",
  "sku",
  "weight",
  "year",
]);

function isMeasure(
  { problems, cells, rows }: Sheet,
  heading: Heading,
  readings: readonly Reading[],
  position: number,
): boolean {
  if (heading.unitStated) return true;
  // A 0 may be an empty cell of the host’s, so it says nothing about the column.
  const lengths = readings.filter((reading) => reading.kind === "length" && reading.mm > 0).length;
  const filled = lengths + readings.filter(({ kind }) => kind === "refused").length;
  if (!heading.measure) return !notLengths.has(headingKey(heading.name)) && lengths > filled / 2;
  const words = rows.filter((row) => {
    const cell = cells[row]?.[position];
    return typeof cell === "string" && /\p{L}/u.test(cell) && !/\d/.test(cell);
  }).length;
  if (filled < 2 || lengths > 0 || words < filled) return true;
  problems.push({
    kind: "refused reading",
    row: 0,
    column: position,
    message: `${quote(heading.name)} is the name of a measure, but the column holds words only; it is kept as text. Rename it if it is not a measure.`,
  });
  return false;
}

function attribute({ cells, rows }: Sheet, heading: Heading, position: number): AttributeColumn {
  return { heading: heading.name, values: rows.map((row) => cellText(cells[row]?.[position])), position };
}

function measure(
  sheet: Sheet,
  heading: Heading,
  readings: readonly Reading[],
  position: number,
  before: readonly MeasureColumn[],
): MeasureColumn {
  const { problems } = sheet;
  const own = heading.measure?.id ?? unknownKey(heading.name);
  const twin = before.find(({ key }) => key === own);
  if (twin) {
    problems.push({
      kind: "measure twice",
      row: 0,
      column: position,
      message: twiceMessage(heading, twin),
    });
  } else if (!heading.measure) {
    const known = measures.flatMap(({ name, shortName }) => [name, shortName]);
    problems.push({
      kind: "unknown measure",
      row: 0,
      column: position,
      message: `${quote(heading.name)} is not a measure that the dictionary knows, so it counts only where it is asked for.${didYouMean(heading.name, known)}`,
    });
  }
  const known = twin ? undefined : heading.measure;
  return {
    key: twin ? freeKey(unknownKey(heading.name), before) : own,
    heading: heading.name,
    ...(known ? { measure: known } : {}),
    kind: known?.kind,
    zone: known?.zone,
    unit: heading.unit,
    mm: readingsToMm(sheet, heading, readings, position),
    ...originsOf(readings),
    position,
  };
}

function originsOf(readings: readonly Reading[]): Pick<MeasureColumn, "origins"> {
  const origins = readings.flatMap((reading, i) =>
    reading.kind === "length" && reading.origin ? [[i, reading.origin] as const] : [],
  );
  return origins.length > 0 ? { origins: new Map(origins) } : {};
}

function twiceMessage({ name, measure, side }: Heading, twin: MeasureColumn): string {
  const same = `${quote(name)} and ${quote(twin.heading)} are the same measure${measure ? ` (${measure.name})` : ""}`;
  const kept = `${quote(twin.heading)} counts; ${quote(name)} is kept as a further measure`;
  const isOtherSide = side !== undefined && splitSide(twin.heading).side !== side;
  return `${same}. ${kept}.${isOtherSide ? "" : " Remove or rename one."}`;
}

/** The key of a measure that the dictionary does not know. */
function unknownKey(name: string): string {
  return headingKey(name) || name;
}

function freeKey(key: string, before: readonly MeasureColumn[]): string {
  const taken = new Set([...before.map((column) => column.key), ...measures.map(({ id }) => id)]);
  let free = key;
  for (let n = 2; taken.has(free); n++) free = `${key} ${String(n)}`;
  return free;
}

function refusedCell(
  cell: Cell,
  { reason, fractions }: Reading & { kind: "refused" },
  row: number,
  column: number,
  where: string,
): ChartProblem {
  const message = where + reason;
  if (isCellError(cell)) return { kind: "error cell", row, column, message };
  return fractions
    ? { kind: "date instead of a reading", row, column, message, fractions }
    : { kind: "refused reading", row, column, message };
}

/** Readings in mm, NaN for what is missing or refused; every refusal is reported. */
function readingsToMm(
  { cells, figures, rows, problems }: Sheet,
  heading: Heading,
  readings: readonly Reading[],
  position: number,
): Float64Array {
  const mm = new Float64Array(readings.length).fill(NaN);
  const zeros: number[] = [];
  for (const [i, reading] of readings.entries()) {
    const row = rows[i] ?? 0;
    const cell = cells[row]?.[position];
    const where = `${figures[i] ?? ""}, ${heading.name}: `;
    if (reading.kind === "refused") {
      problems.push(refusedCell(cell, reading, row, position, where));
    } else if (reading.kind === "length" && reading.mm === 0 && heading.measure?.id !== "heelHeight") {
      zeros.push(row);
    } else if (reading.kind === "length") {
      mm[i] = reading.mm;
      if (reading.unit !== heading.unit)
        problems.push({
          kind: "unit differs",
          row,
          column: position,
          message: `${where}${quote(cellText(cell))} is given in ${unitWord[reading.unit]}, the column is in ${unitWord[heading.unit]}. It is converted; check that the unit is right.`,
        });
    }
  }
  const [firstZero] = zeros;
  if (firstZero !== undefined)
    problems.push({
      kind: "refused reading",
      row: firstZero,
      column: position,
      message: `${heading.name} is 0 for ${String(zeros.length)} ${zeros.length === 1 ? "figure" : "figures"}, which counts as not taken. Leave the cell empty, or type the reading.`,
    });
  return mm;
}
