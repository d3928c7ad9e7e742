import type { LengthUnit } from "../measures/units.ts";
import type { Alteration } from "./alteration.ts";
import type { RouteName } from "./compilePattern.ts";
import type { Verdict } from "./verdict.ts";
import type { OpeningPlace } from "../chart/garmentTerms.ts";

/** One thing that was checked for a pattern on a figure, as data for a drawing and in words. Lengths in mm, NaN unknown. */
export interface Check {
  readonly kind: "girth" | "length" | "opening";
  /** “Waist girth”, “Neck over the head”. */
  readonly place: string;
  /** The way of putting it on that an opening belongs to; undefined for one that every way has to pass. */
  readonly route?: RouteName;
  /** Girths and lengths: the measure, an id of the dictionary. */
  readonly measure?: string;
  /** Girths and lengths: ids of the measures of the body that it rests on, and of those among them that are not known. */
  readonly uses?: readonly string[];
  readonly lacking?: readonly string[];
  /** Openings: where, and which measure of the body has to pass. */
  readonly opening?: {
    readonly place: OpeningPlace;
    readonly passes: string;
    /** Ids of the measures of the body that are not known. */
    readonly lacking: readonly string[];
  };
  /** The body over what is worn underneath; what has to pass an opening. */
  readonly bodyMm: number;
  /** The least that the garment must measure there. */
  readonly needsMm: number;
  /** The most it may measure; undefined where there is no limit. */
  readonly mostMm?: number;
  /** Below `needsMm` it is snug down to here, and above `mostMm` loose up to here; beyond, nobody can wear it. */
  readonly snugMm?: number;
  readonly looseMm?: number;
  /** What it measures; an opening with its placket, stretched as far as is comfortable. */
  readonly hasMm: number;
  /** The same with its cloth at rest, where it stretches. */
  readonly atRestMm?: number;
  /** has − needs, or has − most where it is above; below zero is missing. */
  readonly differenceMm: number;
  readonly verdict: Verdict;
  /** False for a measure that is not required and not known, and for the ways of putting it on that are not the best. */
  readonly counts: boolean;
  readonly says: string;
  readonly alteration?: Alteration;
  /** The unit that the measure goes out in. */
  readonly unit: LengthUnit;
  /** What to measure where it is not known or too close to call. */
  readonly take: readonly string[];
  /** Where its rule comes from. */
  readonly source?: string;
}
