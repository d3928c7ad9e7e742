import { sheetNamed } from "../existing.ts";
import { sameName } from "../names.ts";
import type { TableInfo } from "../port.ts";
import type { Before, SavedPart } from "./before.ts";
import { writeOperations } from "./cellInput.ts";
import { putFrozen } from "./freeze.ts";
import { keepSizes, resizeTable, usedBelow, type Growth } from "./growth.ts";
import { restoreMarks } from "./marks.ts";
import { findNotes } from "./notes.ts";
import { rangeOf } from "./ranges.ts";
import { bytesOf, operation, send, type Operation } from "./requests.ts";
import { loadSheets, loadTables } from "./shape.ts";

/**
 * Bring back how the workbook was before the edits of one phase. It does not matter how many of them were
 * applied: only what is there and should not be is removed. So it serves undo as well as an action that failed
 * half-way.
 */
export async function takeBack(context: Excel.RequestContext, before: Before): Promise<void> {
  const sheets = await loadSheets(context);
  const tables = await loadTables(context);
  // A sheet that this action added may be gone already, when taking back broke off before.
  const isThere = (name: string) => sheets.some((sheet) => sameName(sheet, name));
  const marks = before.marks.filter(({ at }) => isThere(at.sheet));
  const notes = before.notes.filter(({ at }) => isThere(at.sheet));
  await keepSizes(context, before.neighbours, []);
  const leftIn = await findInserted(context, before.growths, tables);
  await send(context, [
    ...before.tables.flatMap((was) => shrink(tables, was, before.growths)),
    ...leftIn.map(({ gap }) => operation((at) => void rangeOf(at, gap).delete("Up"))),
    ...before.touched.newTables.flatMap((name) => plainCells(tables, name)),
    ...before.touched.newSheets.flatMap((name) => dropSheet(sheets, name)),
    ...before.parts.filter(({ area }) => isThere(area.sheet)).flatMap(restorePart),
    ...before.frozen
      .filter(({ sheet }) => isThere(sheet))
      .map(({ sheet, rows, columns }) =>
        operation((at) => {
          putFrozen(at.workbook.worksheets.getItem(sheetNamed(sheets, sheet)), rows, columns);
        }),
      ),
  ]);
  await restoreMarks(context, marks);
  const places = await findNotes(
    context,
    notes.map(({ at }) => at),
  );
  await send(
    context,
    places.map((place, i) =>
      operation(() => {
        place.put(notes[i]?.text);
      }),
    ),
  );
}

/** Room that was made below a table and never became part of it: what stands below has moved down all the same. */
async function findInserted(
  context: Excel.RequestContext,
  growths: readonly Growth[],
  tables: readonly TableInfo[],
): Promise<readonly Growth[]> {
  const waiting = growths.filter(
    ({ way, table }) =>
      way === "inserted" &&
      tables.some(({ name, area }) => sameName(name, table.name) && area.rows === table.area.rows),
  );
  if (waiting.length === 0) return [];
  const found = waiting.map((growth) => ({ growth, below: usedBelow(context, growth.table.area) }));
  await context.sync();
  return found
    .filter(
      ({ growth, below }) =>
        !below.isNullObject && below.rowIndex + below.rowCount - 1 >= growth.lastBelow + growth.rows,
    )
    .map(({ growth }) => growth);
}

function plainCells(tables: readonly TableInfo[], name: string): Operation[] {
  return tables.some((table) => sameName(table.name, name))
    ? [operation((context) => context.workbook.tables.getItem(name).convertToRange())]
    : [];
}

/** Take away the rows at the end and the columns at the right that a table has too many. */
function shrink(tables: readonly TableInfo[], was: TableInfo, growths: readonly Growth[]): Operation[] {
  const now = tables.find((table) => sameName(table.name, was.name));
  if (!now) return [];
  const rows = now.area.rows - was.area.rows;
  const columns = now.area.columns - was.area.columns;
  const growth = growths.find(({ table }) => sameName(table.name, was.name));
  return [
    ...Array.from({ length: Math.max(0, columns) }, (_, i) =>
      operation((context) => {
        context.workbook.tables
          .getItem(was.name)
          .columns.getItemAt(now.area.columns - 1 - i)
          .delete();
      }),
    ),
    ...(rows > 0 && growth
      ? [
          operation((context) => {
            takeRows(context, was, growth, rows);
          }),
        ]
      : []),
  ];
}

/** Rows that were written where they are leave the table; their cells are brought back with the others. */
function takeRows(context: Excel.RequestContext, was: TableInfo, { way, gap }: Growth, rows: number): void {
  if (way === "below") resizeTable(context, was, was.area.rows);
  else if (way === "inserted") rangeOf(context, gap).delete("Up");
  else {
    const body = context.workbook.tables.getItem(was.name).getDataBodyRange();
    body
      .getLastRow()
      .getOffsetRange(1 - rows, 0)
      .getResizedRange(rows - 1, 0)
      .delete("Up");
  }
}

function dropSheet(sheets: readonly string[], name: string): Operation[] {
  return sheets.some((sheet) => sameName(sheet, name))
    ? [
        operation((context) => {
          context.workbook.worksheets.getItem(name).delete();
        }),
      ]
    : [];
}

/** Operations that bring back how a part was. */
export function restorePart({ area, inputs, looks }: SavedPart): Operation[] {
  return [
    ...writeOperations(
      (context, row, rows, columns) => rangeOf(context, { ...area, row: area.row + row, rows, columns }),
      inputs,
    ),
    ...(looks
      ? [
          operation((context) => {
            rangeOf(context, area).setCellProperties(looks);
          }, bytesOf(looks)),
        ]
      : []),
  ];
}
