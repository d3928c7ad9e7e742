import type { Area } from "./port.ts";

/** Rows and columns of the largest sheet that both hosts hold. */
export const sheetLimit = { rows: 1_048_576, columns: 16_384 } as const;

/** Letters of a column from 0: 0 → A, 26 → AA. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26);
  return (before > 0 ? columnLetters(before - 1) : "") + String.fromCharCode(65 + (column % 26));
}

/** Name of a cell, rows and columns from 0: (0, 0) → A1. */
export function cellName(row: number, column: number): string {
  return `${columnLetters(column)}${String(row + 1)}`;
}

/** Name of an area within its sheet: `A1:C5`, or `A1` for one cell. */
export function areaName({ row, column, rows, columns }: Omit<Area, "sheet">): string {
  const first = cellName(row, column);
  return rows === 1 && columns === 1 ? first : `${first}:${cellName(row + rows - 1, column + columns - 1)}`;
}

/** True when two areas of the same sheet have a cell in common. The sheet is not looked at. */
export function areasMeet(a: Omit<Area, "sheet">, b: Omit<Area, "sheet">): boolean {
  return (
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows &&
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns
  );
}
