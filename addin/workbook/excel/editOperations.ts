import type { Cell } from "../../chart/cell.ts";
import { widest } from "../checkEdits.ts";
import type { CellContent, SheetContent } from "../content.ts";
import type { Area, CellAddress, Edit } from "../port.ts";
import { marksIn } from "../touched.ts";
import { inputs, writeOperations } from "./cellInput.ts";
import { putFrozen } from "./freeze.ts";
import { lookOperations } from "./looks.ts";
import { putMark, type MarkPlace } from "./marks.ts";
import { addNote, type NotePlace } from "./notes.ts";
import { cellOf, rangeOf } from "./ranges.ts";
import { operation, type Operation } from "./requests.ts";

type CellRows = readonly (readonly (CellContent | undefined)[])[];

/** What was found where edits are going to write. */
export interface Found {
  /** Number formats of an area that an edit names. */
  readonly formatsOf: (area: Area) => readonly (readonly string[])[];
  /** Number formats of the last row of a table, which new rows take over. */
  readonly lastRowFormats: (table: string) => readonly string[];
  readonly markAt: (at: CellAddress) => MarkPlace | undefined;
  readonly noteAt: (at: CellAddress) => NotePlace | undefined;
}

/** The operations of one edit, in order. */
export function editOperations(edit: Edit, found: Found): Operation[] {
  switch (edit.kind) {
    case "cells":
      return [
        ...cellOperations(edit.at, edit.cells, found.formatsOf),
        ...marksIn(edit.at, edit.cells).map((at) => operation(() => found.markAt(at)?.put(true))),
      ];
    case "sheet":
      return sheetOperations(edit.sheet);
    case "table":
      return [tableOperation(edit.name, edit.area)];
    case "rows":
      return rowOperations(edit.table, edit.rows, found.lastRowFormats(edit.table));
    case "column":
      return columnOperations(edit.table, [edit.heading, ...edit.values]);
    case "mark":
      return edit.cells.map((at) => operation(() => found.markAt(at)?.put(edit.marked)));
    case "note":
      return [operation(() => found.noteAt(edit.at)?.put(edit.text))];
    case "freeze":
      return [
        operation((context) => {
          putFrozen(context.workbook.worksheets.getItem(edit.sheet), edit.rows, edit.columns);
        }),
      ];
  }
}

function cellOperations(at: CellAddress, cells: CellRows, formatsOf: Found["formatsOf"]): Operation[] {
  const area = { ...at, rows: cells.length, columns: widest(cells) };
  if (area.rows === 0 || area.columns === 0) return [];
  return [
    ...writeOperations(
      (context, row, rows, columns) =>
        rangeOf(context, { sheet: at.sheet, row: at.row + row, column: at.column, rows, columns }),
      inputs(cells, formatsOf(area)),
    ),
    ...lookOperations(
      (context, row, column, columns) =>
        rangeOf(context, {
          sheet: at.sheet,
          row: at.row + row,
          column: at.column + column,
          rows: 1,
          columns,
        }),
      cells,
    ),
  ];
}

function sheetOperations(sheet: SheetContent): Operation[] {
  const start = { sheet: sheet.name, row: 0, column: 0 };
  const onSheet = (put: (added: Excel.Worksheet) => void) =>
    operation((context) => {
      put(context.workbook.worksheets.getItem(sheet.name));
    });
  return [
    operation((context) => context.workbook.worksheets.add(sheet.name)),
    ...cellOperations(start, sheet.cells, () => []),
    ...(sheet.columnWidths ?? []).flatMap((pixels, column) =>
      pixels === undefined
        ? []
        : [
            onSheet((added) => {
              // Excel counts in points, 72 to the inch; a pixel is 1/96 inch.
              added.getRangeByIndexes(0, column, 1, 1).format.columnWidth = pixels * 0.75;
            }),
          ],
    ),
    ...(sheet.tables ?? []).map((table) => tableOperation(table.name, { ...table, sheet: sheet.name })),
    ...marksIn(start, sheet.cells).map((at) => operation((context) => putMark(cellOf(context, at)))),
    ...(sheet.notes ?? []).map((note) =>
      operation((context) => {
        addNote(context, { ...note, sheet: sheet.name }, note.text);
      }),
    ),
    onSheet((added) => {
      putFrozen(added, sheet.frozenRows ?? 0, sheet.frozenColumns ?? 0);
    }),
  ];
}

/** A table over cells that hold its headings already. */
function tableOperation(name: string, area: Area): Operation {
  return operation((context) => {
    const table = context.workbook.worksheets.getItem(area.sheet).tables.add(rangeOf(context, area), true);
    table.name = name;
    table.style = "TableStyleLight1";
    // Bands would be left behind as fills if the table were turned into plain cells again.
    table.showBandedRows = false;
  });
}

function rowOperations(
  table: string,
  rows: readonly (readonly Cell[])[],
  formats: readonly string[],
): Operation[] {
  if (rows.length === 0) return [];
  // Stated for every cell: a new row would take over “text” from a row above that an earlier edit made so.
  const usual = formats.map((format) => (format === "@" ? "General" : format));
  const cells = rows.map((row) =>
    row.map((value, j) => (value === undefined ? undefined : { value, format: usual[j] ?? "General" })),
  );
  return [
    operation(
      (context) => {
        const blank = rows.map((row) => row.map(() => ""));
        context.workbook.tables.getItem(table).rows.add(-1, blank);
      },
      rows.length * widest(rows) * 4,
    ),
    ...writeOperations(
      (context, first, count) =>
        context.workbook.tables
          .getItem(table)
          .getDataBodyRange()
          .getLastRow()
          .getOffsetRange(first + 1 - rows.length, 0)
          .getResizedRange(count - 1, 0),
      inputs(cells, []),
    ),
  ];
}

function columnOperations(table: string, values: readonly Cell[]): Operation[] {
  return [
    operation((context) => context.workbook.tables.getItem(table).columns.add(-1)),
    ...writeOperations(
      (context, first, count) => {
        const column = context.workbook.tables.getItem(table).getHeaderRowRange().getLastColumn();
        return column.getOffsetRange(first, 0).getResizedRange(count - 1, 0);
      },
      inputs(
        values.map((value) => [{ value, format: "General" }]),
        [],
      ),
    ),
  ];
}
