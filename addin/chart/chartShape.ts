import { InputError } from "../measures/inputError.ts";
import { quote, someOf } from "../measures/quote.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank } from "./cell.ts";
import { readCell } from "./readCell.ts";
import { unitOfFraction } from "./unitsOfColumns.ts";

/** @throws {InputError} when a range cannot be a chart: empty, one row, one column, or no headings in its first row */
export function checkShape(cells: Cells): void {
  if (cells.every((row) => row.every(isBlank))) {
    throw new InputError(
      "The chart is empty. Give a range with headings in its first row and figure names in its first column.",
    );
  }
  const width = widthOf(cells);
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
  if (headings.every((cell) => readCell(cell, "mm", { fractionUnit: unitOfFraction }).kind === "length")) {
    throw new InputError(
      `The first row of the chart must hold headings, but it holds ${someOf(
        headings.slice(0, 3).map((cell) => quote(cellText(cell))),
        50,
      )}. Include the row of headings in the range.`,
    );
  }
}

/** What to say of a chart without a single column of readings. */
export function noMeasures(headings: readonly Cell[]): string {
  const names = headings
    .slice(1)
    .filter((cell) => !isBlank(cell))
    .map((cell) => quote(cellText(cell)));
  return `No column of the chart holds readings (headings: ${someOf(names)}). Name at least one measure, such as Bust (in).`;
}

/** Columns of the longest row. */
export function widthOf(cells: Cells): number {
  return cells.reduce((width, row) => Math.max(width, row.length), 0);
}
