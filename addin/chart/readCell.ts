import { dayText, serialToDay } from "../measures/dateFractions.ts";
import type { Reading, Written } from "../measures/parseReading.ts";
import { lengthIn, longestMm, readWritten, refuseDate } from "../measures/parseReading.ts";
import type { LengthUnit } from "../measures/units.ts";
import { toMm } from "../measures/units.ts";
import type { Cell } from "./cell.ts";
import { isCellError } from "./cell.ts";
import { isDateFormat, isPercentFormat, toPercent } from "./numberFormat.ts";

/** Date numbers from 1927 to 2119: over 10 000, which no reading reaches, so dates even where no format says so. */
const latestSerial = 80_000;

export interface CellOptions {
  /** The cell’s number format, where it is known. */
  readonly format?: string | undefined;
  /** Reads texts; as tape readings in a worksheet where it is left out. */
  readonly readText?: ((text: string) => Written) | undefined;
  /** The unit of a fraction that names none: inches where no heading states a unit; else that of the column. */
  readonly fractionUnit?: LengthUnit | undefined;
}

/**
 * One cell of a measure column → a reading. A number is in `unit`; text is read as a tape reading. Numbers that a
 * date format or their size shows to be dates are refused with the fractions that they may have been.
 *
 * @example readCell(46150, "in", { format: "d-mmm" }) // refused; fractions ["5/8"]
 */
export function readCell(cell: Cell, unit: LengthUnit, options: CellOptions = {}): Reading {
  const { format = "", readText = readWritten, fractionUnit } = options;
  if (cell === undefined) return { kind: "missing" };
  if (isCellError(cell))
    return refuse(`The cell shows the error ${cell.error}. Mend its formula or type the reading`);
  if (typeof cell === "boolean")
    return refuse(`“${cell ? "TRUE" : "FALSE"}” is not a length. Type the reading`);
  if (typeof cell === "number") return readNumber(cell, unit, format);
  return lengthIn(readText(cell), { unit, fractionUnit });
}

function readNumber(value: number, unit: LengthUnit, format: string): Reading {
  if (!Number.isFinite(value)) return refuse("The cell holds no number. Type the reading");
  if (isDateFormat(format)) return refuseDateNumber(value);
  if (isPercentFormat(format)) {
    return refuse(
      `“${String(toPercent(value))} %” is not a length. Type the reading, and give the cell a plain number format`,
    );
  }
  if (value < 0) return refuse(`“${String(value)}” is negative. A reading is a length from 0 up`);
  const mm = toMm(value, unit);
  if (mm <= longestMm) return { kind: "length", mm, unit, unitFrom: "assumed" };
  const day =
    value > longestMm && value < latestSerial && Number.isInteger(value) ? serialToDay(value) : undefined;
  return day
    ? refuseDate(`${String(value)}`, day)
    : refuse(`“${String(value)}” ${unit} is longer than 10 m. Check the number and its unit`);
}

function refuseDateNumber(value: number): Reading {
  const day = serialToDay(value);
  return day
    ? refuseDate(dayText(day), day)
    : refuse(
        `“${String(value)}” is shown as a date or time. If it is the reading, give the cell a plain number format`,
      );
}

function refuse(sentence: string): Reading {
  return { kind: "refused", reason: `${sentence}.` };
}
