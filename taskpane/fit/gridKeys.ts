/** A cell of a grid: row and column from 0. */
export interface GridCell {
  readonly row: number;
  readonly column: number;
}

export interface GridSize {
  readonly rows: number;
  readonly columns: number;
  /** Rows that Page Up and Page Down move by. */
  readonly page: number;
}

/**
 * Where a key moves the focus within a grid, as the ARIA Authoring Practices have it for data grids; `undefined` for a
 * key that does not move it. At an edge the focus stays.
 */
export function cellAfterKey(
  key: string,
  withCtrl: boolean,
  at: GridCell,
  size: GridSize,
): GridCell | undefined {
  const last = { row: size.rows - 1, column: size.columns - 1 };
  const within = (row: number, column: number): GridCell => ({
    row: Math.max(0, Math.min(last.row, row)),
    column: Math.max(0, Math.min(last.column, column)),
  });
  switch (key) {
    case "ArrowUp":
      return within(at.row - 1, at.column);
    case "ArrowDown":
      return within(at.row + 1, at.column);
    case "ArrowLeft":
      return within(at.row, at.column - 1);
    case "ArrowRight":
      return within(at.row, at.column + 1);
    case "PageUp":
      return within(at.row - size.page, at.column);
    case "PageDown":
      return within(at.row + size.page, at.column);
    case "Home":
      return within(withCtrl ? 0 : at.row, 0);
    case "End":
      return within(withCtrl ? last.row : at.row, last.column);
    default:
      return undefined;
  }
}
