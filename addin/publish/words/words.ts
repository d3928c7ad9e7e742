import type { MeasureKind } from "../../measures/measure.ts";
import type { Verdict } from "../../fit/verdict.ts";
import type { PublishedLanguage } from "../publication.ts";
import type { DecimalMark } from "../publishedLength.ts";

/**
 * An opening of a garment, as buyers call it: a skirt has a hem, trousers have legs, a glove and a sock end at wrist and ankle, and
 * a dress has a narrowest place between neck and hem.
 */
export type OpeningName = "neck" | "waist" | "narrowest" | "sleeve" | "wrist" | "hem" | "leg" | "ankle";

/** A length or width of a garment that is not called by the measure of the body. */
export type LengthName = "hem" | "sleeve" | "leg";

/** What stands in the way of a garment, or is not known about it. Amounts are texts with their unit, where they may be told. */
export type Reason =
  | {
      readonly kind: "measure";
      /** The term of the measure. */
      readonly measure: string;
      readonly of: MeasureKind;
      readonly verdict: Verdict;
      readonly by: string | undefined;
    }
  | {
      readonly kind: "opening";
      readonly place: OpeningName;
      /** Id of the measure that has to pass. */
      readonly passes: string;
      readonly verdict: Verdict;
      readonly by: string | undefined;
    }
  | { readonly kind: "garment unknown"; readonly measure: string }
  | { readonly kind: "opening unknown"; readonly place: OpeningName }
  | { readonly kind: "body unknown"; readonly measures: readonly string[] }
  | { readonly kind: "nothing to judge by" };

/** What to change on a garment. Amounts are texts with their unit, where they may be told. */
export type ChangeToMake =
  | {
      readonly kind: "girth";
      readonly measure: string;
      readonly isMore: boolean;
      readonly amounts:
        { readonly total: string; readonly edges: number; readonly perEdge: string } | undefined;
    }
  | {
      readonly kind: "length" | "width" | "height";
      readonly measure: string;
      /** Where the change is made, for lengths that have a place of their own. */
      readonly at: LengthName | undefined;
      readonly isMore: boolean;
      readonly total: string | undefined;
    }
  | { readonly kind: "opening"; readonly place: OpeningName; readonly total: string | undefined };

/** The words of verdicts, in one language: what a cell needs. Names and amounts arrive as text. */
export interface VerdictWords {
  readonly language: PublishedLanguage;
  readonly decimalMark: DecimalMark;
  /** The inch behind a number. */
  readonly inch: string;
  /** The term of a measure, by the dictionary’s id; undefined for one that this language does not name. */
  measure(id: string): string | undefined;
  readonly verdicts: Readonly<Record<Verdict, string>>;
  /** The length of a garment where it is not called by the measure of the body. */
  readonly lengths: Readonly<Record<LengthName, string>>;
  /** What is said of a length that can be worn, but is off. */
  readonly littleShort: string;
  readonly littleLong: string;
  reason(reason: Reason): string;
  change(change: ChangeToMake): string;
  /** “A, B and C” */
  list(names: readonly string[]): string;
  readonly listing: ListingWords;
}

/** Everything that buyers read, in one language; nothing here is HTML. */
export interface Words extends VerdictWords {
  /** BCP 47 */
  readonly tag: string;
  /** The inch in a heading. */
  readonly inchHeading: string;
  /** How to take a measure. */
  howToTake(id: string): string | undefined;
  /** A garment class that comes with the project; its own name for another. */
  garmentClass(name: string): string;
  readonly kinds: Readonly<Record<FitKind, string>>;
  /** “These wear the same body: …” */
  sameBody(names: string, differ: readonly BodyPart[], alike: readonly BodyPart[]): string;
  /** “The bust is 4 mm larger” */
  differs(
    measure: string,
    kind: "girth" | "length" | "width" | "height",
    isMore: boolean,
    by: string,
  ): string;
  readonly notMeasured: string;
  readonly inQuestion: string;
  readonly estimatedHere: string;
  readonly markedDoubtful: string;
  readonly markedEstimated: string;
  readonly markedListed: string;
  /** Of a row of several figures, where a reading of one of them is left out. */
  readonly partlyInQuestion: string;
  readonly partlyEstimated: string;
  rounded(units: readonly string[]): string;
  readonly cautions: readonly string[];
  readonly page: PageWords;
  readonly buyer: BuyerWords;
}

export type BodyPart = "head" | "hands" | "feet";

/** Words of the page around the chart. */
export interface PageWords {
  readonly chart: string;
  readonly figure: string;
  readonly bodies: string;
  /** What is to be known of the outlines of bodies. */
  readonly outlines: string;
  readonly patterns: string;
  readonly contents: string;
  readonly cautions: string;
  readonly find: string;
  readonly findHint: string;
  readonly sortHint: string;
  readonly sortedUp: string;
  readonly sortedDown: string;
  shown(shown: number, of: number): string;
  readonly noneFound: string;
  readonly draftedFor: string;
  readonly noPatterns: string;
  notJudged(pattern: string): string;
  readonly madeWith: string;
  readonly allMeasures: string;
}

/** Words of the part that answers a buyer. */
export interface BuyerWords {
  readonly title: string;
  readonly intro: string;
  readonly choose: string;
  readonly chooseNone: string;
  readonly orType: string;
  readonly unit: string;
  readonly units: Readonly<Record<"in" | "mm" | "cm", string>>;
  readonly moreMeasures: string;
  readonly aboutFigure: string;
  readonly notSaid: string;
  readonly yes: string;
  readonly no: string;
  readonly traits: Readonly<
    Record<"handsOff" | "headOff" | "feetOff" | "softBody" | "jointed" | "heeledFoot", string>
  >;
  readonly clear: string;
  readonly nothingYet: string;
  readonly like: string;
  readonly noneLike: string;
  alike(figure: string): string;
  nearest(figure: string, differs: string): string;
  readonly takeNext: string;
  takeFor(measure: string, patterns: number): string;
  refused(text: string): string;
  counted(kind: FitKind, patterns: number): string;
  readonly needsScript: string;
}

/** Words under a pattern, for its listing and its cover. */
export interface ListingWords {
  draftedFor(figure: string): string;
  fits(names: string, isFirst: boolean): string;
  change(names: string): string;
  unsure(names: string): string;
  not(names: string): string;
  readonly nothing: string;
  readonly measureYours: string;
  readonly headings: readonly [pattern: string, figure: string, verdict: string, why: string];
}

/** What a verdict comes to for somebody who buys a pattern. */
export const fitKinds = ["fits", "change", "unsure", "not"] as const;

export type FitKind = (typeof fitKinds)[number];
