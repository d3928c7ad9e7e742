import type { Cell } from "../../addin/chart/cell.ts";
import { cellText, isBlank } from "../../addin/chart/cell.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import type { KeptNow, KeptTable } from "./keptRows.ts";
import { addRows } from "./keptRows.ts";
import type { TableChart } from "../shell/chartIn.ts";

/** What was corrected from the pane stands in a table of its own: what was there, what is there now, when and why. */
export const correctionsTable = "Corrections";
const keptCorrections: KeptTable = {
  name: correctionsTable,
  sheet: "Corrections",
  says: "Cells of the chart that were corrected in Check, with what stood there before. Nothing is read from here: write into it what you like.",
  headings: ["Figure", "Measure", "Old", "New", "Date", "Why"],
  widths: [160, 160, 96, 96, 112, 420],
};

/**
 * The edits of a correction, and with them those that remember it: one row for each cell of the chart that they change.
 *
 * @param date ISO date, for example 2025-03-01
 */
export function withCorrections(
  edits: readonly Edit[],
  { data, chart }: Pick<TableChart, "data" | "chart">,
  flag: Pick<Flag, "kind" | "why">,
  date: string,
  now: KeptNow,
): readonly Edit[] {
  const { area, values } = data;
  const rows = edits.flatMap((edit): readonly (readonly Cell[])[] => {
    if (edit.kind !== "cells" || edit.at.sheet !== area.sheet) return [];
    const row = edit.at.row - area.row;
    const column = edit.at.column - area.column;
    const measure = chart.measures.find(({ position }) => position === column);
    const figure = row === 0 ? undefined : chart.figures[chart.rows.indexOf(row)];
    const [[put] = []] = edit.cells;
    const heading = measure ? `${measure.heading} (${measure.unit})` : cellText(values[0]?.[column]);
    return [
      [figure, heading, asKept(values[row]?.[column]), asKept(put?.value), date, `${flag.kind}: ${flag.why}`],
    ];
  });
  return [...edits, ...addRows(keptCorrections, rows, now)];
}

/** Errors and truth values as what they say, so that they stay what they were. */
function asKept(cell: Cell): Cell {
  return isBlank(cell) || typeof cell === "number" ? cell : cellText(cell);
}
