interface CellKey {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** What went wrong in a cell: the error value that it shows, and the message behind it. */
export interface FormulaError {
  readonly code: string;
  readonly message: string;
}

/**
 * The messages behind error values. A grid cell holds the error value only, so the message is kept here, by cell
 * and function, until that function has calculated well in that cell.
 */
export class FormulaErrors {
  readonly #byCell = new Map<string, Map<string, FormulaError>>();

  set(cell: CellKey, functionName: string, error: FormulaError): void {
    const key = keyOf(cell);
    const errors = this.#byCell.get(key) ?? new Map<string, FormulaError>();
    this.#byCell.set(key, errors.set(functionName, error));
  }

  clear(cell: CellKey, functionName: string): void {
    const key = keyOf(cell);
    const errors = this.#byCell.get(key);
    errors?.delete(functionName);
    if (errors?.size === 0) this.#byCell.delete(key);
  }

  /** Forget what belongs to a cell, because something else was written into it. */
  forget(cell: CellKey): void {
    this.#byCell.delete(keyOf(cell));
  }

  get isEmpty(): boolean {
    return this.#byCell.size === 0;
  }

  forgetAll(): void {
    this.#byCell.clear();
  }

  /** The message behind the error value that a cell shows. */
  messageFor(cell: CellKey, code: string): string | undefined {
    const errors = [...(this.#byCell.get(keyOf(cell))?.values() ?? [])];
    return errors.find((error) => error.code === code)?.message;
  }
}

function keyOf({ sheetId, row, column }: CellKey): string {
  return `${sheetId}:${String(row)}:${String(column)}`;
}
