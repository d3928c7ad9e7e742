import type { CellValueType, ICellData, IStyleData, Nullable } from "@univerjs/core";
import type { ErrorType } from "@univerjs/engine-formula";
import type { Cell } from "../../chart/cell.ts";
import { isCellError } from "../../chart/cell.ts";

// The page reads kept cells before the grid is there, so nothing of the grid but its types is used here.

/** The grid’s numbers for what a cell holds. */
const kinds = {
  string: 1 satisfies CellValueType.STRING,
  number: 2 satisfies CellValueType.NUMBER,
  boolean: 3 satisfies CellValueType.BOOLEAN,
  forcedString: 4 satisfies CellValueType.FORCE_STRING,
};

/** Every error value of the grid. */
const errorTexts: Readonly<Record<`${ErrorType}`, true>> = {
  ...{ "#DIV/0!": true, "#NAME?": true, "#VALUE!": true, "#NUM!": true, "#N/A": true, "#CYCLE!": true },
  ...{ "#REF!": true, "#SPILL!": true, "#CALC!": true, "#ERROR!": true, "#GETTING_DATA": true },
  "#NULL!": true,
};

/** What a grid cell holds → a cell. Empty text is blank, as an empty cell is. */
export function toCell(data: Nullable<ICellData>): Cell {
  const value = data?.v ?? richText(data);
  if (value === undefined || value === "") return undefined;
  if (data?.t === kinds.boolean) return value === 1 || value === true || value === "TRUE";
  if (typeof value === "string" && Object.hasOwn(errorTexts, value)) return { error: value };
  return value;
}

/** A cell → what the grid stores. Text stays text, whatever it looks like. */
export function toCellData(value: Cell): Pick<ICellData, "v" | "t"> {
  if (value === undefined || value === "") return { v: null, t: null };
  if (isCellError(value)) return { v: value.error, t: kinds.string };
  if (typeof value === "number") return { v: value, t: kinds.number };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: kinds.boolean };
  return { v: value, t: looksLikeValue(value) ? kinds.forcedString : kinds.string };
}

/** Text that the grid would read as a number or a truth value if it were not told otherwise. */
function looksLikeValue(text: string): boolean {
  return (text.trim() !== "" && !Number.isNaN(Number(text))) || /^(true|false)$/i.test(text);
}

/** Text with parts in different type is kept apart by the grid; only its words count here. */
function richText(data: Nullable<ICellData>): string | undefined {
  return data?.p?.body?.dataStream.replace(/\r\n$/, "").replaceAll("\r", "\n");
}

/** The number format as spreadsheets write it; `undefined` for the usual one. */
export function formatOf(style: Nullable<IStyleData>): string | undefined {
  const pattern = style?.n?.pattern;
  if (!pattern || pattern === "General") return undefined;
  return pattern === "@@@" ? "@" : pattern;
}
