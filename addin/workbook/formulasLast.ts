import type { CellContent } from "./content.ts";
import { sameName } from "./names.ts";
import { movesCellsOn } from "./phases.ts";
import type { CellAddress, Edit } from "./port.ts";

type CellRows = readonly (readonly (CellContent | undefined)[])[];

/**
 * The same edits with their formulas written at the end, so that every table that a formula names is there by then:
 * Excel refuses a formula that names something unknown. A formula stays in its place where a later edit moves cells of
 * its sheet, or writes over it.
 *
 * @param sheetOf the sheet that a table is on, `undefined` when the edits themselves make the table
 */
export function formulasLast(
  edits: readonly Edit[],
  sheetOf: (table: string) => string | undefined,
): readonly Edit[] {
  const kept: Edit[] = [];
  const formulas: Edit[] = [];
  edits.forEach((edit, i) => {
    const at = startOf(edit);
    const isSettled = at && !edits.slice(i + 1).some((later) => disturbs(later, at.sheet, sheetOf));
    const cells = cellsOf(edit);
    if (!isSettled || !cells.some((row) => row.some(isFormula))) return kept.push(edit);
    kept.push(
      withCells(
        edit,
        only(cells, (cell) => !isFormula(cell)),
      ),
    );
    return formulas.push({ kind: "cells", at, cells: only(cells, isFormula) });
  });
  return [...kept, ...formulas];
}

function startOf(edit: Edit): CellAddress | undefined {
  if (edit.kind === "cells") return edit.at;
  return edit.kind === "sheet" ? { sheet: edit.sheet.name, row: 0, column: 0 } : undefined;
}

function cellsOf(edit: Edit): CellRows {
  if (edit.kind === "cells") return edit.cells;
  return edit.kind === "sheet" ? edit.sheet.cells : [];
}

function withCells(edit: Edit, cells: CellRows): Edit {
  if (edit.kind === "cells") return { ...edit, cells };
  return edit.kind === "sheet" ? { ...edit, sheet: { ...edit.sheet, cells } } : edit;
}

function disturbs(later: Edit, sheet: string, sheetOf: (table: string) => string | undefined): boolean {
  if (later.kind === "cells") return sameName(later.at.sheet, sheet);
  const moved = movesCellsOn(later, sheetOf);
  return moved === "any" || moved.some((name) => sameName(name, sheet));
}

function isFormula(cell: CellContent | undefined): boolean {
  return cell?.formula !== undefined;
}

function only(cells: CellRows, which: (cell: CellContent | undefined) => boolean): CellRows {
  return cells.map((row) => row.map((cell) => (which(cell) ? cell : undefined)));
}
