import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { TableColumn, TableRow } from "./tableRows.ts";
import { percentAt, placeIn } from "./tableRows.ts";

/** A cloth that stretches to three times its length is the most that is believed. */
const most = 2;

/**
 * How far a cloth stretches, as a fraction; 0 where it is blank. A plain number above 3 is a percentage, one up to 1 a
 * share (a cell in percent format arrives so); between them nobody can tell.
 *
 * @throws {InputError} naming row and column
 */
export function readStretch(row: TableRow, column: TableColumn | undefined): number {
  const given = percentAt(row, column);
  if (!given || given.value === 0) return 0;
  const { value, written } = given;
  if (value < 0) {
    throw new InputError(`${placeIn(row, column)}: ${quote(written)} is below zero. Write 0 or more.`);
  }
  const isPercent = given.isPercent ?? (value > 1 ? true : undefined);
  if (given.isPercent === undefined && value > 1 && value <= 3) {
    throw new InputError(
      `${placeIn(row, column)}: ${quote(written)} can be ${written} % or ${String(value * 100)} %. Type it with its sign, as text.`,
    );
  }
  const fraction = isPercent === true || value > 1 ? value / 100 : value;
  if (fraction <= most) return fraction;
  throw new InputError(
    `${placeIn(row, column)}: ${quote(written)} would be a stretch of ${String(Math.round(fraction * 100))} %, and no cloth stretches by more than 200 %. Write 25 % as 25%.`,
  );
}
