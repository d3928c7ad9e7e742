import type { Cell, Cells } from "../addin/chart/cell.ts";
import { isCellError } from "../addin/chart/cell.ts";

/** A workbook has one chart or two that most of its formulas read. */
const usuallyKept = 4;

/**
 * A reader that reads equal cells once: many formulas of a workbook name the same chart, and a host hands its cells over anew
 * to each. It answers as `read` does, only sooner; what it gave last is kept, and given again, so nobody may change it.
 *
 * @param read gives the same for equal cells; what it throws is not kept
 * @param kept how many different tables to keep
 */
export function readOnce<T>(read: (cells: Cells) => T, kept = usuallyKept): (cells: Cells) => T {
  const known: { readonly cells: Cells; readonly result: T }[] = [];
  return (cells) => {
    const at = known.findIndex((each) => areEqual(each.cells, cells));
    const found = at < 0 ? { cells, result: read(cells) } : known[at]!;
    if (at >= 0) known.splice(at, 1);
    known.unshift(found);
    known.splice(kept);
    return found.result;
  };
}

function areEqual(one: Cells, other: Cells): boolean {
  return (
    one.length === other.length &&
    one.every((row, r) => {
      const beside = other[r]!;
      return row.length === beside.length && row.every((cell, c) => isSame(cell, beside[c]));
    })
  );
}

function isSame(a: Cell, b: Cell): boolean {
  return a === b || (isCellError(a) && isCellError(b) && a.error === b.error);
}
