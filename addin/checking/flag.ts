import type { Cell } from "../chart/cell.ts";
import { cellText } from "../chart/cell.ts";
import { dayText, serialToDay } from "../measures/dateFractions.ts";
import type { LengthUnit } from "../measures/units.ts";

/** What may be wrong, in the words that the user sees. */
export const flagKinds = [
  "date instead of a reading",
  "error in the cell",
  "not a length",
  "unit not known",
  "whole row in a wrong unit",
  "whole column in a wrong unit",
  "wrong unit",
  "half of the girth",
  "twice the girth",
  "two readings swapped",
  "digits swapped",
  "digit doubled",
  "digit missing",
  "out of proportion",
  "smaller than it can be",
  "larger than it can be",
  "left and right differ",
  "unlike its twin",
  "one name, two rows",
  "unlike the other figures",
  "same readings, two names",
  "estimates",
  "unit assumed",
] as const;
export type FlagKind = (typeof flagKinds)[number];

/** A reading that would put things right. */
export interface Correction {
  /** Row and column within the range, from 0 (row 0 is the headings). */
  readonly row: number;
  readonly column: number;
  readonly mm: number;
}

/** One of several readings that a cell may have meant, or of several units that columns may be in. */
export type Choice = ReadingChoice | UnitChoice;

export interface ReadingChoice {
  /** As the user would say it: `5/8 in`. */
  readonly label: string;
  readonly correction: Correction;
}

export interface UnitChoice {
  /** As the user would say it: `inches`. */
  readonly label: string;
  /** What the headings say then. */
  readonly headings: readonly { readonly column: number; readonly heading: string }[];
}

/** Something in a chart that deserves a look. Nothing is changed without the user. */
export interface Flag {
  /** Empty when the flag is about a whole column. */
  readonly figure: string;
  /**
   * Row and column within the range, from 0 (row 0 is the headings). A flag about a whole row points at the figure’s
   * name, one about a whole column at its heading.
   */
  readonly row: number;
  readonly column: number;
  /** The heading of the measure; empty when the flag is about a whole row. */
  readonly measure: string;
  /** The unit of the column, which `why` speaks in. */
  readonly unit: LengthUnit;
  readonly readingMm?: number;
  readonly kind: FlagKind;
  /** One or two sentences for the person who sews. */
  readonly why: string;
  /** For this cell. Only when the corrected reading is in proportion and clearly better. */
  readonly suggestedMm?: number;
  /**
   * All cells that change when the suggestion is taken: this cell alone for most slips, both cells of a swap, every
   * cell of a whole row or column. Empty when there is nothing to suggest.
   */
  readonly corrections: readonly Correction[];
  /** What a date may have been, or the unit of columns that state none, the likelier first. The user decides. */
  readonly choices?: readonly Choice[];
}

/** What the flagged cell shows; of a date its day, not the number that the spreadsheet keeps it as. */
export function flaggedText({ kind }: Pick<Flag, "kind">, cell: Cell): string {
  const day =
    kind === "date instead of a reading" && typeof cell === "number" ? serialToDay(cell) : undefined;
  return day ? dayText(day) : cellText(cell);
}
