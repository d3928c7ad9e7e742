import { cellText, type Cell } from "../chart/cell.ts";
import { InputError } from "../measures/inputError.ts";
import { areaName, areasMeet, cellName } from "./address.ts";
import type { CellContent, SheetContent } from "./content.ts";
import { checkArea, tableNamed } from "./existing.ts";
import { checkSheetName, checkTableName, sameName } from "./names.ts";
import type { Area, Edit, TableInfo } from "./port.ts";

/** What has to be known of a workbook to tell whether edits can be applied. */
export interface WorkbookShape {
  readonly sheets: readonly string[];
  readonly tables: readonly TableInfo[];
  /** What the first row of an area holds now; asked only for areas that a `table` edit names. */
  readonly firstRow: (area: Area) => readonly Cell[];
}

type EditOf<K extends Edit["kind"]> = Extract<Edit, { kind: K }>;

/**
 * Check edits, in order, against the workbook that they are meant for, before anything is written.
 *
 * @throws {InputError} for the first edit that cannot be applied, naming what is wrong
 */
export function checkEdits(shape: WorkbookShape, edits: readonly Edit[]): void {
  edits.reduce((before, edit, index) => afterEdit(before, edit, edits.slice(0, index)), shape);
}

function afterEdit(shape: WorkbookShape, edit: Edit, earlier: readonly Edit[]): WorkbookShape {
  switch (edit.kind) {
    case "cells":
      checkCells(shape, edit);
      return shape;
    case "sheet":
      return withSheet(shape, edit.sheet);
    case "table":
      return withTable(shape, edit, earlier);
    case "rows":
      return withRows(shape, edit);
    case "column":
      return withColumn(shape, edit);
    case "mark":
      for (const cell of edit.cells) checkArea(shape, { ...cell, rows: 1, columns: 1 });
      return shape;
    case "note":
      checkArea(shape, { ...edit.at, rows: 1, columns: 1 });
      return shape;
    case "freeze":
      checkFreeze(shape, edit);
      return shape;
  }
}

function checkCells(shape: WorkbookShape, { at, cells }: EditOf<"cells">): void {
  checkArea(shape, { ...at, rows: cells.length, columns: widest(cells) });
  cells.forEach((row, i) => {
    row.forEach((cell, j) => {
      checkValue(cell?.value, cellName(at.row + i, at.column + j));
    });
  });
}

function withSheet(shape: WorkbookShape, sheet: SheetContent): WorkbookShape {
  checkSheetName(sheet.name);
  if (shape.sheets.some((name) => sameName(name, sheet.name))) {
    throw new InputError(`There is a sheet “${sheet.name}” already. Choose another name.`);
  }
  const started = { ...shape, sheets: [...shape.sheets, sheet.name] };
  checkCells(started, { kind: "cells", at: { sheet: sheet.name, row: 0, column: 0 }, cells: sheet.cells });
  checkFreeze(started, {
    kind: "freeze",
    sheet: sheet.name,
    rows: sheet.frozenRows ?? 0,
    columns: sheet.frozenColumns ?? 0,
  });
  for (const note of sheet.notes ?? [])
    checkArea(started, { ...note, sheet: sheet.name, rows: 1, columns: 1 });
  return (sheet.tables ?? []).reduce<WorkbookShape>((before, table) => {
    const area = { ...table, sheet: sheet.name };
    return withTable(before, { kind: "table", name: table.name, area }, [{ kind: "sheet", sheet }]);
  }, started);
}

function withTable(
  shape: WorkbookShape,
  { name, area }: EditOf<"table">,
  earlier: readonly Edit[],
): WorkbookShape {
  checkTableName(name);
  checkArea(shape, area);
  if (shape.tables.some((table) => sameName(table.name, name))) {
    throw new InputError(`There is a table “${name}” already. Choose another name.`);
  }
  if (area.rows < 2) {
    throw new InputError(
      `The table “${name}” needs a row of headings and at least one row below it; ${areaName(area)} has one row.`,
    );
  }
  refuseMeeting(shape, name, area);
  const headings = headingsOf(shape, area, earlier);
  checkHeadings(name, headings);
  return { ...shape, tables: [...shape.tables, { name, area, headings }] };
}

function withRows(shape: WorkbookShape, edit: EditOf<"rows">): WorkbookShape {
  const table = tableNamed(shape.tables, edit.table);
  edit.rows.forEach((row, i) => {
    if (row.length !== table.area.columns) {
      throw new InputError(
        `The table “${table.name}” has ${String(table.area.columns)} columns, but row ${String(i + 1)} of the new rows has ${String(row.length)} cells.`,
      );
    }
    row.forEach((value, j) => {
      checkValue(value, `row ${String(i + 1)} under “${table.headings[j] ?? ""}”`);
    });
  });
  const area = { ...table.area, rows: table.area.rows + edit.rows.length };
  return withGrownTable(shape, table, { ...table, area });
}

function withColumn(shape: WorkbookShape, edit: EditOf<"column">): WorkbookShape {
  const table = tableNamed(shape.tables, edit.table);
  const rows = table.area.rows - 1;
  if (edit.values.length !== rows) {
    throw new InputError(
      `The table “${table.name}” has ${String(rows)} rows, but the new column “${edit.heading}” has ${String(edit.values.length)} cells.`,
    );
  }
  edit.values.forEach((value, i) => {
    checkValue(value, `row ${String(i + 1)} under “${edit.heading}”`);
  });
  const headings = [...table.headings, edit.heading];
  checkHeadings(table.name, headings);
  const area = { ...table.area, columns: table.area.columns + 1 };
  return withGrownTable(shape, table, { ...table, area, headings });
}

function withGrownTable(shape: WorkbookShape, table: TableInfo, grown: TableInfo): WorkbookShape {
  const others = shape.tables.filter((other) => other !== table);
  refuseMeeting({ ...shape, tables: others }, table.name, grown.area);
  checkArea(shape, grown.area);
  return { ...shape, tables: shape.tables.map((other) => (other === table ? grown : other)) };
}

function refuseMeeting(shape: WorkbookShape, name: string, area: Area): void {
  const other = shape.tables.find(
    (table) => sameName(table.area.sheet, area.sheet) && areasMeet(table.area, area),
  );
  if (other) {
    throw new InputError(
      `The table “${name}” has no room on sheet “${area.sheet}”: the table “${other.name}” is in the way at ${areaName(other.area)}. Move one of them first.`,
    );
  }
}

function checkFreeze(shape: WorkbookShape, { sheet, rows, columns }: EditOf<"freeze">): void {
  checkArea(shape, { sheet, row: 0, column: 0, rows: Math.max(rows, 1), columns: Math.max(columns, 1) });
}

function checkHeadings(table: string, headings: readonly string[]): void {
  headings.forEach((heading, i) => {
    if (heading === "") {
      throw new InputError(`Column ${String(i + 1)} of the table “${table}” has no heading. Give it one.`);
    }
    if (headings.slice(0, i).some((other) => sameName(other, heading))) {
      throw new InputError(
        `The table “${table}” would have two columns with the heading “${heading}”. Rename one of them.`,
      );
    }
  });
}

function checkValue(value: Cell, where: string): void {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new InputError(
      `${where} cannot hold “${String(value)}”: it is not a number that a sheet can keep.`,
    );
  }
  if (typeof value === "string" && value.length > 32_767) {
    throw new InputError(
      `The text for ${where} has ${String(value.length)} characters; a cell holds 32,767. It begins “${value.slice(0, 40)}”.`,
    );
  }
}

/** The headings of an area once earlier edits are applied to what it holds now. */
function headingsOf(shape: WorkbookShape, area: Area, earlier: readonly Edit[]): string[] {
  const isNew = earlier.some((edit) => edit.kind === "sheet" && sameName(edit.sheet.name, area.sheet));
  const now = isNew ? [] : shape.firstRow(area);
  return Array.from({ length: area.columns }, (_, j) => {
    const written = earlier.reduce<CellContent | undefined>(
      (last, edit) => writtenTo(edit, area.sheet, area.row, area.column + j) ?? last,
      undefined,
    );
    return cellText(written ? written.value : now[j]);
  });
}

function writtenTo(edit: Edit, sheet: string, row: number, column: number): CellContent | undefined {
  if (edit.kind === "sheet" && sameName(edit.sheet.name, sheet)) return edit.sheet.cells[row]?.[column];
  if (edit.kind === "cells" && sameName(edit.at.sheet, sheet)) {
    return edit.cells[row - edit.at.row]?.[column - edit.at.column];
  }
  return undefined;
}

/** Cells in the longest row. */
export function widest(rows: readonly (readonly unknown[])[]): number {
  return rows.reduce((most, row) => Math.max(most, row.length), 0);
}
