import type { Cell } from "../cell.ts";
import { readCell } from "../readCell.ts";
import type { Reading, Written } from "../../measures/parseReading.ts";
import { withOrigin } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { fromMm } from "../../measures/units.ts";

/** A cell of the file as it will be stored. */
export type SourceReading =
  | { readonly kind: "length"; readonly value: number | string }
  | { readonly kind: "missing" }
  | { readonly kind: "refused"; readonly reason: string };

export type SourceCellReader = (cell: Cell, format: string | undefined) => SourceReading;

/** Texts remembered by one reader: readings of a chart repeat, and reading one anew costs more than looking it up. */
const remembered = 50_000;

/**
 * A reader for the cells of one column: texts as they are read for the whole file, worksheet cells by value and number format.
 *
 * @param unit the unit of readings that name none
 * @param storedIn the unit of the values that come out
 * @param fractionUnit the unit of fractions that name none; as `unit` when left out
 */
export function sourceCellReader(
  unit: LengthUnit,
  storedIn: LengthUnit,
  fractionUnit: LengthUnit | undefined,
  readText: (text: string) => Written,
): SourceCellReader {
  const known = new Map<string, SourceReading>();
  return (cell, format) => {
    if (typeof cell !== "string") return inUnit(readCell(cell, unit, { format }), storedIn);
    const before = known.get(cell);
    if (before) return before;
    const reading = inUnit(readCell(cell, unit, { readText, fractionUnit }), storedIn);
    if (known.size < remembered) known.set(cell, reading);
    return reading;
  };
}

function inUnit(reading: Reading, unit: LengthUnit): SourceReading {
  if (reading.kind !== "length") return reading;
  // 2.54 · 10 is to be 25.4, not 25.400000000000002.
  const value = Number(fromMm(reading.mm, unit).toPrecision(12));
  return { kind: "length", value: withOrigin(value, reading.origin) };
}
