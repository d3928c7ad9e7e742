import type { EaseRule } from "../chart/easeRule.ts";
import type { MeasureKind } from "../measures/measure.ts";
import type { Layer } from "./layers.ts";

/** A finished measure against its ease rule, for every figure of the chart. */
export interface EaseCheck {
  readonly rule: EaseRule;
  readonly kind: MeasureKind;
  /** mm of the garment; NaN where not known */
  readonly garmentMm: number;
  readonly bodies: Float64Array;
  readonly layers: readonly Layer[];
  /** mm of room inside that the garment’s own cloth takes: of girths alone */
  readonly ownMm: number;
  /** What has to be inside as a whole because it is hard, in mm; undefined for soft, tapering parts and for lengths that may end anywhere. */
  readonly contained: Float64Array | undefined;
  /** The name of the place where it is not that of the measure. */
  readonly place?: string;
  /** The line of the body along which a length runs, and where that is on every figure; left out where it is the body’s measure itself. */
  readonly line?: BodyLine;
  readonly ends?: LineEnds;
}

/** A line of the body along which a length runs, without the figures: sums of measures, by the dictionary’s ids. */
export interface BodyLine {
  /** Where the line begins: nothing for the point from which the length is measured. */
  readonly starts: readonly string[];
  readonly lengths: readonly string[];
  /** Shares of its length between which the garment is to end. */
  readonly from: number;
  readonly to: number;
}

/** Where a length is to end on every figure, in mm, and the readings that this rests on. */
export interface LineEnds {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly uses: readonly { readonly measure: string; readonly mm: Float64Array }[];
}
