import { cellRef, rangeRef, type Cell as StoredCell, type WriteOptions, type WriteSheet } from "hucre/xlsx";
import { isCellError, type Cell } from "../../chart/cell.ts";
import type { CellContent, SheetContent, TableContent } from "../content.ts";
import { footer, printed } from "../printed.ts";
import { storedWidth } from "./columnWidth.ts";
import { errorMark, isStorableError } from "./errorValues.ts";
import { storedStyle } from "./looks.ts";
import { sheetPrefix, storedPickLists } from "./pickLists.ts";
import type { Referable } from "./readFormula.ts";
import { storedFormula, type StoredFormula } from "./storedFormula.ts";
import { rowHeights } from "./rowHeights.ts";
import { storedHeading, storedText } from "./storedText.ts";
import { tableHeadings } from "./tableHeadings.ts";
import { storedVerdicts } from "./verdictRules.ts";

type NamedRange = NonNullable<WriteOptions["namedRanges"]>[number];

/** In inches. A landscape page is then about 1050 pixels wide. */
const margins = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.5, header: 0.3, footer: 0.3 };

/** What the sheets of one file have in common. */
export interface Book extends Referable {
  /** False writes the values that formulas gave last in their place. */
  readonly formulas: boolean;
  readonly content: readonly SheetContent[];
}

export interface StoredSheet {
  readonly sheet: WriteSheet;
  /** What is printed on every page. */
  readonly repeated: NamedRange | undefined;
  /** In short phrases, what is not in the file as it is in the workbook. */
  readonly changed: readonly string[];
}

/** One sheet in the terms of the file. */
export function storedSheet(sheet: SheetContent, book: Book): StoredSheet {
  const tables = (sheet.tables ?? []).map((table) => ({ ...table, rows: Math.max(table.rows, 2) }));
  const headings = new Map(tables.flatMap((table) => headingCells(table, sheet)));
  const cells = new Map<string, Partial<StoredCell>>();
  const changed: string[] = [];
  const put = (row: number, column: number, cell: Partial<StoredCell>) => {
    const key = `${String(row)},${String(column)}`;
    cells.set(key, { ...cells.get(key), ...cell });
  };
  sheet.cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (!cell) return;
      const stored = storedCell(cell, r, c, book, tableAt(tables, r, c)?.name);
      put(r, c, stored.cell);
      if (stored.refused !== undefined)
        changed.push(
          `the formula in ${cellRef(r, c)} on sheet “${sheet.name}”, which Excel cannot read (${stored.refused})`,
        );
    });
  });
  for (const [key, value] of headings) {
    const { style } = cells.get(key) ?? {};
    cells.set(key, { ...(style && { style }), ...storedValue(value) });
  }
  for (const { row, column, text } of sheet.notes ?? [])
    put(row, column, { comment: { text: storedText(text) } });
  const lists = storedPickLists(sheet, book.content);
  const rules = storedVerdicts(sheet.cells);
  const stored: WriteSheet = {
    name: sheet.name,
    cells,
    ...(rules.length > 0 && { conditionalRules: rules }),
    ...(lists.length > 0 && { dataValidations: lists }),
    pageSetup: paper(sheet),
    headerFooter: { oddFooter: `&L${footer.left}&R${footer.right}` },
    rowDefs: new Map([...rowHeights(sheet)].map(([row, height]) => [row, { height }])),
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
  return { sheet: stored, repeated: repeated(sheet), changed };
}

function storedCell(
  cell: CellContent,
  row: number,
  column: number,
  book: Book,
  table: string | undefined,
): { readonly cell: Partial<StoredCell>; readonly refused?: string } {
  const style = storedStyle(cell.style, cell.format);
  const styled = (content: Partial<StoredCell>) => ({ ...(style && { style }), ...content });
  if (!book.formulas || cell.formula === undefined) {
    // A formula that shows nothing leaves an empty cell, not one with a text of no letters.
    const isBlank = !book.formulas && cell.value === "" && (cell.spilled || cell.formula !== undefined);
    return { cell: styled(isBlank ? {} : storedValue(cell.value)) };
  }
  const formula = storedFormula(cell.formula, book, table);
  if (typeof formula === "string") return { cell: styled(storedValue(cell.formula)), refused: formula };
  return { cell: styled(storedFormulaCell(formula, cell, row, column)) };
}

function storedFormulaCell(
  { formula, fills }: StoredFormula,
  { value, spill }: CellContent,
  row: number,
  column: number,
): Partial<StoredCell> {
  const { rows, columns } = spill ?? { rows: 1, columns: 1 };
  const result = formulaResult(value);
  return {
    formula,
    ...(result !== undefined && { formulaResult: result }),
    // Any other form makes Excel show our functions with an `@`, and cut their tables to one cell.
    ...((fills || spill !== undefined) && {
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

function paper(sheet: SheetContent): NonNullable<WriteSheet["pageSetup"]> {
  return {
    orientation: "landscape",
    ...(sheet.paper && { paperSize: sheet.paper === "A4" ? "a4" : "letter" }),
    margins,
    fitToPage: true,
    fitToWidth: printed(sheet).pagesAcross,
    fitToHeight: 0,
  };
}

/** What stands on every page again. Source of the name: ECMA-376 part 1, 18.2.5 (definedName). */
function repeated(sheet: SheetContent): NamedRange | undefined {
  const { name } = sheet;
  const { rows, columns } = printed(sheet);
  const ranges = [columns, rows].flatMap((range) => (range === undefined ? [] : [sheetPrefix(name) + range]));
  return ranges.length > 0 ? { name: "_xlnm.Print_Titles", scope: name, range: ranges.join(",") } : undefined;
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
