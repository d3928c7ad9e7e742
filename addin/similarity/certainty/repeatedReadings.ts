import { mean } from "simple-statistics";
import type { Chart, MeasureColumn } from "../../chart/chart.ts";
import { figureKey } from "../../chart/find.ts";
import { groupedBy } from "../../chart/groupedBy.ts";
import type { TakenReading } from "../../chart/readReadings.ts";
import { robustSpread } from "../../checking/modifiedZ.ts";
import type { ReadingsOfOne } from "../../checking/repeatability.ts";
import {
  drawnToUsual,
  errorParts,
  readingsByThing,
  sameMm,
  settle,
  settledErrorMm,
  slipErrors,
  thingKey,
} from "../../checking/repeatability.ts";
import { technicalErrorOfReadings } from "../../checking/technicalError.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { toMm } from "../../measures/units.ts";
import type { ReadingError } from "../../measures/readingError.ts";
import { readingErrorMm, usualReadingError } from "../../measures/readingError.ts";

/** The error of one reading of a measure, from figures that were measured more than once. */
export interface MeasureError {
  /** The key of the column. */
  readonly key: string;
  readonly column: MeasureColumn;
  /** Technical error of measurement, or the least that the steps of the tape allow where that is more. */
  readonly technicalErrorMm: number;
  /** The same in percent of the mean reading. */
  readonly relativePercent: number;
  /** What counts as the error of a reading: the technical error, drawn towards the usual one by how few figures it comes from. */
  readonly errorMm: number;
  /** How many figures it comes from. */
  readonly figures: number;
  /** mm by the place of the figure: the error of lengths in the chart that stand for several readings of the table Readings. */
  readonly settledMm: Readonly<Record<number, number>>;
}

/** Readings of one figure that are too unlike each other to be one measure read twice. */
export interface UnlikeReadings {
  readonly figure: string;
  readonly column: MeasureColumn;
  readonly mm: readonly number[];
}

/** What readings that were repeated tell about the error of one. */
export interface RepeatedReadings {
  /** In the order of the columns. */
  readonly errors: readonly MeasureError[];
  /** Measures read twice on fewer figures than are needed; the usual error stands for them. */
  readonly tooFew: readonly { readonly column: MeasureColumn; readonly figures: number }[];
  /** Left out as slips, by column, then in the order of the chart. */
  readonly slips: readonly UnlikeReadings[];
  /** Figures of the second chart that the first does not have, as written there. */
  readonly strangers: readonly string[];
}

/** So many figures have to be measured twice before their error counts. The project’s own starting value. */
export const fewestFiguresRepeated = 5;

/**
 * The error of a reading of each measure, from all rows of one name (any case) in a chart and in a second chart, and from the table
 * Readings: what that has of a measure of a figure stands there in place of the chart, which holds their mean.
 *
 * Slips are left out and told: readings of one figure that are farther apart than five errors of one reading. As the error
 * counts the usual one (`usualReadingError`), or the typical one of the measure where that is more, so that nobody’s own way of
 * measuring is cut down to the usual; the typical error is the median difference of the first two readings of each
 * figure over 0.6745·√2. A typical error of more than five usual ones is no error of reading, but another unit or another
 * measure: there the usual one counts.
 *
 * Source of the technical error: see `technicalErrorOfReadings`; of what few figures are worth: `drawnToUsual`.
 *
 * @param second readings of the same figures, in any order of rows and columns and in any units
 * @param taken the table Readings of the chart
 */
export function repeatedReadings(
  chart: Chart,
  second?: Chart,
  taken: readonly TakenReading[] = [],
): RepeatedReadings {
  const first = placesByName(chart);
  const again = second ? placesByName(second) : new Map<string, readonly number[]>();
  const inReadings = readingsByThing(taken);
  const things = new Map(
    inReadings.map(({ figure, column, taken: of }) => [thingKey(figure, column.key), of.map(({ mm }) => mm)]),
  );
  const inTable = new Set(taken.map(({ figure }) => figure));
  const twice = [...first].filter(
    ([name, places]) => places.length + (again.get(name)?.length ?? 0) > 1 || inTable.has(places[0]!),
  );
  const errors: MeasureError[] = [];
  const tooFew: { column: MeasureColumn; figures: number }[] = [];
  const slips: UnlikeReadings[] = [];
  for (const column of chart.measures) {
    const other = second?.measures.find(({ key }) => key === column.key);
    const repeated = twice.flatMap(([name, places]): UnlikeReadings[] => {
      const mm = [
        ...(things.get(thingKey(places[0]!, column.key)) ?? readingsAt(column, places)),
        ...(other ? readingsAt(other, again.get(name) ?? []) : []),
      ];
      return mm.length < 2 ? [] : [{ figure: chart.figures[places[0]!]!, column, mm }];
    });
    if (repeated.length === 0) continue;
    const limits = slipLimitsMm(repeated);
    const kept = repeated.filter(({ mm }, i) => spanOf(mm) <= limits[i]!).map(({ mm }) => mm);
    slips.push(...repeated.filter(({ mm }, i) => spanOf(mm) > limits[i]!));
    if (kept.length < fewestFiguresRepeated) {
      tooFew.push({ column, figures: kept.length });
      continue;
    }
    const { tem, mean: typicalMm } = technicalErrorOfReadings(kept);
    const technicalErrorMm = Math.max(tem, leastReadingErrorMm(kept.flat(), column.unit));
    const errorMm = drawnToUsual(
      technicalErrorMm,
      kept.flat().length - kept.length,
      readingErrorMm(usualReadingError, typicalMm),
    );
    errors.push({
      ...{ key: column.key, column, technicalErrorMm, errorMm, figures: kept.length },
      relativePercent: (100 * technicalErrorMm) / typicalMm,
      settledMm: settledErrors(
        inReadings.filter((thing) => thing.column.key === column.key),
        errorMm,
      ),
    });
  }
  const strangers = second?.figures.filter((figure) => !first.has(figureKey(figure))) ?? [];
  return { errors, tooFew, slips, strangers };
}

/** The errors of the lengths of one measure that stand in the chart for several of these readings. */
function settledErrors(things: readonly ReadingsOfOne[], errorMm: number): Readonly<Record<number, number>> {
  const lengths = ({ taken }: ReadingsOfOne): readonly number[] => taken.map(({ mm }) => mm);
  const sound = things.filter((thing) => spanOf(lengths(thing)) <= slipErrors * errorMm);
  const parts = errorParts(sound.map(({ taken }) => taken));
  return Object.fromEntries(
    sound.flatMap((thing) => {
      const { figure, column, taken } = thing;
      const settled = settle(lengths(thing), errorMm);
      // What somebody wrote over the mean is another reading, and one alone.
      const isInChart = settled.kind !== "unlike" && Math.abs(column.mm[figure]! - settled.mm) < sameMm;
      return taken.length > 1 && isInChart ? [[figure, settledErrorMm(taken, errorMm, parts)]] : [];
    }),
  );
}

/** The usual error, and of each measure that was read twice often enough what counts as its own. */
export function errorsOf({ errors }: Pick<RepeatedReadings, "errors">): ReadingError {
  if (errors.length === 0) return usualReadingError;
  return {
    ...usualReadingError,
    ofMeasures: Object.fromEntries(errors.map(({ key, errorMm }) => [key, errorMm])),
    ofReadings: Object.fromEntries(errors.map(({ key, settledMm }) => [key, settledMm])),
  };
}

/** Where the rows of each figure stand, from 0, by the form in which names are compared. */
function placesByName({ figures }: Chart): ReadonlyMap<string, readonly number[]> {
  return groupedBy(figures.keys(), (place) => figureKey(figures[place]!));
}

function readingsAt({ mm }: MeasureColumn, places: readonly number[]): readonly number[] {
  return places.map((place) => mm[place] ?? Number.NaN).filter((reading) => !Number.isNaN(reading));
}

/** How far apart the readings of each figure may be, in mm. */
function slipLimitsMm(repeated: readonly UnlikeReadings[]): readonly number[] {
  const typical = robustSpread(repeated.map(({ mm: [a, b] }) => a! - b!)) / Math.SQRT2;
  return repeated.map(({ mm }) => {
    const usual = readingErrorMm(usualReadingError, mean([...mm]));
    return slipErrors * (typical <= slipErrors * usual ? Math.max(usual, typical) : usual);
  });
}

function spanOf(mm: readonly number[]): number {
  return Math.max(...mm) - Math.min(...mm);
}

/** The steps in which a tape is read, coarsest first, in its unit: whole and half millimetres, eighths to thirty-seconds. */
const steps: Readonly<Record<LengthUnit, readonly number[]>> = {
  mm: [1, 0.5],
  cm: [0.1, 0.05],
  in: [1 / 8, 1 / 16, 1 / 32],
};

/** Decimals such as 13.65 lie on their step but for this share of it. */
const rounding = 1e-6;

/**
 * The error that a reading has at least, however well it repeats, since it was rounded to a step of the tape: step / √12, which
 * is 0.29 mm for whole millimetres and 0.14 mm for halves. The step is the coarsest on which all readings lie, else
 * the finest.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7, the standard deviation of an even distribution; F.2.2.1 for rounding.
 *
 * @param readings in mm
 * @param unit of the tape
 * @returns mm
 */
export function leastReadingErrorMm(readings: readonly number[], unit: LengthUnit): number {
  const inMm = steps[unit].map((step) => toMm(step, unit));
  const step = inMm.find((each) => readings.every((reading) => liesOn(reading, each)));
  return (step ?? Math.min(...inMm)) / Math.sqrt(12);
}

function liesOn(reading: number, step: number): boolean {
  const times = reading / step;
  return Math.abs(times - Math.round(times)) < rounding;
}
