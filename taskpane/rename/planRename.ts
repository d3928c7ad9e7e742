import { figureKey } from "../../addin/chart/find.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { CellAddress, Edit, Workbook } from "../../addin/workbook/port.ts";
import type { Place, PlaceKind } from "./places.ts";
import { chosenPlaces, findPlaces, placeEdits } from "./places.ts";
import { separator } from "./inFormula.ts";
import type { NamesColumn } from "./renames.ts";
import { namesColumns, readNames } from "./renames.ts";

/** A table with the names of its rows; “” for a row without one. */
export interface NamesTable {
  readonly column: NamesColumn;
  readonly names: readonly string[];
}

/** Another name for a row of a table, and what else says the old one. */
export interface PlannedRename {
  readonly table: string;
  readonly at: CellAddress;
  readonly from: string;
  readonly to: string;
  readonly places: readonly Place[];
}

/** The tables of the workbook whose rows have names. */
export async function readNamesTables(
  workbook: Pick<Workbook, "tables" | "readTable">,
): Promise<readonly NamesTable[]> {
  const columns = namesColumns(await workbook.tables());
  const names = await Promise.all(columns.map((column) => readNames(workbook, column)));
  return columns.map((column, i) => ({ column, names: names[i] ?? [] }));
}

/**
 * Plans another name for a row of a table. Where only case or spacing changes, everything finds it all the same.
 *
 * @param row within the names, from 0
 * @throws {InputError} when the name cannot be given, saying why
 */
export async function planRename(
  workbook: Workbook,
  { column, names }: NamesTable,
  row: number,
  wanted: string,
): Promise<PlannedRename> {
  const { what, area, table } = column;
  const from = names[row] ?? "";
  const to = wanted.trim();
  checkNewName({ names, row, what }, to);
  const at = { sheet: area.sheet, row: area.row + row, column: area.column };
  const [cell] = await workbook.findCells(
    (each) => each.at.sheet === at.sheet && each.at.row === at.row && each.at.column === at.column,
  );
  if (cell?.isFormula) {
    throw new InputError(`The name “${from}” comes from a formula in its cell. Change it there.`);
  }
  if (cell?.closed !== undefined) {
    throw new InputError(`The name “${from}” cannot be changed, because ${cell.closed}.`);
  }
  const isSame = figureKey(from) === figureKey(to);
  const rename = { what, table: table.name, from: [from], to };
  return {
    table: table.name,
    at,
    from,
    to,
    places: isSame ? [] : await findPlaces(workbook, rename),
  };
}

/** Most characters of a name: a text in a formula has no more. Source: Microsoft, “Excel specifications and limits”. */
const longestName = 255;

/** @throws {InputError} saying what is wrong with a new name for a row */
export function checkNewName(
  given: { readonly names: readonly string[]; readonly row: number; readonly what: "figure" | "pattern" },
  to: string,
): void {
  const { names, row, what } = given;
  const from = names[row] ?? "";
  if (to === "") throw new InputError("Type the new name.");
  if (to === from) throw new InputError(`“${from}” is its name already. Type another one.`);
  if (to.length > longestName) {
    throw new InputError(
      `The name has ${String(to.length)} characters, and a formula takes ${String(longestName)}. Type a shorter one.`,
    );
  }
  const rowsOf = (name: string): readonly number[] =>
    names.flatMap((each, i) => (figureKey(each) === figureKey(name) ? [i] : []));
  if (rowsOf(from).length > 1) {
    throw new InputError(
      `“${from}” stands in the table ${String(rowsOf(from).length)} times, so that nobody can tell which of them a formula means. Type the new name into its cell.`,
    );
  }
  const taken = rowsOf(to).find((each) => each !== row);
  if (taken !== undefined) {
    throw new InputError(`“${names[taken] ?? to}” is the name of another ${what} already. Type another one.`);
  }
  if (what === "pattern" && separator.test(to)) {
    throw new InputError(
      "The code of a pattern has no comma or semicolon: they stand between codes under Worn over. Type another one.",
    );
  }
}

/** The edits of a planned rename, with the kinds of places that are chosen. */
export function renameEdits(planned: PlannedRename, chosen: ReadonlySet<PlaceKind>): readonly Edit[] {
  const { at, to, places } = planned;
  return [{ kind: "cells", at, cells: [[{ value: to }]] }, ...placeEdits(chosenPlaces(places, chosen))];
}
