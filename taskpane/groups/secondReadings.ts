import type { Chart } from "../../addin/chart/chart.ts";
import type { ReadingError } from "../../addin/measures/readingError.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { fromMm } from "../../addin/measures/units.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { RepeatedReadings, UnlikeReadings } from "../../addin/similarity/certainty/repeatedReadings.ts";
import {
  errorsOf,
  fewestFiguresRepeated,
  repeatedReadings,
} from "../../addin/similarity/certainty/repeatedReadings.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import type { Book } from "../shell/book.ts";
import { chartIn } from "../shell/chartIn.ts";
import type { KnownReadings } from "../readings/readings.ts";
import { readKnownReadings } from "../readings/readings.ts";
import { failureText } from "../shell/notice.ts";
import { count, shownLength } from "../ui/words.ts";
import { namesWords } from "./words.ts";

/** The name of the table that is taken by itself. */
export const usualSecond = "SecondReadings";

/** Figures that were measured twice, and what that tells of the readings. */
export interface SecondReadings {
  /** Where the second readings stand; `undefined` where only rows of one name within the chart count. */
  readonly table: TableInfo | undefined;
  /** Why that table could not be read, in words. */
  readonly failure: string | undefined;
  /** True for a table without a single reading. */
  readonly isEmpty: boolean;
  /** The table Readings, which counts beside them. */
  readonly known: KnownReadings;
  readonly repeated: RepeatedReadings;
  /** What counts as the error of a reading, as plain data for a worker. */
  readonly errors: ReadingError;
}

/** Never rejects: a table that cannot be read is said, and groups can do without it. */
export async function readSecond(
  book: Book,
  chart: Chart,
  table: TableInfo | undefined,
): Promise<SecondReadings> {
  const known = await readKnownReadings(book, chart);
  const found = (second?: Chart, failure?: string): SecondReadings =>
    book.once(secondReadings, chart, known, second, table, failure);
  if (!table) return found();
  try {
    return found(chartIn(book, await book.readTable(table.name)));
  } catch (error) {
    return found(undefined, failureText(error));
  }
}

function secondReadings(
  chart: Chart,
  known: KnownReadings,
  second: Chart | undefined,
  table: TableInfo | undefined,
  failure: string | undefined,
): SecondReadings {
  const repeated = repeatedReadings(chart, second, known.taken.readings);
  const isEmpty = second?.measures.every(({ mm }) => mm.every(Number.isNaN)) ?? false;
  return { table, failure, isEmpty, known, repeated, errors: errorsOf(repeated) };
}

/**
 * How exact the readings of some measures are taken to be: “Reading error (…) of Bust 0.4 mm, from 8 figures measured twice; of
 * Waist 0.3 mm, from 7; of the others 0.5 mm, or 0.25 % where that is more.”
 */
export function readingErrorWords(
  { repeated: { errors } }: Pick<SecondReadings, "repeated">,
  columns: readonly Pick<ComparedColumn, "column">[],
): string {
  const known = errors.filter(({ key }) => columns.some(({ column }) => column.key === key));
  if (known.length === 0) {
    return "A careful tape reading is taken to be off by half a millimetre as a rule (standard deviation: two readings of three by less), or by a quarter of one percent where that is more.";
  }
  const words = known.map(({ column, errorMm, figures }, i) => {
    const from = i === 0 ? `${count(figures, "figure")} measured twice` : String(figures);
    return `of ${column.heading} ${errorText(errorMm, column.unit)}, from ${from}`;
  });
  const others = known.length < columns.length ? ["of the others 0.5 mm, or 0.25 % where that is more"] : [];
  return `Reading error (standard deviation: two readings of three are off by less) ${[...words, ...others].join("; ")}. The fewer figures, the nearer to the usual 0.5 mm.${known.some(({ settledMm }) => Object.keys(settledMm).length > 0) ? ` ${meanWords}` : ""}`;
}

/** Of lengths that stand for several readings of the table Readings. */
const meanWords =
  "Where the chart holds the mean or the middle of several readings, what you repeat averages out; what differs from hand to hand stays.";

/** Two digits are all that some ten figures can tell. */
function errorText(mm: number, unit: LengthUnit): string {
  return `${String(Number(fromMm(mm, unit).toPrecision(2)))} ${unit}`;
}

const mostNames = 6;

/**
 * What became of the second readings, and what of them was left out. Nothing where there is no table of them and rows of one
 * name are too few to tell: those are for the checks of the chart.
 */
export function secondWords(second: SecondReadings): readonly string[] {
  return [...repeatWords(second), ...knownWords(second.known)];
}

/** What of the table Readings is left out. */
function knownWords({ table, failure, taken: { problems } }: KnownReadings): readonly string[] {
  if (failure !== undefined) return [`${failure} Until then none of its readings counts.`];
  const [first] = problems;
  if (!table || !first) return [];
  return [
    `${count(problems.length, "row")} of the table ${table.name} ${problems.length === 1 ? "is" : "are"} left out. ${first.message}`,
  ];
}

function repeatWords({ table, failure, isEmpty, known, repeated }: SecondReadings): readonly string[] {
  const { errors, tooFew, slips, strangers } = repeated;
  if (failure !== undefined) {
    return [
      `The second readings cannot be read, so that the usual reading error counts. Table ${table?.name ?? ""}: ${failure}`,
    ];
  }
  const empty = table && isEmpty ? [`The table ${table.name} has no reading yet.`] : [];
  if (errors.length === 0 && (!table || isEmpty) && !known.table) return empty;
  const isUnlike = errors.length + tooFew.length === 0 && table;
  return [
    ...empty,
    ...(isUnlike
      ? [`The table ${table.name} has no reading of a measure of the chart for a figure of the chart.`]
      : []),
    ...(errors.length > 0
      ? [`They show how exact your readings are of ${count(errors.length, "measure")}: ${headings(errors)}.`]
      : []),
    ...(tooFew.length > 0
      ? [
          `Measured twice on fewer than ${String(fewestFiguresRepeated)} figures, so that the usual reading error counts: ${namesWords(
            // Those that lack least come first.
            tooFew
              .toSorted((a, b) => b.figures - a.figures)
              .map(({ column, figures }) => `${column.heading} (${String(figures)})`),
            mostNames,
          )}.`,
        ]
      : []),
    ...(slips.length > 0
      ? [
          `Left out, since the readings differ too much to be one measure read twice: ${namesWords(slips.map(slipWords), mostNames)}. Take them once more.`,
        ]
      : []),
    ...(strangers.length > 0
      ? [`Not in the chart, and so left out: ${namesWords(strangers, mostNames)}.`]
      : []),
  ];
}

function headings(errors: RepeatedReadings["errors"]): string {
  return namesWords(
    errors.map(({ column }) => column.heading),
    mostNames,
  );
}

/** “Bust of Linnet (135 mm and 185 mm)” */
function slipWords({ figure, column, mm }: UnlikeReadings): string {
  return `${column.heading} of ${figure} (${mm.map((each) => shownLength(each, column.unit)).join(" and ")})`;
}
