import { cellRef, rangeRef, type Cell as StoredCell, type WriteSheet } from "hucre/xlsx";
import { isCellError, type Cell } from "../../chart/cell.ts";
import type { CellContent, SheetContent, TableContent } from "../content.ts";
import { storedWidth } from "./columnWidth.ts";
import { errorMark, isStorableError } from "./errorValues.ts";
import { storedStyle } from "./looks.ts";
import { storedPickLists } from "./pickLists.ts";
import { callsOurs, storedFormula } from "./storedFormula.ts";
import { storedHeading, storedText } from "./storedText.ts";
import { tableHeadings } from "./tableHeadings.ts";

const usualWidth = 64;
/** A landscape page is about 1000 pixels wide: letters of 11 points come out at 8 or more. */
const readableWidth = 1400;

/**
 * One sheet in the terms of the file.
 *
 * @param formulas whether to write formulas or only their values
 * @param sheets of the whole workbook, for lists to choose from
 */
export function storedSheet(
  sheet: SheetContent,
  formulas: boolean,
  sheets: readonly SheetContent[],
): WriteSheet {
  const tables = (sheet.tables ?? []).map((table) => ({ ...table, rows: Math.max(table.rows, 2) }));
  const headings = new Map(tables.flatMap((table) => headingCells(table, sheet)));
  const cells = new Map<string, Partial<StoredCell>>();
  const put = (row: number, column: number, cell: Partial<StoredCell>) => {
    const key = `${String(row)},${String(column)}`;
    cells.set(key, { ...cells.get(key), ...cell });
  };
  sheet.cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell) put(r, c, storedCell(cell, r, c, formulas, tableAt(tables, r, c)?.name));
    });
  });
  for (const [key, value] of headings) {
    const { style } = cells.get(key) ?? {};
    cells.set(key, { ...(style && { style }), ...storedValue(value) });
  }
  for (const { row, column, text } of sheet.notes ?? [])
    put(row, column, { comment: { text: storedText(text) } });
  const lists = storedPickLists(sheet, sheets);
  return {
    name: sheet.name,
    cells,
    ...(lists.length > 0 && { dataValidations: lists }),
    pageSetup: paper(sheet),
    ...(sheet.columnWidths && {
      columns: sheet.columnWidths.map((width) => (width === undefined ? {} : { width: storedWidth(width) })),
    }),
    ...((sheet.frozenRows || sheet.frozenColumns) && {
      freezePane: { rows: sheet.frozenRows ?? 0, columns: sheet.frozenColumns ?? 0 },
    }),
    ...(tables.length > 0 && {
      tables: tables.map((table) => ({
        name: table.name,
        range: rangeRef(
          table.row,
          table.column,
          table.row + table.rows - 1,
          table.column + table.columns - 1,
        ),
        columns: tableHeadings(table, sheet).map((name) => ({ name: storedHeading(name) })),
        style: "TableStyleLight1",
      })),
    }),
  };
}

function storedCell(
  cell: CellContent,
  row: number,
  column: number,
  formulas: boolean,
  table: string | undefined,
): Partial<StoredCell> {
  const style = storedStyle(cell.style, cell.format);
  return {
    ...(style && { style }),
    ...(formulas && cell.formula !== undefined
      ? { ...storedFormulaCell(cell.formula, cell, row, column, table) }
      : storedValue(cell.value)),
  };
}

function storedFormulaCell(
  formula: string,
  { value, spill }: CellContent,
  row: number,
  column: number,
  table: string | undefined,
): Partial<StoredCell> {
  const { rows, columns } = spill ?? { rows: 1, columns: 1 };
  // Any other form makes Excel show our functions with an `@`, and cut their tables to one cell.
  const fills = spill !== undefined || callsOurs(formula);
  const result = formulaResult(value);
  return {
    formula: storedFormula(formula, table),
    ...(result !== undefined && { formulaResult: result }),
    ...(fills && {
      formulaType: "array",
      formulaDynamic: true,
      formulaRef:
        rows * columns > 1
          ? rangeRef(row, column, row + rows - 1, column + columns - 1)
          : cellRef(row, column),
    }),
  };
}

function formulaResult(value: Cell): string | number | boolean | undefined {
  if (value === undefined) return undefined;
  if (isCellError(value)) return errorMark(value.error);
  if (typeof value === "number" && !Number.isFinite(value)) return errorMark("#NUM!");
  return typeof value === "string" ? storedText(value) : value;
}

function storedValue(value: Cell): Partial<StoredCell> {
  if (value === undefined) return {};
  if (isCellError(value)) return { value: isStorableError(value.error) ? value.error : "#VALUE!" };
  if (typeof value === "number" && !Number.isFinite(value)) return { value: "#NUM!" };
  // The writer takes text like “#N/A” for an error value, except as text of one or more letter styles.
  if (typeof value === "string" && value.startsWith("#")) return { richText: [{ text: storedText(value) }] };
  return { value: typeof value === "string" ? storedText(value) : value };
}

/** On paper, all columns side by side, unless they would become too small to read. */
function paper({ cells, columnWidths }: SheetContent): NonNullable<WriteSheet["pageSetup"]> {
  const columns = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const pixels = Array.from({ length: columns }, (_, i) => columnWidths?.[i] ?? usualWidth);
  const fits = pixels.reduce((sum, width) => sum + width, 0) <= readableWidth;
  return { orientation: "landscape", ...(fits && { fitToPage: true, fitToWidth: 1, fitToHeight: 0 }) };
}

function headingCells(table: TableContent, sheet: SheetContent): readonly (readonly [string, string])[] {
  return tableHeadings(table, sheet).map((name, i) => [
    `${String(table.row)},${String(table.column + i)}`,
    name,
  ]);
}

function tableAt(tables: readonly TableContent[], row: number, column: number): TableContent | undefined {
  return tables.find(
    (table) =>
      row >= table.row &&
      row < table.row + table.rows &&
      column >= table.column &&
      column < table.column + table.columns,
  );
}
