import type { Cell } from "../addin/chart/cell.ts";
import { readCell } from "../addin/chart/readCell.ts";
import { InputError } from "../addin/measures/inputError.ts";
import type { LengthUnit } from "../addin/measures/units.ts";

/** A tape reading in one cell, before the unit of a bare number is settled. */
export interface TapeReading {
  /**
   * Length in mm; `undefined` for marks that say that it was not taken.
   *
   * @param assumed the unit when the reading names none
   * @param fractionUnit the unit of a fraction that names none; as `assumed` when left out
   * @throws {InputError} quoting what is not a length
   */
  mm(assumed: LengthUnit, fractionUnit?: LengthUnit): number | undefined;
}

/** A cell that holds a reading in any common writing. */
export function readTape(cell: Cell, name: string): TapeReading {
  return {
    mm: (assumed, fractionUnit) => {
      const reading = readCell(cell, assumed, { fractionUnit });
      if (reading.kind === "refused") throw new InputError(`${name}: ${reading.reason}`);
      return reading.kind === "length" ? reading.mm : undefined;
    },
  };
}

/** The same for a difference between two readings, where a number may be below zero. */
export function readTapeDifference(cell: Cell, name: string): TapeReading {
  if (typeof cell !== "number" || cell >= 0) return readTape(cell, name);
  const { mm } = readTape(-cell, name);
  return { mm: (...units) => -(mm(...units) ?? Number.NaN) };
}
