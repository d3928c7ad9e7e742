import type { Cell } from "../chart/cell.ts";

/**
 * A whole workbook as plain data: what the demo is written in, what `.xlsx` files are read into and written
 * from, and what an embedded grid loads and saves. Formulas are in English with commas, with the leading `=`,
 * and call our functions by their public names (`=FIT.GROUPS(Figures[#All])`).
 */
export interface WorkbookContent {
  readonly sheets: readonly SheetContent[];
}

export interface SheetContent {
  readonly name: string;
  /** Row by row from A1; rows may differ in length; `undefined` is an untouched cell. */
  readonly cells: readonly (readonly (CellContent | undefined)[])[];
  readonly frozenRows?: number;
  readonly frozenColumns?: number;
  /** In pixels, by column from A; `undefined` keeps the host’s width. */
  readonly columnWidths?: readonly (number | undefined)[];
  /** The paper that it is printed on; that of the printer where left out. */
  readonly paper?: "A4" | "Letter";
  readonly tables?: readonly TableContent[];
  readonly notes?: readonly NoteContent[];
  readonly pickLists?: readonly PickListContent[];
}

export interface CellContent {
  /** The value, or the last calculated value of `formula`. */
  readonly value?: Cell;
  readonly formula?: string;
  /** Size of the area that an array formula fills, itself included. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** True for the cells that another cell’s formula fills. Never stored as input. */
  readonly spilled?: boolean;
  /** Number format code, for example `0.0` or `@`. */
  readonly format?: string;
  readonly style?: CellStyle;
}

/**
 * The few looks that sheets of ours use; each host draws them in its own way. A cell of the look `verdict` shows a verdict with
 * its sign and colour, whatever a formula puts there; it comes with a new sheet only. An `amount` is a length in words, such as a
 * range, that stands at the right as numbers do.
 */
export type CellStyle = "title" | "quiet" | "heading" | "wrap" | "amount" | "marked" | "verdict";

/** A table with headings in its first row. Rows and columns from 0, size with headings. */
export interface TableContent {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export interface NoteContent {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** Cells that offer words to choose from; something else can be typed all the same. Rows and columns from 0. */
export interface PickListContent {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  /** Words without commas, at most 255 characters in all; or what stands in a column of a table, as it is at the time. */
  readonly from: readonly string[] | { readonly table: string; readonly heading: string };
}
