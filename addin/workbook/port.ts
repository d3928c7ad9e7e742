import type { Cell, Cells } from "../chart/cell.ts";
import type { CellContent, SheetContent } from "./content.ts";

/** A rectangle on a sheet; rows and columns from 0. */
export interface Area {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export interface CellAddress {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export interface TableInfo {
  readonly name: string;
  /** Headings included. */
  readonly area: Area;
  readonly headings: readonly string[];
}

export interface RangeData {
  readonly area: Area;
  /** Calculated values; blank cells are `undefined`, error values `{ error }`. */
  readonly values: Cells;
  /** Number format of each cell (“General” where none is set), for finding fractions that became dates. */
  readonly formats: readonly (readonly string[])[];
}

/** One change to the workbook. A user action is a list of them, applied together and undone together. */
export type Edit =
  /**
   * Write cells, row by row. `undefined` leaves a cell as it is; `{ value: undefined }` empties it. Text stays
   * text, whatever it looks like. Format and style of a cell stay unless they are named.
   */
  | {
      readonly kind: "cells";
      readonly at: CellAddress;
      readonly cells: readonly (readonly (CellContent | undefined)[])[];
    }
  /** Add a sheet after the last one, with all that it holds. The name must be free. */
  | { readonly kind: "sheet"; readonly sheet: SheetContent }
  /** Turn an area whose first row holds headings into a table. The name must be free. */
  | { readonly kind: "table"; readonly name: string; readonly area: Area }
  /**
   * Add rows below the last row of a table; each row has one cell a column. Where a row has `undefined`, the formula of
   * the row above goes on; where that holds none, the cell stays empty.
   */
  | { readonly kind: "rows"; readonly table: string; readonly rows: Cells }
  /** Add a column to the right of a table: heading first, then one cell a row. */
  | {
      readonly kind: "column";
      readonly table: string;
      readonly heading: string;
      readonly values: readonly Cell[];
    }
  /**
   * Show readings as “look here”, or take that mark away. A mark belongs to what its cell holds: when the rows of a
   * table are sorted, it is on that reading afterwards, or gone.
   */
  | { readonly kind: "mark"; readonly cells: readonly CellAddress[]; readonly marked: boolean }
  /** Set, replace or (`undefined`) remove the note of a cell. */
  | { readonly kind: "note"; readonly at: CellAddress; readonly text: string | undefined }
  | { readonly kind: "freeze"; readonly sheet: string; readonly rows: number; readonly columns: number };

/** A cell as it was filled: a formula by its text, anything else by its value. */
export interface FoundCell {
  readonly at: CellAddress;
  /** A formula with its leading `=`, as typed; other text, or a number, as it stands in the cell. */
  readonly holds: string | number;
  readonly isFormula: boolean;
  /** Why nothing can be written there now, in words to follow “because”. */
  readonly closed?: string;
}

/** One cell, and no other with it, that the user gave another value, in whatever way; not a formula, where the host tells. */
export interface TypedCell {
  readonly row: number;
  readonly column: number;
  readonly before: Cell;
  readonly after: Cell;
}

/** Something changed by the user or by a recalculation (never by this port’s own `apply` or `undo`). */
export interface WorkbookChange {
  readonly sheet: string;
  /** In the order in which it happened; what changed several cells at once is not among it. */
  readonly typed?: readonly TypedCell[];
}

/**
 * All that the pane knows of a spreadsheet. Two adapters: Office.js and the embedded grid;
 * one contract suite runs against both.
 *
 * Every method rejects with an `InputError` when what it names is not there or cannot take the change.
 */
export interface Workbook {
  readonly host: "excel" | "standalone";
  sheets(): Promise<readonly string[]>;
  tables(): Promise<readonly TableInfo[]>;
  /** The table’s cells, headings first. */
  readTable(name: string): Promise<RangeData>;
  readArea(area: Area): Promise<RangeData>;
  /** The smallest area that holds all filled cells of a sheet; `undefined` for an empty sheet. */
  usedArea(sheet: string): Promise<Area | undefined>;
  /**
   * Every cell of the workbook with a formula, text or number for which `isWanted` holds, sheet by sheet. What a formula of
   * another cell fills is left out. Reads the whole workbook: to be asked rarely.
   */
  findCells(isWanted: (cell: FoundCell) => boolean): Promise<readonly FoundCell[]>;
  /** What is selected now, cut to the used part of the sheet. Rejects when nothing in it is filled. */
  readSelection(): Promise<RangeData>;
  /** The cell that is selected now, filled or not; of an area, the first one. */
  selectedCell(): Promise<CellAddress>;
  /** Bring a cell or area into view and select it. */
  select(area: Area): Promise<void>;
  /**
   * Apply edits in order as one user action. All or nothing: when one cannot be applied, those before it are
   * taken back, and the promise rejects.
   *
   * @param label what the user did, for the undo button, for example “Import 12 figures”
   */
  apply(label: string, edits: readonly Edit[]): Promise<void>;
  /** The label of the last action of `apply` that can still be undone. */
  lastAction(): string | undefined;
  /** Undo the last action of `apply` as a whole; resolves with its label, or `undefined` when there is none. */
  undo(): Promise<string | undefined>;
  /** The last error message of our function in a cell, where the host keeps it (Excel shows it itself). */
  errorAt?(at: CellAddress): string | undefined;
  /** False where formulas wait until the user asks for their results; a host without that choice leaves it out. */
  calculatesByItself?(): Promise<boolean>;
  /**
   * Resolves once the workbook is shown and calculated: work that nobody waits for leaves the processor to that. A host that gives
   * only such a workbook leaves it out.
   */
  whenReady?(): Promise<void>;
  /** Called, debounced, after changes that this port did not make. Returns the unsubscriber. */
  subscribe(listener: (change: WorkbookChange) => void): () => void;
  /** Small preferences kept with the workbook. Values are JSON. */
  preference(key: string): Promise<unknown>;
  setPreference(key: string, value: unknown): Promise<void>;
}
