import { cellName } from "../address.ts";
import type { CellStyle } from "../content.ts";
import type { Block } from "../verdictCells.ts";
import { signedFormat, verdictCells, verdictInk } from "../verdictCells.ts";
import { operation, type Operation } from "./requests.ts";

/** Looks are of type, wrapping and place only, so that a cell’s own fill is never touched. */
const looks: Readonly<Record<Exclude<CellStyle, "marked" | "verdict">, (format: Excel.RangeFormat) => void>> =
  {
    title: (format) => {
      format.font.bold = true;
      format.font.size = 16;
    },
    heading: (format) => {
      format.font.bold = true;
      format.wrapText = true;
      format.verticalAlignment = "Top";
    },
    quiet: (format) => {
      format.font.color = "#5C6068";
    },
    wrap: (format) => {
      format.wrapText = true;
      format.verticalAlignment = "Top";
    },
    amount: (format) => {
      format.horizontalAlignment = "Right";
    },
  };

/** What `looks` changes of a cell, to be loaded before and set again by undo. */
export const changedByLooks: Excel.CellPropertiesLoadOptions = {
  format: {
    font: { bold: true, color: true, size: true },
    wrapText: true,
    verticalAlignment: true,
    horizontalAlignment: true,
  },
};

/**
 * Gives cells of verdicts a rule for each, so that sign and colour follow what a formula puts there. A rule is written for the
 * first cell of the range, and shows its number format while it holds.
 */
export function showVerdicts(range: Excel.Range, { row, column }: Block): void {
  for (const look of verdictCells) {
    const { custom } = range.conditionalFormats.add("Custom");
    custom.rule.formula = `=EXACT(${cellName(row, column)},"${look.word}")`;
    custom.format.font.color = verdictInk[look.tone];
    custom.format.font.bold = true;
    custom.format.numberFormat = signedFormat(look);
  }
}

type Styled = readonly (readonly ({ readonly style?: CellStyle } | undefined)[])[];

/** Operations that give cells their looks; neighbours in a row with the same look share one. */
export function lookOperations(
  rangeAt: (context: Excel.RequestContext, row: number, column: number, columns: number) => Excel.Range,
  cells: Styled,
): Operation[] {
  return cells.flatMap((row, i) =>
    runs(row.map((cell) => cell?.style)).flatMap(({ value: style, start, length }) =>
      style === undefined || style === "marked" || style === "verdict"
        ? []
        : [
            operation((context) => {
              looks[style](rangeAt(context, i, start, length).format);
            }),
          ],
    ),
  );
}

function runs<T>(values: readonly T[]): { value: T; start: number; length: number }[] {
  const found: { value: T; start: number; length: number }[] = [];
  values.forEach((value, start) => {
    const last = found.at(-1);
    if (last?.value === value && start > 0) last.length += 1;
    else found.push({ value, start, length: 1 });
  });
  return found;
}
