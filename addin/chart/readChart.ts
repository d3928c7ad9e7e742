import type { DecimalMark } from "../measures/decimal.ts";
import { measures } from "../measures/dictionary.ts";
import type { Heading } from "../measures/heading.ts";
import { readHeading } from "../measures/heading.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import type { Reading } from "../measures/parseReading.ts";
import { quote } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import { findUnit } from "../measures/units.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank, isCellError } from "./cell.ts";
import type { AttributeColumn, Chart, ChartProblem, MeasureColumn } from "./chart.ts";
import { figureKey } from "./find.ts";
import { readCell } from "./readCell.ts";

export interface ChartOptions {
  /** The unit of columns whose heading states none; mm when left out. */
  readonly unit?: LengthUnit;
  /** The number format of every cell, in the shape of the cells: tells dates and percentages from readings. */
  readonly formats?: readonly (readonly string[])[];
  readonly decimalMark?: DecimalMark;
}

/**
 * A range of cells with headings → a chart. Row 0 holds the headings, column 0 the names of the figures. Short rows
 * end in empty cells; empty rows and empty columns count for nothing.
 *
 * A column is a measure when the dictionary knows its heading, when its heading states a unit, or when most of its
 * filled cells read as lengths; else it is an attribute. A text with a unit of its own (`5 in` in a column of mm) is
 * converted. A number 0 counts as not taken, except for heel height: hosts hand over empty cells as 0.
 *
 * Everything that is left out or doubtful is told in `problems`: refused readings (NaN in the column), rows with
 * readings but no figure name (left out), columns with readings but no heading (left out), figures that appear twice
 * (both kept), a second column of one measure (kept under a key of its own, as a measure that the dictionary does not
 * know; the first counts), and unknown measures.
 *
 * @throws {InputError} when there is no chart to read: no headings, no figures, or no column of readings
 */
export function readChart(cells: Cells, options: ChartOptions = {}): Chart {
  const problems: ChartProblem[] = [];
  checkShape(cells);
  const rows = figureRows(cells, problems);
  if (rows.length === 0)
    throw new InputError(
      "The chart has headings but no figures. Write a figure’s name in the first column, with its readings beside it.",
    );
  const figures = rows.map((row) => cellText(cells[row]?.[0]));
  reportTwice(figures, rows, problems);
  const sheet: Sheet = { cells, figures, rows, options, problems };
  const columns: MeasureColumn[] = [];
  const attributes: AttributeColumn[] = [];
  const width = Math.max(...cells.map((row) => row.length));
  for (let position = 1; position < width; position++) {
    const column = readColumn(sheet, position, columns);
    if (column && "mm" in column) columns.push(column);
    else if (column) attributes.push(column);
  }
  if (columns.length === 0) throw new InputError(noMeasures(cells[0] ?? []));
  return { figures, rows, measures: columns, attributes, problems };
}

interface Sheet {
  readonly cells: Cells;
  readonly figures: readonly string[];
  readonly rows: readonly number[];
  readonly options: ChartOptions;
  readonly problems: ChartProblem[];
}

function checkShape(cells: Cells): void {
  if (cells.every((row) => row.every(isBlank))) {
    throw new InputError(
      "The chart is empty. Give a range with headings in its first row and figure names in its first column.",
    );
  }
  const width = Math.max(...cells.map((row) => row.length));
  if (cells.length < 2 || width < 2) {
    throw new InputError(
      `The range has ${String(cells.length)} ${cells.length === 1 ? "row" : "rows"} and ${String(width)} ${width === 1 ? "column" : "columns"}. A chart needs a row of headings, a column of figure names and readings.`,
    );
  }
  const headings = (cells[0] ?? []).slice(1).filter((cell) => !isBlank(cell));
  if (headings.length === 0)
    throw new InputError(
      "The first row of the chart is empty beside the first cell. It must hold the headings, such as Bust (in).",
    );
  if (headings.every((cell) => readCell(cell, "mm").kind === "length")) {
    throw new InputError(
      `The first row must hold headings, but it holds ${headings
        .slice(0, 3)
        .map((cell) => quote(cellText(cell)))
        .join(", ")}. Include the row of headings in the range.`,
    );
  }
}

/** Rows that hold a figure. Rows without a name are reported when they hold anything. */
function figureRows(cells: Cells, problems: ChartProblem[]): number[] {
  const rows: number[] = [];
  for (let row = 1; row < cells.length; row++) {
    const line = cells[row] ?? [];
    const [name] = line;
    if (line.every(isEmpty)) continue;
    if (isCellError(name)) {
      problems.push({
        kind: "error cell",
        row,
        column: 0,
        message: `Row ${String(row + 1)} of the chart shows the error ${name.error} instead of a figure’s name, so it is left out. Type the name.`,
      });
    } else if (isEmpty(name)) {
      problems.push({
        kind: "no figure name",
        row,
        column: 0,
        message: `Row ${String(row + 1)} of the chart has no figure name in the first column, so it is left out. ${hintForNameless(line)}`,
      });
    } else rows.push(row);
  }
  return rows;
}

function hintForNameless(line: readonly Cell[]): string {
  const texts = line.filter((cell) => typeof cell === "string" && !isBlank(cell)).map(cellText);
  if (texts.length > 0 && texts.every((text) => findUnit(text) ?? readHeading(text, "mm").measure)) {
    return `It looks like a second row of headings (${texts.slice(0, 3).map(quote).join(", ")}): a chart has one, with the unit in it, such as Bust (in).`;
  }
  return "Type the name.";
}

/** Hosts hand over an empty cell as 0 now and then. */
function isEmpty(cell: Cell): boolean {
  return isBlank(cell) || cell === 0;
}

function reportTwice(figures: readonly string[], rows: readonly number[], problems: ChartProblem[]): void {
  const first = new Map<string, number>();
  for (const [i, figure] of figures.entries()) {
    const key = figureKey(figure);
    const before = first.get(key);
    if (before === undefined) first.set(key, i);
    else
      problems.push({
        kind: "figure twice",
        row: rows[i] ?? 0,
        column: 0,
        message: `${quote(figure)} is in row ${String((rows[before] ?? 0) + 1)} and in row ${String((rows[i] ?? 0) + 1)} of the chart. Both are kept; a formula that names the figure finds the first. Rename one.`,
      });
  }
}

function readColumn(
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
  const heading = readHeading(cellText(top), options.unit ?? "mm");
  const readings = rows.map((row) =>
    readCell(cells[row]?.[position], heading.unit, options.formats?.[row]?.[position], options.decimalMark),
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
    ? measure(sheet, heading, readings, position, before)
    : attribute(sheet, heading, position);
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
  const filled = readings.filter(({ kind }) => kind !== "missing").length;
  const lengths = readings.filter(({ kind }) => kind === "length").length;
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
  const own = heading.measure?.id ?? headingKey(heading.name);
  const twin = before.find(({ key }) => key === own);
  if (twin) {
    problems.push({
      kind: "measure twice",
      row: 0,
      column: position,
      message: `${quote(heading.name)} and ${quote(twin.heading)} are the same measure${heading.measure ? ` (${heading.measure.name})` : ""}. ${quote(twin.heading)} counts; ${quote(heading.name)} is kept as a further measure. Remove or rename one.`,
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
    key: twin ? freeKey(headingKey(heading.name), before) : own,
    heading: heading.name,
    ...(known ? { measure: known } : {}),
    kind: known?.kind,
    zone: known?.zone,
    unit: heading.unit,
    mm: readingsToMm(sheet, heading, readings, position),
    position,
  };
}

function freeKey(key: string, before: readonly MeasureColumn[]): string {
  const taken = new Set([...before.map((column) => column.key), ...measures.map(({ id }) => id)]);
  let free = key;
  for (let n = 2; taken.has(free); n++) free = `${key} ${String(n)}`;
  return free;
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
      const kind = isCellError(cell)
        ? "error cell"
        : reading.fractions
          ? "date instead of a reading"
          : "refused reading";
      problems.push({ kind, row, column: position, message: where + reading.reason });
    } else if (reading.kind === "length" && reading.mm === 0 && heading.measure?.id !== "heelHeight") {
      zeros.push(row);
    } else if (reading.kind === "length") {
      mm[i] = reading.mm;
      if (reading.unit !== heading.unit)
        problems.push({
          kind: "unit differs",
          row,
          column: position,
          message: `${where}${quote(cellText(cell))} is in ${reading.unit} in a column of ${heading.unit}. It is converted; check that the unit is right.`,
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

function noMeasures(headings: readonly Cell[]): string {
  const names = headings
    .slice(1)
    .filter((cell) => !isBlank(cell))
    .map((cell) => quote(cellText(cell)));
  return `No column of the chart holds readings (headings: ${names.slice(0, 6).join(", ")}). Name at least one measure, such as Bust (in).`;
}
