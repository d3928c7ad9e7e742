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

/** A column of verdicts, shown with their signs and colours. */
export const verdicts = Symbol("verdicts");

/**
 * How the rows below a formula look that fills them: cells with a look and nothing in them.
 *
 * @param formats by column: a number format, which gets a space behind it, so that no number touches the words beside it; or
 * {@link verdicts}; `undefined` leaves a column alone
 */
export function formatsBelow(
  rows: number,
  formats: readonly (string | typeof verdicts | undefined)[],
): (CellContent | undefined)[][] {
  const row = formats.map((format): CellContent | undefined => {
    if (format === undefined) return undefined;
    return format === verdicts
      ? { spilled: true, style: "verdict" }
      : { spilled: true, format: `${format}" "` };
  });
  return Array.from({ length: rows }, () => row);
}
