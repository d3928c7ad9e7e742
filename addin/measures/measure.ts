/** Parts of a body that can be shared apart from one another. */
export const zones = ["torso", "arms", "legs", "head", "hands", "feet"] as const;
export type Zone = (typeof zones)[number];

/** `height` is kept apart from `length`: it says how tall, not how a garment is cut. */
export type MeasureKind = "girth" | "length" | "width" | "height";

/**
 * How far two readings of one measure may differ and still count as the same:
 * max(floor, percent / 100 · mean of the two).
 */
export interface Tolerance {
  /** mm */
  readonly floorMm: number;
  /** percent of the mean of the two readings */
  readonly percent: number;
}

/** One entry of the measure dictionary. */
export interface Measure {
  /** Stable key: camelCase, never changed once released. */
  readonly id: string;
  /** The plain name that a person who sews uses, for example “Bust girth”. */
  readonly name: string;
  /** The short name for a narrow heading, for example “Bust”. */
  readonly shortName: string;
  /** The term of ISO 8559-1 where it has one. */
  readonly isoTerm?: string;
  /** How to take it, in one or two sentences of our own. */
  readonly definition: string;
  /** What to do on a figure that lacks the landmark: a joint line, a moulded shoe, a wig. */
  readonly onFigures: string;
  readonly kind: MeasureKind;
  readonly zone: Zone;
  /** Other headings that mean this measure, lower case, without units. */
  readonly synonyms: readonly string[];
  /** The project’s own starting value; the user edits it in a tolerances table. */
  readonly tolerance: Tolerance;
  /** True when a difference here decides whether a fitted garment can be shared. */
  readonly governs: boolean;
}
