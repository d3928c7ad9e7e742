import { InputError } from "../addin/measures/inputError.ts";
import type { Numbers } from "./arguments.ts";
import { sizeInWords } from "./arguments.ts";
import type { Table } from "./descriptor.ts";
import { shown } from "./shown.ts";

/**
 * Two ranges cell by cell, as the signs + and − do it in a worksheet: a single cell, row or column is used again
 * for every row or column of the other range. Blank where either cell is blank.
 *
 * @throws {InputError} when the sizes do not go together
 */
export function together(
  first: { readonly name: string; readonly values: Numbers },
  second: { readonly name: string; readonly values: Numbers },
  combine: (a: number, b: number) => number,
): Table {
  const rows = common(first.values.length, second.values.length);
  const columns = common(first.values[0]?.length ?? 0, second.values[0]?.length ?? 0);
  if (rows === undefined || columns === undefined) {
    throw new InputError(
      `${first.name} is ${sizeInWords(first.values)} and ${second.name} is ${sizeInWords(second.values)}. ` +
        "Choose two ranges of the same size, or one cell, row or column to use for the whole other range.",
    );
  }
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => {
      const a = at(first.values, r, c);
      const b = at(second.values, r, c);
      return a === undefined || b === undefined ? "" : shown(combine(a, b));
    }),
  );
}

function common(a: number, b: number): number | undefined {
  if (a === b || b === 1) return a;
  return a === 1 ? b : undefined;
}

function at(values: Numbers, row: number, column: number): number | undefined {
  const line = values[values.length === 1 ? 0 : row] ?? [];
  return line[line.length === 1 ? 0 : column];
}
