import { sameName } from "../names.ts";
import type { CellContent } from "../content.ts";
import type { Area, Edit } from "../port.ts";
import type { Before } from "./before.ts";
import { partOf, rangeOf, readParts } from "./ranges.ts";
import { loadSheets, loadTables } from "./shape.ts";

type CellRows = readonly (readonly (CellContent | undefined)[])[];

/** An area whose content shows whether the user has changed what an action wrote. */
interface Watched {
  readonly area: Area;
  readonly counts: (i: number, j: number) => boolean;
}

/**
 * What an action wrote, as it stands now, as one text. When it is no longer the same at undo, the user has
 * worked on it since, and taking the action back would throw that work away.
 */
export async function fingerprint(
  context: Excel.RequestContext,
  edits: readonly Edit[],
  before: readonly Before[],
): Promise<string> {
  const sheets = await loadSheets(context);
  const tables = await loadTables(context);
  const added = before
    .flatMap(({ touched }) => touched.newSheets)
    .filter((name) => sheets.some((sheet) => sameName(sheet, name)));
  const used = added.map((name) => {
    const range = context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true);
    range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
    return { name, range };
  });
  if (used.length > 0) await context.sync();
  const watched: Watched[] = [
    ...before.flatMap(({ touched }) =>
      touched.areas.map(({ area, cells }) => ({
        area,
        counts: (i: number, j: number) => cells[i]?.[j] !== undefined,
      })),
    ),
    ...before
      .flatMap((phase) => phase.tables)
      .flatMap((was) => {
        const now = tables.find((table) => sameName(table.name, was.name));
        return now ? grownParts(was.area, now.area) : [];
      }),
    ...used.flatMap(({ name, range }) =>
      range.isNullObject
        ? []
        : [
            {
              area: {
                sheet: name,
                row: range.rowIndex,
                column: range.columnIndex,
                rows: range.rowCount,
                columns: range.columnCount,
              },
              counts: countsOnSheet(sheetCells(edits, name), range.rowIndex, range.columnIndex),
            },
          ],
    ),
  ];
  const sizes = tables.map(({ name, area }) => [name, area.rows, area.columns]);
  const names = before.flatMap(({ touched }) => touched.grownTables.concat(touched.newTables));
  return JSON.stringify([
    added,
    sizes.filter(([table]) => names.some((name) => sameName(name, String(table)))),
    await contents(context, watched),
  ]);
}

function always(): boolean {
  return true;
}

/** The rows and columns that a table has gained. */
function grownParts(was: Area, now: Area): Watched[] {
  const below = { ...now, row: now.row + was.rows, rows: now.rows - was.rows };
  const beside = { ...now, column: now.column + was.columns, columns: now.columns - was.columns };
  return [
    ...(below.rows > 0 ? [{ area: below, counts: always }] : []),
    ...(beside.columns > 0 ? [{ area: beside, counts: always }] : []),
  ];
}

function sheetCells(edits: readonly Edit[], name: string): CellRows {
  const found = edits.find((edit) => edit.kind === "sheet" && sameName(edit.sheet.name, name));
  return found?.kind === "sheet" ? found.sheet.cells : [];
}

/** On a sheet of ours everything counts but what its array formulas may fill, which changes by itself. */
function countsOnSheet(cells: CellRows, top: number, left: number): Watched["counts"] {
  const formulas = cells.flatMap((row, i) =>
    row.flatMap((cell, j) => (cell?.formula === undefined ? [] : [{ i, j }])),
  );
  return (i, j) => {
    const [row, column] = [top + i, left + j];
    const cell = cells[row]?.[column];
    const isWritten = cell !== undefined && !cell.spilled;
    return isWritten || !formulas.some((formula) => formula.i <= row && formula.j <= column);
  };
}

/** Each filled cell that counts, as text. */
async function contents(
  context: Excel.RequestContext,
  watched: readonly Watched[],
): Promise<readonly string[]> {
  const parts = watched.map((from) => ({ ...partOf(from.area, 20), from }));
  const read = await readParts(parts, async (group) => {
    const ranges = group.map(({ area, from }) => {
      const range = rangeOf(context, area);
      range.load("formulas");
      return { from, range, top: area.row - from.area.row };
    });
    await context.sync();
    return ranges.map(({ from, range, top }) =>
      range.formulas.flatMap((row, i) =>
        row.flatMap((input: unknown, j) =>
          input !== "" && from.counts(top + i, j) ? [`${String(top + i)} ${String(j)} ${String(input)}`] : [],
        ),
      ),
    );
  });
  return read.flat();
}
