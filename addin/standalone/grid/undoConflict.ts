import type { IMutationInfo, IUndoRedoItem } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import * as z from "zod/mini";

const written = z.object({
  subUnitId: z.string(),
  cellValue: z.record(z.string(), z.record(z.string(), z.unknown())),
});
const onSheet = z.object({ subUnitId: z.optional(z.string()), sheetId: z.optional(z.string()) });
const insertedSheet = z.object({ sheet: z.object({ id: z.string() }) });

/** What a step touched: single cells, or a sheet as a whole where rows, columns or tables moved. */
interface Touched {
  readonly cells: ReadonlySet<string>;
  readonly sheetsOfCells: ReadonlySet<string>;
  readonly sheets: ReadonlySet<string>;
}

/** True when later steps changed what an earlier step wrote, so that the earlier one cannot be taken back alone. */
export function conflicts(step: IUndoRedoItem, later: readonly IUndoRedoItem[]): boolean {
  const mine = touchedBy(step);
  return later
    .map(touchedBy)
    .some(
      (theirs) =>
        meet(mine.cells, theirs.cells) ||
        meet(mine.sheets, theirs.sheets) ||
        meet(mine.sheets, theirs.sheetsOfCells) ||
        meet(mine.sheetsOfCells, theirs.sheets),
    );
}

function touchedBy(step: IUndoRedoItem): Touched {
  const cells = new Set<string>();
  const sheetsOfCells = new Set<string>();
  const sheets = new Set<string>();
  for (const mutation of step.redoMutations) {
    const values = mutation.id === SetRangeValuesMutation.id ? written.safeParse(mutation.params) : undefined;
    if (values?.success) {
      const { subUnitId, cellValue } = values.data;
      sheetsOfCells.add(subUnitId);
      for (const [row, columns] of Object.entries(cellValue))
        for (const column of Object.keys(columns)) cells.add(`${subUnitId}:${row}:${column}`);
    } else if (moves(mutation)) {
      const sheet = sheetOf(mutation);
      if (sheet !== undefined) sheets.add(sheet);
    }
  }
  return { cells, sheetsOfCells, sheets };
}

/** Selecting, row heights, notes and frozen panes move no cell. */
function moves({ id }: IMutationInfo): boolean {
  return id.startsWith("sheet.mutation.") && !/note|height|frozen|row-count|column-count/.test(id);
}

function sheetOf({ params }: IMutationInfo): string | undefined {
  const inserted = insertedSheet.safeParse(params).data?.sheet.id;
  const { subUnitId, sheetId } = onSheet.safeParse(params).data ?? {};
  return inserted ?? subUnitId ?? sheetId;
}

function meet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return [...a].some((each) => b.has(each));
}
