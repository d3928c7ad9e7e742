import { findUnit } from "../measures/units.ts";
import { readHeading } from "../measures/heading.ts";
import { quote } from "../measures/quote.ts";
import type { Cell, Cells } from "./cell.ts";
import { cellText, isBlank, isCellError, isEmpty } from "./cell.ts";
import type { ChartProblem } from "./chart.ts";
import { figureKey } from "./find.ts";

/** Rows that hold a figure. Rows without a name are reported when they hold anything. */
export function figureRows(cells: Cells, problems: ChartProblem[]): number[] {
  const rows: number[] = [];
  // Among sizes, a 0 is one of them; among names, it is an empty cell.
  const areSizes = cells.slice(1).some(([name]) => typeof name === "number" && name !== 0);
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
    } else if (isBlank(name) || (name === 0 && !areSizes)) {
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
  const hasNumbers = line.some((cell) => typeof cell === "number" && cell !== 0);
  if (!hasNumbers && texts.some((text) => findUnit(text) ?? readHeading(text, "mm").measure)) {
    return `It looks like a second row of headings (${texts.slice(0, 3).map(quote).join(", ")}): a chart has one, with the unit in it, such as Bust (in).`;
  }
  return "Type the name.";
}

/** Reports figures that are in the chart more than once; both stay. */
export function reportTwice(
  figures: readonly string[],
  rows: readonly number[],
  problems: ChartProblem[],
): void {
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
