import type { Area } from "./port.ts";
import { columnLetters } from "../chart/columnLetters.ts";

/** Rows and columns of the largest sheet that both hosts hold. */
export const sheetLimit = { rows: 1_048_576, columns: 16_384 } as const;

/** Number of a column from 1, in any case: A → 1, AA → 27. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

/** Row and column from 0 of a cell named as in `B3` or `$B$3`; `undefined` for anything else. */
export function cellNamed(name: string): { readonly row: number; readonly column: number } | undefined {
  const [, letters = "", digits = ""] = /^\$?([a-z]{1,3})\$?(\d{1,7})$/i.exec(name) ?? [];
  const [row, column] = [Number(digits) - 1, columnNumber(letters) - 1];
  const isOnSheet = row >= 0 && row < sheetLimit.rows && column >= 0 && column < sheetLimit.columns;
  return isOnSheet ? { row, column } : undefined;
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
