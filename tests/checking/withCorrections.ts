import type { Cell, Cells } from "../../addin/chart/cell.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { readHeading } from "../../addin/measures/heading.ts";
import { fromMm } from "../../addin/measures/units.ts";

/** The cells with every suggestion of the flags taken. */
export function withCorrections(cells: Cells, flags: readonly Flag[]): Cells {
  const mended: Cell[][] = cells.map((row) => [...row]);
  for (const { row, column, mm } of flags.flatMap(({ corrections }) => corrections)) {
    const { unit } = readHeading(String(cells[0]?.[column]), "mm");
    mended[row]![column] = fromMm(mm, unit);
  }
  return mended;
}
