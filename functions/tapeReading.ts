import type { Cell } from "../addin/chart/cell.ts";
import { cellText, isCellError } from "../addin/chart/cell.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { parseReading } from "../addin/measures/parseReading.ts";
import { tidyReading } from "../addin/measures/tidyReading.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { toMm } from "../addin/measures/units.ts";

/** A tape reading in one cell, before the unit of a bare number is settled. */
export interface TapeReading {
  /** Written with a fraction, as only inch tapes are read. */
  readonly hasFraction: boolean;
  /**
   * Length in mm; `undefined` for marks that say that it was not taken.
   *
   * @param assumed the unit when the reading names none
   */
  mm(assumed: LengthUnit): number | undefined;
}

/**
 * A cell that holds a reading in any common writing.
 *
 * @throws {InputError} quoting what is not a length
 */
export function readTape(cell: Cell, name: string): TapeReading {
  if (typeof cell === "number") return { hasFraction: false, mm: (assumed) => toMm(cell, assumed) };
  if (isCellError(cell)) {
    throw new InputError(`${name}: the cell holds the error ${cell.error}. Mend that cell first.`);
  }
  const text = cellText(cell);
  const read = (assumed: LengthUnit): number | undefined => {
    const reading = parseReading(text, { unit: assumed });
    if (reading.kind === "refused") throw new InputError(reading.reason);
    return reading.kind === "length" ? reading.mm : undefined;
  };
  return { hasFraction: tidyReading(text).includes("/"), mm: read };
}
