import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { BooleanNumber, LocaleType } from "@univerjs/core";
import { areasMeet } from "../../workbook/address.ts";
import { widest } from "../../workbook/checkEdits.ts";
import type { CellContent, NoteContent, SheetContent, WorkbookContent } from "../../workbook/content.ts";
import { lookChange } from "./cellLook.ts";
import { toGridFormula } from "./gridFormula.ts";
import { pickListResource, toRule } from "./pickLists.ts";
import { contentResults, resultsName } from "./keptResults.ts";
import { tableLookName } from "./tableLook.ts";
import { toCellData } from "./values.ts";

/** Room on a sheet, and below and beside what it holds: a table of patterns by figures is as wide as the chart is long. */
export const least = { rows: 1000, columns: 120, moreRows: 100, moreColumns: 8 };

const noteSize = { width: 240, height: 96 };

/** A workbook’s content as the grid opens it. */
export function toSnapshot(content: WorkbookContent, id: string): IWorkbookData {
  const sheets = content.sheets.map((sheet, i) => ({ id: `sheet-${String(i + 1)}`, sheet }));
  return {
    id,
    name: "Measure Book",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: sheets.map((each) => each.id),
    sheets: Object.fromEntries(sheets.map((each) => [each.id, toSheet(each.id, each.sheet)])),
    resources: [
      {
        name: "SHEET_TABLE_PLUGIN",
        data: JSON.stringify(
          Object.fromEntries(sheets.map((each) => [each.id, toTables(each.id, each.sheet)])),
        ),
      },
      {
        name: "SHEET_NOTE_PLUGIN",
        data: JSON.stringify(
          Object.fromEntries(sheets.map((each) => [each.id, toNotes(each.sheet.notes ?? [])])),
        ),
      },
      {
        name: pickListResource,
        data: JSON.stringify(
          Object.fromEntries(sheets.map((each) => [each.id, (each.sheet.pickLists ?? []).map(toRule)])),
        ),
      },
      { name: resultsName, data: JSON.stringify(contentResults(sheets)) },
    ],
  };
}

function toSheet(id: string, sheet: SheetContent): Partial<IWorksheetData> {
  return {
    id,
    name: sheet.name,
    ...sheetSize(sheet),
    cellData: toMatrix(sheet),
    freeze: toFreeze(sheet.frozenRows ?? 0, sheet.frozenColumns ?? 0),
    columnData: toColumnData(sheet),
    showGridlines: BooleanNumber.TRUE,
    ...customOf(sheet),
  };
}

/** What the grid keeps of a sheet without working with it. */
export function customOf({ paper }: SheetContent): Pick<Partial<IWorksheetData>, "custom"> {
  return paper === undefined ? {} : { custom: { paper } };
}

/** Rows and columns that a sheet needs, with room to go on. A width that is set counts: a result may fill that column. */
export function sheetSize(sheet: SheetContent): { rowCount: number; columnCount: number } {
  const columns = Math.max(widest(sheet.cells), sheet.columnWidths?.length ?? 0);
  return {
    rowCount: Math.max(least.rows, sheet.cells.length + least.moreRows),
    columnCount: Math.max(least.columns, columns + least.moreColumns),
  };
}

export function toColumnData(sheet: SheetContent): Record<number, { w: number }> {
  return Object.fromEntries(
    (sheet.columnWidths ?? []).flatMap((w, column) => (w === undefined ? [] : [[column, { w }]])),
  );
}

/** Frozen panes as the grid counts them: −1 where nothing is frozen. */
export function toFreeze(rows: number, columns: number) {
  return {
    ySplit: rows,
    xSplit: columns,
    startRow: rows > 0 ? rows : -1,
    startColumn: columns > 0 ? columns : -1,
  };
}

type Matrix = Record<number, Record<number, ICellData>>;

function toMatrix(sheet: SheetContent): Matrix {
  const matrix: Matrix = {};
  sheet.cells.forEach((row, i) => {
    row.forEach((cell, j) => {
      const data = cell && toStored(cell, tableAt(sheet, i, j));
      if (data) (matrix[i] ??= {})[j] = data;
    });
  });
  return matrix;
}

function toStored(cell: CellContent, table: string | undefined): ICellData | undefined {
  const { v, t } = toCellData(cell.spilled ? undefined : cell.value);
  const stored: ICellData = {
    ...(v !== null && { v, t }),
    ...(cell.formula !== undefined && !cell.spilled && { f: toGridFormula(cell.formula, table) }),
    ...lookChange(cell),
  };
  return Object.keys(stored).length > 0 ? stored : undefined;
}

function tableAt(sheet: SheetContent, row: number, column: number): string | undefined {
  return sheet.tables?.find((table) => areasMeet(table, { row, column, rows: 1, columns: 1 }))?.name;
}

function toTables(sheetId: string, sheet: SheetContent) {
  return (sheet.tables ?? []).map(({ name, row, column, rows, columns }) => ({
    id: `${sheetId}-${name}`,
    name,
    range: { startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column + columns - 1 },
    options: tableOptions,
    filters: { tableColumnFilterList: [] },
    columns: [],
    meta: {},
  }));
}

export const tableOptions = { showHeader: true, showFooter: false, tableStyleId: tableLookName } as const;

function toNotes(notes: readonly NoteContent[]) {
  const rows = new Set(notes.map((note) => note.row));
  return Object.fromEntries(
    [...rows].map((row) => [
      row,
      Object.fromEntries(notes.filter((note) => note.row === row).map((note) => [note.column, toNote(note)])),
    ]),
  );
}

export function toNote({ row, column, text }: NoteContent) {
  return {
    id: `note-${String(row)}-${String(column)}`,
    row,
    col: column,
    note: text,
    show: false,
    ...noteSize,
  };
}
