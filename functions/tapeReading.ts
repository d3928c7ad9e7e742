import type { Cell } from "../addin/chart/cell.ts";
import { readCell } from "../addin/chart/readCell.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { tidyReading } from "../addin/measures/tidyReading.ts";
import type { LengthUnit } from "../addin/measures/units.ts";

/** A tape reading in one cell, before the unit of a bare number is settled. */
export interface TapeReading {
  /** Written with a fraction, as inch tapes are read. */
  readonly hasFraction: boolean;
  /**
   * Length in mm; `undefined` for marks that say that it was not taken.
   *
   * @param assumed the unit when the reading names none
   * @throws {InputError} quoting what is not a length
   */
  mm(assumed: LengthUnit): number | undefined;
}

/** A cell that holds a reading in any common writing. */
export function readTape(cell: Cell, name: string): TapeReading {
  return {
    hasFraction: typeof cell === "string" && tidyReading(cell).includes("/"),
    mm: (assumed) => {
      const reading = readCell(cell, assumed);
      if (reading.kind === "refused") throw new InputError(`${name}: ${reading.reason}`);
      return reading.kind === "length" ? reading.mm : undefined;
    },
  };
}

/** The same for a difference between two readings, where a number may be below zero. */
export function readTapeDifference(cell: Cell, name: string): TapeReading {
  if (typeof cell !== "number" || cell >= 0) return readTape(cell, name);
  const { mm, hasFraction } = readTape(-cell, name);
  return { hasFraction, mm: (assumed) => -(mm(assumed) ?? Number.NaN) };
}
