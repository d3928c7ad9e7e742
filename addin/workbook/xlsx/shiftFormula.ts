import { colToLetter } from "hucre/xlsx";
import { columnNumber } from "../address.ts";
import { mapCode } from "./formulaPieces.ts";

const lastColumn = 16_384;
const lastRow = 1_048_576;

// Not a part of a longer name, nor a function’s or a sheet’s name.
const cell = /(?<![\p{L}\w.$])(\$?[A-Za-z]{1,3})(\$?\d{1,7})(?![\p{L}\w.(!])/gu;
const wholeColumns = /(?<![\p{L}\w.$])(\$?[A-Za-z]{1,3}):(\$?[A-Za-z]{1,3})(?![\p{L}\w.(!])/gu;
const wholeRows = /(?<![\p{L}\w.$])(\$?\d{1,7}):(\$?\d{1,7})(?![\p{L}\w.(!])/gu;

/**
 * A formula as it reads when copied some rows down and columns to the right: references without `$` move.
 * Files store a formula that was filled down only once, with the cells that share it.
 */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  const column = (letters: string) => movedColumn(letters, columns);
  const row = (digits: string) => movedRow(digits, rows);
  return mapCode(formula, (code) =>
    code
      .replace(cell, (whole, c: string, r: string) => together(whole, column(c), "", row(r)))
      .replace(wholeColumns, (whole, a: string, b: string) => together(whole, column(a), ":", column(b)))
      .replace(wholeRows, (_, a: string, b: string) => together("", row(a), ":", row(b))),
  );
}

/** Two moved halves of a reference; `whole` when it never was one; `#REF!` when it left the sheet. */
function together(whole: string, first: Moved, between: string, second: Moved): string {
  if (first === "other" || second === "other") return whole;
  return first === "outside" || second === "outside" ? "#REF!" : first + between + second;
}

/** The moved half, or `"outside"` the sheet, or `"other"`: not a column at all. */
type Moved = string;

function movedColumn(letters: string, by: number): Moved {
  const number = columnNumber(letters.replace("$", ""));
  if (number > lastColumn) return "other";
  if (letters.startsWith("$")) return letters;
  return number + by >= 1 && number + by <= lastColumn ? colToLetter(number + by - 1) : "outside";
}

function movedRow(digits: string, by: number): Moved {
  if (digits.startsWith("$")) return digits;
  const moved = Number(digits) + by;
  return moved >= 1 && moved <= lastRow ? String(moved) : "outside";
}
