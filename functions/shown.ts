import type { LengthUnit } from "../addin/measures/units.ts";
import { fromMm } from "../addin/measures/units.ts";
import type { Value } from "./descriptor.ts";

/** Decimals of a result: far finer than any tape, and coarse enough to hide binary dust such as 4.099999999999994. */
const finest = 1e10;

/** A number as a cell shows it: blank when it is missing (NaN). */
export function shown(value: number): Value {
  if (!Number.isFinite(value)) return "";
  const rounded = Math.round(value * finest) / finest;
  return Number.isSafeInteger(Math.round(value * finest)) ? rounded + 0 : value;
}

/** A length in mm as a cell shows it, in the unit of its column. */
export function shownLength(mm: number, unit: LengthUnit): Value {
  return shown(fromMm(mm, unit));
}
