import type { Cell } from "../../chart/cell.ts";
import type { CellContent } from "../../workbook/content.ts";

export const title = (text: string): CellContent => ({ value: text, style: "title" });
export const quiet = (text: string): CellContent => ({ value: text, style: "quiet" });
export const heading = (text: string): CellContent => ({ value: text, style: "heading" });
export const wrapped = (text: string): CellContent => ({ value: text, style: "wrap" });
export const plain = (value: Cell): CellContent => ({ value });
export const formula = (text: string, format?: string): CellContent =>
  format === undefined ? { formula: text } : { formula: text, format };

/** A formula whose result fills `columns` columns and begins with a row of headings. */
export function results(first: string | CellContent, columns: number): CellContent[] {
  const more = Array.from({ length: columns - 1 }, (): CellContent => ({ spilled: true, style: "heading" }));
  return [{ ...(typeof first === "string" ? { formula: first } : first), style: "heading" }, ...more];
}

/**
 * Number formats for the rows below a formula that fills them: cells with a format and nothing in them.
 *
 * @param formats by column; `undefined` leaves a column alone
 */
export function formatsBelow(
  rows: number,
  formats: readonly (string | undefined)[],
): (CellContent | undefined)[][] {
  const row = formats.map((format) => (format === undefined ? undefined : { spilled: true, format }));
  return Array.from({ length: rows }, () => row);
}
