/** An error value in a cell, for example `{ error: "#N/A" }`. */
export interface CellError {
  readonly error: string;
}

/** One worksheet cell as the engine sees it; `undefined` is an empty cell. */
export type Cell = number | string | boolean | CellError | undefined;

/** A rectangle of cells, row by row. Every row has the same length once the argument module has read it. */
export type Cells = readonly (readonly Cell[])[];

export function isCellError(cell: Cell): cell is CellError {
  return typeof cell === "object";
}

/** True for an empty cell and for text of white space only. */
export function isBlank(cell: Cell): boolean {
  return cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** The same, and a number 0: some spreadsheets hand over an empty cell as 0. */
export function isEmpty(cell: Cell): boolean {
  return cell === 0 || isBlank(cell);
}

/** What a cell says, for messages and for text columns. */
export function cellText(cell: Cell): string {
  if (cell === undefined) return "";
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return String(cell).trim();
}

/** True for cells of the same size with the same content, kind by kind: 5 is not “5”. */
export function equalCells(one: Cells, other: Cells): boolean {
  if (one === other) return true;
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
