/**
 * The most that a file, a sheet or a formula may ask for. Everything is counted as expanded, before it is built, so
 * that a file of a few kilobytes cannot fill the memory. A chart of 5,000 figures by 40 measures stays far below.
 */
export const limits = {
  /** Bytes of a file as it lies on the disk. */
  fileBytes: 64 * 1024 * 1024,
  /** Bytes of all parts of a workbook file, expanded. */
  expandedBytes: 192 * 1024 * 1024,
  parts: 5_000,
  /** XML elements: those of sheets and shared texts together, and those of every other part. */
  sheetElements: 8_000_000,
  otherElements: 500_000,
  elementDepth: 100,
  sheets: 250,
  /** Cells that hold something, all sheets together. */
  cells: 600_000,
  /** Cells from A1 to the last one that is used, empty ones too, all sheets together. */
  area: 2_500_000,
  /** Columns that a sheet states widths for, counted once for each statement. */
  columnSettings: 100_000,
  merges: 20_000,
  tables: 1_000,
  names: 10_000,
  /** Source: Microsoft, “Excel specifications and limits”: unique cell formats. */
  styles: 65_490,
  /** Characters of all cells together, texts that cells share counted in each. */
  totalText: 30_000_000,
  /** Source: Microsoft, “Excel specifications and limits”: characters in a cell, characters in a formula. */
  text: 32_767,
  formula: 8_192,
  /** Characters without a space: the grid takes many times as long for a word of twice the length. */
  word: 4_000,
  /** Parentheses, brackets and braces within one another; Excel allows functions 64 deep. */
  formulaDepth: 64,
  /** Operators of a formula: the grid goes as deep as there are operators in a row. */
  operators: 1_000,
  /** Cells of what one function gives, and characters of a text that it gives. */
  resultCells: 1_000_000,
  /** Milliseconds after which reading a file, and a calculation, are stopped. */
  readingMs: 60_000,
  calculatingMs: 10_000,
} as const;
