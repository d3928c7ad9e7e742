import { readHeading } from "../measures/heading.ts";
import { InputError } from "../measures/inputError.ts";
import { cutShort, someOf } from "../measures/quote.ts";
import type { LengthUnit } from "../measures/units.ts";
import { findUnit } from "../measures/units.ts";
import type { Cells } from "./cell.ts";
import { cellText, isBlank } from "./cell.ts";
import type { AttributeColumn, Chart, ChartProblem, MeasureColumn } from "./chart.ts";
import { checkShape, noMeasures, widthOf } from "./chartShape.ts";
import { figureRows, reportTwice } from "./figureRows.ts";
import type { ChartOptions, Sheet } from "./readColumn.ts";
import { readColumn } from "./readColumn.ts";
import type { ColumnUnit } from "./unitsOfColumns.ts";
import { unitsOfColumns } from "./unitsOfColumns.ts";

export type { ChartOptions } from "./readColumn.ts";

/**
 * A range of cells with headings → a chart. Row 0 holds the headings, column 0 the names of the figures. Short rows
 * end in empty cells; empty rows and empty columns count for nothing.
 *
 * A column is a measure when the dictionary knows its heading, when its heading states a unit, or when most of its
 * filled cells read as lengths; else it is an attribute. The unit of a column whose heading states none is decided by
 * {@link unitsOfColumns}. A text with a unit of its own (`5 in` in a column of mm) is converted. A number 0 counts as not taken, except for heel height: hosts hand over empty cells as 0.
 *
 * Everything that is left out or doubtful is told in `problems`: refused readings (NaN in the column), rows with
 * readings but no figure name (left out), columns with readings but no heading (left out), figures that appear twice
 * (both kept), a second column of one measure (kept under a key of its own, as a measure that the dictionary does not
 * know; the first counts), unknown measures, and units that no heading states: assumed, or not known (NaN in the column).
 *
 * @throws {InputError} when there is no chart to read: no headings, no figures, or no column of readings
 */
export function readChart(cells: Cells, options: ChartOptions = {}): Chart {
  const problems: ChartProblem[] = [];
  checkShape(cells);
  const rows = figureRows(cells, problems);
  if (rows.length === 0 && options.mayBeEmpty !== true)
    throw new InputError(
      "The chart has headings but no figures. Write a figure’s name in the first column, with its readings beside it.",
    );
  const figures = rows.map((row) => cellText(cells[row]?.[0]));
  reportTwice(figures, rows, problems);
  const width = widthOf(cells);
  const units = unitsOfSheet(cells, rows, width, options);
  const sheet: Sheet = { cells, figures, rows, options, problems, units };
  const columns: MeasureColumn[] = [];
  const attributes: AttributeColumn[] = [];
  for (let position = 1; position < width; position++) {
    const column = readColumn(sheet, position, columns);
    if (column && "mm" in column) columns.push(column);
    else if (column) attributes.push(column);
  }
  if (columns.length === 0) throw new InputError(noMeasures(cells[0] ?? []));
  problems.push(...unstatedUnits(columns, units));
  return { figures, rows, measures: columns, attributes, problems };
}

/**
 * The chart, where at least one column has readings or nothing has to be asked about.
 *
 * @throws {InputError} when every column waits for its unit
 */
export function requireUnits(chart: Chart): Chart {
  const asked = chart.problems.find(({ kind }) => kind === "unit not known");
  if (asked && chart.measures.every(({ mm }) => mm.every(Number.isNaN))) throw new InputError(asked.message);
  return chart;
}

function unitsOfSheet(
  cells: Cells,
  rows: readonly number[],
  width: number,
  { unit: given, readText }: ChartOptions,
): readonly ColumnUnit[] {
  const columns = Array.from({ length: width - 1 }, (_, i) => {
    const heading = readHeading(cellText(cells[0]?.[i + 1]), "mm");
    const { measure, unitStated, foreignUnit } = heading;
    const isOpen = !unitStated && !given && foreignUnit === undefined;
    return {
      stated: unitStated ? heading.unit : (given ?? unitBelow(cells, i + 1)),
      measure,
      cells: isOpen ? rows.map((row) => cells[row]?.[i + 1]) : [],
    };
  });
  return unitsOfColumns(columns, readText);
}

/** Some charts have a row of units below the headings, without a name. */
function unitBelow(cells: Cells, position: number): LengthUnit | undefined {
  const below = cells[1]?.[position];
  return typeof below === "string" && isBlank(cells[1]?.[0]) ? findUnit(below) : undefined;
}

/** What was assumed of columns that state no unit, and first what could not be. One problem for all columns alike. */
function unstatedUnits(
  columns: readonly MeasureColumn[],
  units: readonly ColumnUnit[],
): readonly ChartProblem[] {
  const alike = new Map<string, { readonly how: ColumnUnit; readonly columns: MeasureColumn[] }>();
  for (const column of columns) {
    const how = units[column.position - 1];
    if (!how || how.from === "heading") continue;
    const key = how.from === "nothing" ? how.from : `${how.from} ${how.unit}`;
    const group = alike.get(key) ?? { how, columns: [] };
    group.columns.push(column);
    alike.set(key, group);
  }
  const groups = [...alike.values()].sort(
    (a, b) => Number(b.how.from === "nothing") - Number(a.how.from === "nothing"),
  );
  return groups.map(({ how, columns: of }) => ({
    kind: how.from === "nothing" ? "unit not known" : "unit assumed",
    row: 0,
    column: of[0]!.position,
    message: unstatedWords(how, of),
    unstated: { columns: of.map(({ position }) => position), unit: how.unit },
  }));
}

function unstatedWords({ unit, from }: ColumnUnit, columns: readonly MeasureColumn[]): string {
  const [first] = columns;
  const one = columns.length === 1;
  const names = someOf(
    columns.map(({ heading }) => cutShort(heading)),
    from === "nothing" ? 30 : 50,
  );
  const says = `${names} ${one ? "states" : "state"} no unit`;
  const taken = `${one ? "it is" : "they are"} taken to be in ${unit}`;
  const write = `Write the unit into the ${one ? "heading" : "headings"}, such as ${cutShort(first!.heading)} (${unit}).`;
  switch (from) {
    case "nothing":
      return `${says}, and taken to be in mm the figures would be too small or too large. ${write}`;
    case "readings":
      return `${says}; ${taken}, as the readings say (a fraction is in inches). ${write}`;
    case "others":
      return `${says}; ${taken}, as other columns are. ${write}`;
    default:
      return `${says}; ${taken}. ${write}`;
  }
}
