import type { Cell } from "../../chart/cell.ts";
import { widest } from "../checkEdits.ts";
import type { CellContent, SheetContent } from "../content.ts";
import type { Area, CellAddress, Edit } from "../port.ts";
import { verdictBlocks } from "../verdictCells.ts";
import { cellKey, marksIn } from "../touched.ts";
import { inputs, writeOperations, type Inputs, type RangeAt } from "./cellInput.ts";
import { putFrozen } from "./freeze.ts";
import type { Growth } from "./growth.ts";
import { lookOperations, showVerdicts } from "./looks.ts";
import { addNote, type NotePlace } from "./notes.ts";
import { putPrintSetUp } from "./printSetUp.ts";
import { rangeOf } from "./ranges.ts";
import { bytesOf, operation, type Operation } from "./requests.ts";

type CellRows = readonly (readonly (CellContent | undefined)[])[];

/** What was found where edits are going to write. */
export interface Found {
  /** Number formats of an area that an edit names. */
  readonly formatsOf: (area: Area) => readonly (readonly string[])[];
  /** How a table that gets rows gets them. */
  readonly growthOf: (table: string) => Growth | undefined;
  readonly noteAt: (at: CellAddress) => NotePlace | undefined;
}

/** The operations of one edit, in order; marks are put afterwards, on what cells hold then. */
export function editOperations(edit: Edit, found: Found): Operation[] {
  switch (edit.kind) {
    case "cells":
      return cellOperations(edit.at, edit.cells, found.formatsOf);
    case "sheet":
      return sheetOperations(edit.sheet);
    case "table":
      return [tableOperation(edit.name, edit.area)];
    case "rows":
      return rowOperations(edit.rows, found.growthOf(edit.table));
    case "column":
      return columnOperations(edit.table, [edit.heading, ...edit.values]);
    case "mark":
      return [];
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
    ...verdictBlocks(sheet.cells).map((block) =>
      operation((context) => {
        showVerdicts(rangeOf(context, { ...block, sheet: sheet.name }), block);
      }),
    ),
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
    ...(sheet.notes ?? []).map((note) =>
      operation((context) => {
        addNote(context, { ...note, sheet: sheet.name }, note.text);
      }),
    ),
    onSheet((added) => {
      putFrozen(added, sheet.frozenRows ?? 0, sheet.frozenColumns ?? 0);
      putPrintSetUp(added, sheet);
    }),
  ];
}

/** Where the edits of a phase put marks or take them away; of several words on one cell, the last. */
export function marksOf(
  edits: readonly Edit[],
): readonly { readonly at: CellAddress; readonly on: boolean }[] {
  const all = edits.flatMap((edit) => {
    switch (edit.kind) {
      case "mark":
        return edit.cells.map((at) => ({ at, on: edit.marked }));
      case "cells":
        return marksIn(edit.at, edit.cells).map((at) => ({ at, on: true }));
      case "sheet":
        return marksIn({ sheet: edit.sheet.name, row: 0, column: 0 }, edit.sheet.cells).map((at) => ({
          at,
          on: true,
        }));
      default:
        return [];
    }
  });
  return [...new Map(all.map((mark) => [cellKey(mark.at), mark])).values()];
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

function rowOperations(rows: readonly (readonly Cell[])[], growth: Growth | undefined): Operation[] {
  if (!growth || rows.length === 0) return [];
  const { table, way, gap } = growth;
  const make: readonly Operation[] =
    way === "inserted"
      ? [operation((context) => rangeOf(context, gap).insert("Down"))]
      : way === "added"
        ? [
            operation(
              (context) => {
                const blank = rows.map((row) => row.map(() => ""));
                context.workbook.tables.getItem(table.name).rows.add(-1, blank);
              },
              rows.length * widest(rows) * 4,
            ),
          ]
        : [];
  return [...make, ...writeOperations(newRowsOf(growth), rowInputs(rows, growth))];
}

/**
 * What is left to do for new rows once they are part of their table: columns of formulas go on, and values are written
 * once more where the row above is formatted as text, which a table may have handed down to them.
 */
export function settlingOperations(edit: Edit, found: Found): Operation[] {
  const growth = edit.kind === "rows" ? found.growthOf(edit.table) : undefined;
  if (edit.kind !== "rows" || !growth) return [];
  const newRows = newRowsOf(growth);
  return [
    ...(growth.formats.includes("@") && growth.way !== "added"
      ? writeOperations(newRows, rowInputs(edit.rows, growth))
      : []),
    ...growth.formulas.flatMap((formula, j) =>
      formula === undefined ? [] : goOn(newRows, edit.rows, j, formula),
    ),
  ];
}

function rowInputs(rows: readonly (readonly Cell[])[], { formats }: Growth): Inputs {
  // Stated for every cell: a new row would take over “text” from a row above that an earlier edit made so.
  const usual = formats.map((format) => (format === "@" ? "General" : format));
  return inputs(
    rows.map((row) =>
      row.map((value, j) => (value === undefined ? undefined : { value, format: usual[j] ?? "General" })),
    ),
    [],
  );
}

function newRowsOf({ way, table, gap }: Growth): RangeAt {
  return (context, first, count, columns) =>
    way === "added"
      ? context.workbook.tables
          .getItem(table.name)
          .getDataBodyRange()
          .getLastRow()
          .getOffsetRange(first + 1 - gap.rows, 0)
          .getResizedRange(count - 1, 0)
      : rangeOf(context, { ...gap, row: gap.row + first, rows: count, columns });
}

/** A column of formulas goes on in those new rows that bring no value for it. */
function goOn(
  newRows: RangeAt,
  rows: readonly (readonly Cell[])[],
  column: number,
  formula: string,
): Operation[] {
  const blanks = rows.map((row) => [row[column] === undefined ? formula : null]);
  if (blanks.every(([cell]) => cell === null)) return [];
  return [
    operation((context) => {
      const cells = newRows(context, 0, rows.length, widest(rows)).getColumn(column);
      cells.formulasR1C1 = blanks;
    }, bytesOf(blanks)),
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
