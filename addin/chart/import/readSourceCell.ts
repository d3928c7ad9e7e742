import type { Cell } from "../cell.ts";
import { cellText } from "../cell.ts";
import { readCell } from "../readCell.ts";
import type { Reading } from "../../measures/parseReading.ts";
import { parseReading } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { DecimalMark } from "../../measures/decimal.ts";

/** Texts remembered by one reader: readings of a chart repeat, and reading one anew costs more than looking it up. */
const remembered = 50_000;

export type SourceCellReader = (cell: Cell, format: string | undefined) => Reading;

/** A reader for the cells of one column: text by the file’s decimal mark, worksheet cells by value and number format. */
export function sourceCellReader(unit: LengthUnit, decimalMark: DecimalMark): SourceCellReader {
  const known = new Map<string, Reading>();
  return (cell, format) => {
    if (cell !== undefined && typeof cell !== "string") return readCell(cell, unit, format);
    const text = cellText(cell);
    const before = known.get(text);
    if (before) return before;
    const reading = parseReading(text, { unit, decimalMark });
    if (known.size < remembered) known.set(text, reading);
    return reading;
  };
}
