import { widest } from "./checkEdits.ts";
import type { CellContent } from "./content.ts";
import type { Area, CellAddress, Edit } from "./port.ts";

/** What edits write to, each thing once: all that has to be saved beforehand so that they can be taken back. */
export interface Touched {
  readonly areas: readonly TouchedArea[];
  readonly newSheets: readonly string[];
  /** Tables made on sheets that were there before. */
  readonly newTables: readonly string[];
  readonly grownTables: readonly string[];
  readonly marks: readonly CellAddress[];
  readonly notes: readonly CellAddress[];
  /** Sheets whose frozen rows and columns change. */
  readonly frozen: readonly string[];
}

export interface TouchedArea {
  readonly area: Area;
  readonly cells: readonly (readonly (CellContent | undefined)[])[];
  /** True when a cell gets a look (other than a mark). */
  readonly styled: boolean;
}

/** What the edits of one phase touch. */
export function touched(edits: readonly Edit[]): Touched {
  return {
    areas: edits.flatMap((edit) => {
      if (edit.kind === "table") return [headingArea(edit.area)];
      return edit.kind === "cells" && widest(edit.cells) > 0 ? [touchedArea(edit.at, edit.cells)] : [];
    }),
    newSheets: edits.flatMap((edit) => (edit.kind === "sheet" ? [edit.sheet.name] : [])),
    newTables: edits.flatMap((edit) => (edit.kind === "table" ? [edit.name] : [])),
    grownTables: eachOnce(
      edits.flatMap((edit) => (edit.kind === "rows" || edit.kind === "column" ? [edit.table] : [])),
      (table) => table.toLowerCase(),
    ),
    marks: eachOnce(edits.flatMap(marksOf), cellKey),
    notes: eachOnce(
      edits.flatMap((edit) => (edit.kind === "note" ? [edit.at] : [])),
      cellKey,
    ),
    frozen: eachOnce(
      edits.flatMap((edit) => (edit.kind === "freeze" ? [edit.sheet] : [])),
      (sheet) => sheet.toLowerCase(),
    ),
  };
}

function touchedArea(at: CellAddress, cells: TouchedArea["cells"]): TouchedArea {
  return {
    area: { ...at, rows: cells.length, columns: widest(cells) },
    cells,
    styled: cells.some((row) => row.some((cell) => cell?.style !== undefined && cell.style !== "marked")),
  };
}

function marksOf(edit: Edit): CellAddress[] {
  if (edit.kind === "mark") return [...edit.cells];
  return edit.kind === "cells" ? marksIn(edit.at, edit.cells) : [];
}

/** Where cells, written from `at` on, have the style “marked”. */
export function marksIn(at: CellAddress, cells: TouchedArea["cells"]): CellAddress[] {
  return cells.flatMap((row, i) =>
    row.flatMap((cell, j) =>
      cell?.style === "marked" ? [{ sheet: at.sheet, row: at.row + i, column: at.column + j }] : [],
    ),
  );
}

/** A heading row may be turned into text by the host when it becomes part of a table. */
function headingArea(area: Area): TouchedArea {
  return {
    area: { ...area, rows: 1 },
    cells: [Array.from({ length: area.columns }, () => ({}))],
    styled: false,
  };
}

/** One text for one cell, whatever the case of the sheet’s name. */
export function cellKey({ sheet, row, column }: CellAddress): string {
  return `${String(row)} ${String(column)} ${sheet.toLowerCase()}`;
}

function eachOnce<T>(items: readonly T[], key: (item: T) => string): T[] {
  return [...new Map(items.map((item) => [key(item), item])).values()];
}
