import type { MeasureColumn } from "../chart/chart.ts";
import { lengthWords } from "../measures/lengthWords.ts";
import type { MeasureKind } from "../measures/measure.ts";
import { isWithin } from "./pair.ts";

/** How one figure differs from another in one measure. */
export interface Difference {
  readonly column: MeasureColumn;
  /** The second figure’s reading less the first’s. */
  readonly deltaMm: number;
  /** The share of the tolerance that it uses, 1 is all of it. */
  readonly ofTolerance: number;
}

export function isBeyond({ ofTolerance }: Difference): boolean {
  return !isWithin(ofTolerance, 1);
}

/** What the second figure is more or less of, in the unit of the column: “Head girth 6 mm larger”. */
export function differenceWords({ column, deltaMm }: Difference): string {
  const amount = lengthWords(Math.abs(deltaMm), column.unit);
  return `${column.heading} ${amount} ${comparativeOf(column, deltaMm)}`;
}

/** What a measure is when it is more, or less for a sign below 0: “larger”, “shorter”. */
export function comparativeOf({ kind }: Pick<MeasureColumn, "kind">, sign: number): string {
  const [more, less] = comparatives[kind ?? "girth"];
  return sign < 0 ? less : more;
}

/** The tolerance that the difference is measured by. */
export function toleranceWords({ column, deltaMm, ofTolerance }: Difference): string {
  return lengthWords(Math.abs(deltaMm) / ofTolerance, column.unit);
}

const comparatives: Readonly<Record<MeasureKind, readonly [string, string]>> = {
  girth: ["larger", "smaller"],
  length: ["longer", "shorter"],
  width: ["wider", "narrower"],
  height: ["taller", "shorter"],
};
