import type { Cells } from "../addin/chart/cell.ts";
import type { Chart } from "../addin/chart/chart.ts";
import { defaultEaseRules } from "../addin/chart/defaultEaseRules.ts";
import type { EaseRule } from "../addin/chart/easeRule.ts";
import type { GarmentClass } from "../addin/chart/garmentClass.ts";
import { defaultGarmentClasses } from "../addin/chart/garmentClass.ts";
import type { PatternTable } from "../addin/chart/pattern.ts";
import { readEaseRules } from "../addin/chart/readEaseRules.ts";
import { readGarmentClasses } from "../addin/chart/readGarmentClasses.ts";
import { readPatternTable } from "../addin/chart/readPatterns.ts";
import { readReadings } from "../addin/chart/readReadings.ts";
import { columnNamed, tableColumns } from "../addin/chart/tableRows.ts";
import type { Fitting } from "../addin/fit/match.ts";
import { prepareFitting } from "../addin/fit/match.ts";
import type { ReadingError } from "../addin/measures/readingError.ts";
import { errorsOf, repeatedReadings } from "../addin/similarity/certainty/repeatedReadings.ts";
import { onceFor } from "../addin/chart/workOnce.ts";
import type { Parameter } from "./arguments.ts";
import { chartOf, optionalRange, range, tableFrom } from "./arguments.ts";
import type { Failure } from "./descriptor.ts";
import { naming } from "./descriptor.ts";

type Classes = readonly GarmentClass[];

/** A table of patterns, still to be matched with the chart and the classes of the same call. Hosts may hand over empty cells as 0. */
export function patterns(): Parameter<(chart: Chart, classes: Classes) => PatternTable> {
  return range(
    "The patterns: one row each, with the headings Pattern and Garment class, for example Patterns[#All].",
    (cells) => (chart, classes) => patternsOf(tableFrom(cells), chart, classes),
  );
}

/** The patterns in a table, see {@link tableFrom}. */
export const patternsOf = onceFor((cells: Cells, chart: Chart, classes: Classes) =>
  readPatternTable(cells, chart, { zeroIsEmpty: true, classes }),
);

/** A table of ease rules, still to be matched with the classes of the same call. */
export function easeRules(): Parameter<(classes: Classes) => readonly EaseRule[]> {
  return optionalRange(
    "A table with the headings Garment class, Measure, Least %, Least (mm), Most %, Most (mm). Classes that it names go by it alone.",
    "the ease rules that come with Measure Book",
    (cells) => (classes) => (cells ? easeRulesOf(tableFrom(cells), classes) : defaultEaseRules),
  );
}

const easeRulesOf = onceFor((cells: Cells, classes: Classes) =>
  readEaseRules(cells, { zeroIsEmpty: true, classes }),
);

/** Classes of garments of one’s own, beside and instead of those that come with the project. */
export function garmentClasses(): Parameter<Classes> {
  return optionalRange(
    "A table with the headings Garment class and Worn on: classes of your own, or others of the same names.",
    "the garment classes that come with Measure Book",
    (cells) => (cells ? classesOf(tableFrom(cells)) : defaultGarmentClasses),
  );
}

const classesOf = onceFor((cells: Cells) => readGarmentClasses(cells, { zeroIsEmpty: true }));

/**
 * Readings that were repeated, still to be matched with the chart of the same call. Figures that stand in the chart twice tell as
 * well, given or not.
 */
export function repeats(): Parameter<(chart: Chart) => ReadingError> {
  return optionalRange(
    "The table Readings, or second readings of the figures: how exact readings are, for what is too close to call.",
    "half a millimetre, or 0.25 %",
    (cells) => (chart) => errorsFor(cells && tableFrom(cells), chart),
  );
}

const errorsFor = onceFor((cells: Cells | undefined, chart: Chart): ReadingError => {
  if (!cells) return errorsOf(repeatedReadings(chart));
  const isOnePerRow = columnNamed(tableColumns(cells), ["Measure", "Measurement"]) !== undefined;
  return errorsOf(
    isOnePerRow
      ? repeatedReadings(chart, undefined, readReadings(cells, chart, { zeroIsEmpty: true }).readings)
      : repeatedReadings(chart, chartOf(cells)),
  );
});

/** The tables of one call, made ready. */
export function fittingOf(given: {
  readonly patterns: (chart: Chart, classes: Classes) => PatternTable;
  readonly figures: Chart;
  readonly rules: (classes: Classes) => readonly EaseRule[];
  readonly classes: Classes;
  readonly readings: (chart: Chart) => ReadingError;
}): { readonly table: PatternTable; readonly fitting: Fitting } {
  const { patterns: read, figures, rules, classes, readings } = given;
  const table = read(figures, classes);
  const readingError = naming("readings", () => readings(figures));
  return { table, fitting: fittingFor(table.patterns, figures, rules(classes), readingError) };
}

const fittingFor = onceFor(
  (table: PatternTable["patterns"], figures: Chart, rules: readonly EaseRule[], readingError: ReadingError) =>
    prepareFitting(table, figures, { rules, readingError }),
);

export const badPatterns: Failure = {
  when: "The patterns have no headings Pattern and Garment class, or no rows.",
  shows: "#VALUE!",
};

export const unknownPattern: Failure = {
  when: "A pattern is not in the table. The message offers the nearest codes.",
  shows: "#N/A",
};

export const badRules: Failure = {
  when: "An ease rule names an unknown class or measure, or has a least ease above its most. The message names the row.",
  shows: "#VALUE!",
};

export const badClasses: Failure = {
  when: "A garment class is worn on no part that is known, or stands in its table twice. The message names the row.",
  shows: "#VALUE!",
};

export const badReadings: Failure = {
  when: "The readings have neither the headings Figure, Measure and Reading nor those of a chart.",
  shows: "#VALUE!",
};

/** How the verdicts are reached, for the reference of every function that gives them. */
export const howJudged =
  "Every measure that the rules of the garment class name is compared with its ease: between least and most it fits, as far " +
  "again below it is snug and as far again above it is loose (half as far for lengths). Then the garment is put on, over the head and stepped into, " +
  "and every opening must pass what stands in its way; the best way counts. The verdict is the worst of all. Where a wrong " +
  "reading of half a millimetre (or a quarter of a percent) would turn a yes into a no, it is too close to call; where the " +
  "readings given show another error of a measure, on five figures or more, by as much as that.\n\n" +
  "Worn over names the patterns underneath: each takes room with the thickness of its cloth, and more where its cloth lies " +
  "in folds. The garment’s own cloth takes room as well: π times its thickness inside a girth, since cloth that is bent " +
  "round keeps its length half way through (geometry). A cloth that stretches is judged at half its stretch; where the " +
  "least ease is negative, the stretch is what it is made up with, and is not counted again.\n\n" +
  "Percentages are for cloth round soft, tapering parts. What is hard has to be inside as a whole, whatever a rule says: the " +
  "foot in a shoe or stocking (length, in a shoe width too), the hand in a glove (girth and length), the head in a cap. Where it is larger than the garment, " +
  "stretched as far as is comfortable, it will not go on.\n\n" +
  "Text columns of the chart count too: Hands removable, Head removable, Wig, Body (soft or hard), Jointed, Foot " +
  "shape (flat or heeled). Where hands come off, a sleeve has to pass the wrist only. A stiff, hard arm without a joint needs a " +
  "tenth more sleeve than the hand: a starting value of this project. A soft body gives by a twentieth of its girth: likewise.";

/** What each way to open needs and adds, for the reference. */
export const openingsTable = [
  ["Opens", "What it adds, with the opening undone", "What has to be given"],
  ["none", "nothing: the closed openings have to pass", "the openings that the garment class names"],
  [
    "back, front or shoulder (from the neck)",
    "twice its length to the neck opening; to the waist twice what it reaches below the waist",
    "Opening length; for the waist also Back waist length, of the garment or of the figure that it was drafted for",
  ],
  ["side (bodices and dresses)", "twice its length to the waist, nothing to the neck", "Opening length"],
  [
    "back, front, side or waist (skirts and trousers)",
    "twice its length to the waist",
    "Opening length, and the finished waist or Waist opening",
  ],
  [
    "full length",
    "everything: it is laid round the body and passes nothing but cuffs and leg hems",
    "nothing",
  ],
] as const;

/** What a sleeve or leg passes, for the reference. */
export const limbsTable = [
  ["Sleeves, legs", "What the cuff or leg hem has to pass"],
  ["long sleeve; glove", "the hand, or the wrist where the hands come off"],
  ["sleeve to the elbow", "that and the forearm"],
  ["short sleeve", "that, the elbow and the upper arm"],
  [
    "leg to the ankle or floor; sock, stocking, boot",
    "heel and instep (the ball of the foot where the heel is not measured), or the ankle where the feet come off",
  ],
  ["leg to the calf", "that and the calf"],
  ["leg to the knee", "that and the knee"],
  ["leg to the thigh", "that and the middle of the thigh"],
  ["leg hole of briefs", "that and the thigh"],
] as const;

/** The headings of the patterns table, for the reference. */
export const patternHeadings =
  "Beside Pattern and Garment class, the patterns may have the columns Title, Drafted for (a figure of the chart), Stretch %, " +
  "Thickness, Worn over (codes of patterns), Opens (back, front, shoulder, side, waist, full length or none), Opening length, " +
  "Neck opening, Cuff opening (empty without sleeves), Hem opening, Waist opening, Sleeves (none, short, elbow or long), Ends at " +
  "(under the bust, waist, hip, thigh, knee, calf, ankle or floor; for a sock or stocking its upper end), Length (to the hem: from the waist, or of tops, dresses and coats from the back of the neck), and finished measures such as Bust or " +
  "Foot length. What a garment does not have is not judged: without sleeves no upper arm, in an ankle sock no calf. Where " +
  "Sleeves and Ends at are empty, the garment class tells, then what is given: a cuff opening means long sleeves, none means no sleeves. " +
  "A finished measure that is left empty is taken from the figure that the pattern was drafted for, with the ease half way " +
  "between least and most.";

export const caution =
  "A verdict of fit says nothing about safety: for figures that children play with, leave out cords, ribbons that tie " +
  "around the neck, and small parts such as buttons and beads that come off.";
