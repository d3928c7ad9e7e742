import { cellRef, parseCellRef, rangeRef, type ConditionalRule } from "hucre/xlsx";
import type { SheetContent } from "../content.ts";
import { signedFormat, verdictBlocks, verdictCells, verdictInk, type Block } from "../verdictCells.ts";

/** A rule for each verdict over the cells that hold them, so that sign and colour follow what a formula puts there. */
export function storedVerdicts(cells: SheetContent["cells"]): ConditionalRule[] {
  return verdictBlocks(cells).flatMap(({ row, column, rows, columns }, block) =>
    verdictCells.map((look, i): ConditionalRule => ({
      type: "expression",
      priority: block * verdictCells.length + i + 1,
      formula: `EXACT(${cellRef(row, column)},"${look.word}")`,
      style: {
        font: { bold: true, color: { rgb: verdictInk[look.tone].slice(1) } },
        numFmt: signedFormat(look),
      },
      range: rangeRef(row, column, row + rows - 1, column + columns - 1),
    })),
  );
}

/** A file may state rules for all cells that there can be; ours never cover so many. */
const mostCells = 200_000;

/** Whether a rule is one of ours: the rest of a sheet’s rules cannot be kept. */
export function isVerdictRule({ type, formula }: ConditionalRule): boolean {
  return (
    type === "expression" &&
    typeof formula === "string" &&
    verdictCells.some(({ word }) => new RegExp(`^EXACT\\([A-Z]{1,3}\\d{1,7},"${word}"\\)$`).test(formula))
  );
}

/** Cells that our rules cover, with the look of verdicts. */
export function withVerdicts(
  cells: SheetContent["cells"],
  rules: readonly ConditionalRule[] | undefined,
): SheetContent["cells"] {
  const ranges = new Set((rules ?? []).filter(isVerdictRule).map(({ range }) => range));
  const blocks = [...ranges].flatMap((range) => blockOf(range) ?? []);
  if (blocks.length === 0) return cells;
  const grid = cells.map((row) => [...row]);
  for (const { row, column, rows, columns } of blocks) {
    for (let r = row; r < row + rows; r++) {
      const line = (grid[r] ??= []);
      for (let c = column; c < column + columns; c++) line[c] = { ...line[c], style: "verdict" };
    }
  }
  // A row that was passed over is an empty one, and so is a cell.
  return Array.from(grid, (row) => Array.from(row ?? [], (cell) => cell));
}

function blockOf(range: string): Block | undefined {
  const [first, last = first] = range.split(":");
  if (first === undefined || last === undefined || range.includes(" ")) return undefined;
  const from = parseCellRef(first);
  const to = parseCellRef(last);
  const block = {
    row: from.row,
    column: from.col,
    rows: to.row - from.row + 1,
    columns: to.col - from.col + 1,
  };
  return block.rows > 0 && block.columns > 0 && block.rows * block.columns <= mostCells ? block : undefined;
}
