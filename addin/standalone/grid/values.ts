import type { ICellData, Nullable } from "@univerjs/core";
import { CellValueType, isRealNum } from "@univerjs/core";
import { ERROR_TYPE_SET } from "@univerjs/engine-formula";
import type { Cell } from "../../chart/cell.ts";
import { isCellError } from "../../chart/cell.ts";

const errorTexts: ReadonlySet<unknown> = ERROR_TYPE_SET;

/** What a grid cell holds → a cell. Empty text is blank, as an empty cell is. */
export function toCell(data: Nullable<ICellData>): Cell {
  const value = data?.v ?? richText(data);
  if (value === undefined || value === "") return undefined;
  if (data?.t === CellValueType.BOOLEAN) return value === 1 || value === true || value === "TRUE";
  if (typeof value === "string" && errorTexts.has(value)) return { error: value };
  return value;
}

/** A cell → what the grid stores. Text stays text, whatever it looks like. */
export function toCellData(value: Cell): Pick<ICellData, "v" | "t"> {
  if (value === undefined || value === "") return { v: null, t: null };
  if (isCellError(value)) return { v: value.error, t: CellValueType.STRING };
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: looksLikeValue(value) ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

/** Text that the grid would read as a number or a truth value if it were not told otherwise. */
function looksLikeValue(text: string): boolean {
  return isRealNum(text) || /^(true|false)$/i.test(text);
}

/** Text with parts in different type is kept apart by the grid; only its words count here. */
function richText(data: Nullable<ICellData>): string | undefined {
  return data?.p?.body?.dataStream.replace(/\r\n$/, "").replaceAll("\r", "\n");
}
