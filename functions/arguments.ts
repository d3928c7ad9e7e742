import type { Cell, Cells } from "../addin/chart/cell.ts";
import { cellText, isBlank, isCellError } from "../addin/chart/cell.ts";
import { InputError } from "../addin/measures/inputError.ts";

/** One argument of a worksheet function: how it is declared to hosts, and how its raw value is read. */
export interface Parameter<T> {
  readonly help: string;
  readonly optional: boolean;
  readonly shape: "scalar" | "range";
  readonly type: "number" | "text" | "any";
  /** @throws {InputError} naming the parameter and what was read */
  read(raw: unknown, name: string): T;
}

/**
 * What hosts pass → a rectangle of cells. A scalar becomes 1×1; `null`, `undefined` and `""` become an empty
 * cell; short rows are filled with empty cells; error objects become `{ error }`.
 */
export function toCells(raw: unknown): Cells {
  const rows = Array.isArray(raw) ? raw : [[raw]];
  const grid = rows.map((row: unknown) => (Array.isArray(row) ? row : [row]).map(toCell));
  const width = Math.max(1, ...grid.map((row) => row.length));
  return grid.map((row) => [...row, ...Array<Cell>(width - row.length).fill(undefined)]);
}

/** One raw host value → a cell. */
export function toCell(raw: unknown): Cell {
  if (raw === null || raw === undefined || raw === "") return undefined;
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : { error: "#NUM!" };
  if (typeof raw === "string" || typeof raw === "boolean") return raw;
  if (typeof raw === "object") return objectToCell(raw);
  return undefined;
}

/** Hosts pass errors and rich values as objects: `{ error }`, or Office’s `{ type, basicValue }`. */
function objectToCell(raw: object): Cell {
  if ("error" in raw) return { error: String(raw.error) };
  if ("basicValue" in raw) {
    const basic = toCell(raw.basicValue);
    return "type" in raw && raw.type === "Error" ? { error: cellText(basic) } : basic;
  }
  return { error: "#VALUE!" };
}
