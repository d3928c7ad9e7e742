import type { Measure, MeasureKind, Zone } from "../measures/measure.ts";
import type { Origin } from "../measures/parseReading.ts";
import type { LengthUnit } from "../measures/units.ts";

/** A column of readings. A measure that the dictionary does not know has no `measure`, but takes part all the same. */
export interface MeasureColumn {
  /** The dictionary’s id, or the normalised heading of a measure that it does not know. */
  readonly key: string;
  /** The heading as written, without the unit. */
  readonly heading: string;
  readonly measure?: Measure;
  readonly kind: MeasureKind | undefined;
  readonly zone: Zone | undefined;
  /** The unit of the column; results go out in it. */
  readonly unit: LengthUnit;
  /** One reading a figure in mm; NaN is missing. */
  readonly mm: Float64Array;
  /** The figures, by their place, whose length was not measured; left out where all were. */
  readonly origins?: ReadonlyMap<number, Origin>;
  /** Column within the range, from 0. */
  readonly position: number;
}

/** A column of text: maker, material, notes. */
export interface AttributeColumn {
  readonly heading: string;
  readonly values: readonly string[];
  readonly position: number;
}

export type ChartProblemKind =
  | "refused reading"
  | "date instead of a reading"
  | "error cell"
  | "no figure name"
  | "figure twice"
  | "measure twice"
  | "no heading"
  | "unknown measure"
  | "unit differs"
  | "unit not known"
  | "unit assumed";

/** Something in a chart that was left out or needs a look. Nothing is dropped without one. */
export interface ChartProblem {
  readonly kind: ChartProblemKind;
  /** Row and column within the range, from 0 (row 0 is the headings). */
  readonly row?: number;
  readonly column?: number;
  /** What was read and what to do, in words. */
  readonly message: string;
  /** For a date instead of a reading: the fractions that it may have been, the likelier first. */
  readonly fractions?: readonly string[];
  /** For a unit that no heading states: the columns that it is about, and the unit that is assumed, or the likeliest. */
  readonly unstated?: { readonly columns: readonly number[]; readonly unit: LengthUnit };
}

/** A measurement chart: figures down, measures across, as typed columns. */
export interface Chart {
  readonly figures: readonly string[];
  /** Row of each figure within the range, from 0 (the headings are row 0). */
  readonly rows: readonly number[];
  readonly measures: readonly MeasureColumn[];
  readonly attributes: readonly AttributeColumn[];
  readonly problems: readonly ChartProblem[];
}

/** The measures that were taken of at least one figure; a new chart has columns for many that nobody has taken yet. */
export function measuresTaken({ measures }: Chart): readonly MeasureColumn[] {
  return measures.filter(({ mm }) => mm.some((length) => !Number.isNaN(length)));
}
