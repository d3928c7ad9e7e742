import { InputError } from "../measures/inputError.ts";
import type { Cells } from "./cell.ts";
import { cellText } from "./cell.ts";
import type { AttributeColumn, Chart, ChartProblem, MeasureColumn } from "./chart.ts";
import { checkShape, noMeasures, widthOf } from "./chartShape.ts";
import { figureRows, reportTwice } from "./figureRows.ts";
import type { ChartOptions, Sheet } from "./readColumn.ts";
import { readColumn } from "./readColumn.ts";

export type { ChartOptions } from "./readColumn.ts";

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
  if (rows.length === 0 && options.mayBeEmpty !== true)
    throw new InputError(
      "The chart has headings but no figures. Write a figure’s name in the first column, with its readings beside it.",
    );
  const figures = rows.map((row) => cellText(cells[row]?.[0]));
  reportTwice(figures, rows, problems);
  const sheet: Sheet = { cells, figures, rows, options, problems };
  const columns: MeasureColumn[] = [];
  const attributes: AttributeColumn[] = [];
  const width = widthOf(cells);
  for (let position = 1; position < width; position++) {
    const column = readColumn(sheet, position, columns);
    if (column && "mm" in column) columns.push(column);
    else if (column) attributes.push(column);
  }
  if (columns.length === 0) throw new InputError(noMeasures(cells[0] ?? []));
  return { figures, rows, measures: columns, attributes, problems };
}
