import { mean } from "simple-statistics";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import type { TakenReading } from "../../addin/chart/readReadings.ts";
import { settle, slipErrors } from "../../addin/checking/repeatability.ts";
import type { TechnicalError } from "../../addin/checking/technicalError.ts";
import { technicalErrorOfReadings } from "../../addin/checking/technicalError.ts";
import type { ReadingError } from "../../addin/measures/readingError.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { readingErrorMm } from "../../addin/measures/readingError.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import type { KnownReadings, NewReading } from "../readings/readings.ts";
import { keepReadings, settledWords } from "../readings/readings.ts";
import { shownLength } from "../ui/words.ts";
import type { Measured, Taken } from "./measuring.ts";
import { measuringEdits } from "./measuring.ts";

/** What was read off the tape in this session, one round after the other; the last is going on. */
export type Rounds = readonly Taken[];

/** Of each measure what was read last. */
export function latestOf(rounds: Rounds): Taken {
  return Object.assign({}, ...rounds) as Taken;
}

/** All readings of a measure in this session, in the order in which they were taken. */
export function sessionReadings(rounds: Rounds, { key }: MeasureColumn): readonly number[] {
  return rounds.flatMap((taken) => taken[key] ?? []);
}

/** What was read before this session. */
export interface Earlier {
  readonly mm: readonly number[];
  /** Rows of the table Readings, else what the chart has of a length that was measured. */
  readonly from: "readings" | "chart" | "nowhere";
}

/** How earlier readings count: beside those of now, or no more. */
export type Before = "count" | "replaced";

/** What a session goes by. */
export interface MeasuringContext {
  readonly present: PresentChart;
  readonly figure: Measured;
  /** The readings of the figure in the table Readings. */
  readonly known: readonly TakenReading[];
  readonly errors: ReadingError;
}

export function earlierReadings(context: MeasuringContext, column: MeasureColumn): Earlier {
  const rows = knownOf(context, column);
  if (rows.length > 0) return { mm: rows.map(({ mm }) => mm), from: "readings" };
  const { place } = context.figure;
  const inChart = place === undefined ? Number.NaN : (column.mm[place] ?? Number.NaN);
  const isMeasured = place !== undefined && !Number.isNaN(inChart) && !column.origins?.has(place);
  return isMeasured ? { mm: [inChart], from: "chart" } : { mm: [], from: "nowhere" };
}

function knownOf({ known, figure }: MeasuringContext, column: MeasureColumn): readonly TakenReading[] {
  return known.filter((row) => row.figure === figure.place && row.column.key === column.key);
}

/**
 * Two readings by one hand differ by more than this in one case of twenty: 1.96·√2 standard deviations.
 *
 * Source: the repeatability limit of ISO 5725-6, 2.8 standard deviations, with its derivation on the page “Repeatability limit” of
 * innovation.world (innovation.world/invention/repeatability-limit/4); the standard itself was not seen.
 */
const repeatabilityLimit = 2.8;

/** A reading beside those before it. */
export interface Repeat {
  readonly isUsual: boolean;
  /** “First 134 mm, now 135 mm: 1 mm apart, which is usual (up to 1.4 mm).” */
  readonly says: string;
}

/** How a reading repeats the first; `undefined` where there is none before it. */
export function repeatOf(
  before: readonly number[],
  mm: number,
  { unit, key }: MeasureColumn,
  errors: ReadingError,
): Repeat | undefined {
  const [first] = before;
  if (first === undefined) return undefined;
  const limitMm = repeatabilityLimit * readingErrorMm(errors, mean([first, mm]), key);
  const apartMm = Math.abs(mm - first);
  // Sums of decimals are off by a hair.
  const isUsual = apartMm - limitMm < 1e-6;
  const [was, now] = [first, mm].map((length) => shownLength(length, unit));
  const limit = lengthWords(limitMm, unit);
  const apart = apartMm < 0.05 ? "the same" : `${lengthWords(apartMm, unit)} apart`;
  return {
    isUsual,
    says: `First ${was ?? ""}, now ${now ?? ""}: ${apart}, ${isUsual ? `which is usual (up to ${limit})` : `more than is usual (${limit})`}.`,
  };
}

/** What becomes of the readings of one measure. */
export interface Outcome {
  readonly column: MeasureColumn;
  /** mm, those of this session. */
  readonly now: readonly number[];
  readonly earlier: Earlier;
  /** The readings that what the chart is to hold comes from. */
  readonly counted: readonly number[];
  /** What the chart is to hold; `undefined` where it stays as it is. */
  readonly mm: number | undefined;
  /** In words, where there is more to say than the reading. */
  readonly words: string | undefined;
}

/** What is to be written for each measure that was read, in the order given. */
export function outcomesOf(
  context: MeasuringContext,
  rounds: Rounds,
  columns: readonly MeasureColumn[],
  before: Before,
): readonly Outcome[] {
  return columns.flatMap((column) => {
    const now = sessionReadings(rounds, column);
    return now.length === 0 ? [] : [outcomeOf(context, column, now, before)];
  });
}

function outcomeOf(
  context: MeasuringContext,
  column: MeasureColumn,
  now: readonly number[],
  before: Before,
): Outcome {
  const earlier = earlierReadings(context, column);
  const errorMm = readingErrorMm(context.errors, mean([...now]), column.key);
  // A slip that stands in the chart without a row of its own is mended, not averaged.
  const isSlip =
    earlier.from === "chart" &&
    earlier.mm.every((first) => now.every((mm) => Math.abs(mm - first) > slipErrors * errorMm));
  const counted = before === "count" && !isSlip ? [...earlier.mm, ...now] : now;
  const settled = settle(counted, errorMm);
  const shown = (mm: number): string => shownLength(mm, column.unit);
  const words = (): string | undefined => {
    if (settled.kind === "unlike") {
      return `${counted.map(shown).join(" and ")} are too far apart to be one measure read twice. Take a third reading: it says which is right. Until then the chart stays as it is.`;
    }
    const isReplaced =
      counted.length === now.length && earlier.mm.some((mm) => Math.abs(mm - settled.mm) >= 0.05);
    if (isReplaced) {
      return `Before: ${earlier.mm.map(shown).join(", ")}${isSlip ? ", too far off to be the same" : ""}. It is replaced by ${shown(settled.mm)}.`;
    }
    return counted.length > 1
      ? `The chart gets ${shown(settled.mm)}, ${settledWords(settled.kind, counted.length)}.`
      : undefined;
  };
  return {
    ...{ column, now, earlier, counted },
    mm: settled.kind === "unlike" ? undefined : settled.mm,
    words: words(),
  };
}

/** How closely the readings of this session repeat those before them; `undefined` where nothing was read twice. */
export function repeatability(outcomes: readonly Outcome[]): TechnicalError | undefined {
  const repeated = outcomes.flatMap(({ counted, mm }) =>
    counted.length > 1 && mm !== undefined ? [counted] : [],
  );
  return repeated.length === 0 ? undefined : technicalErrorOfReadings(repeated);
}

/** Who measured, when and with what; `undefined` keeps no readings beside the chart. */
export interface Keeping {
  readonly date: string;
  readonly by: string;
  readonly tool: string;
}

/** All that is written for a session, as one action: the chart’s cells, and every reading as a row of the table Readings. */
export function sessionEdits(
  context: MeasuringContext,
  table: TableInfo,
  outcomes: readonly Outcome[],
  keeping: Keeping | undefined,
  now: { readonly readings: KnownReadings; readonly sheets: readonly string[]; readonly before: Before },
): readonly Edit[] {
  const { present, figure } = context;
  const cells = Object.fromEntries(
    outcomes.flatMap(({ column, mm }) => (mm === undefined ? [] : [[column.key, mm] as const])),
  );
  const edits = measuringEdits(present, table, figure, cells);
  const { readings } = now;
  if (!keeping) return edits;
  const rows = outcomes.flatMap(({ column, earlier, counted, now: taken }): readonly NewReading[] => {
    const isFirst = earlier.from === "chart" && counted.length > taken.length;
    return [
      // When and by whom the chart’s own was taken nobody knows; it is kept so that the mean can be worked out again.
      ...(isFirst ? earlier.mm : []).map((mm) => ({ ...blank, figure: figure.name, column, mm })),
      ...taken.map((mm) => ({ ...keeping, figure: figure.name, column, mm })),
    ];
  });
  const dropped = now.before === "replaced" ? outcomes.flatMap(({ column }) => knownOf(context, column)) : [];
  const { table: kept } = readings;
  const width = kept?.area.columns ?? 0;
  return [
    ...edits,
    ...keepReadings(
      rows,
      { table: kept, cells: readings.cells, sheets: now.sheets },
      columnUnit(present.chart),
    ),
    ...dropped.map(({ row }): Edit => ({
      kind: "cells",
      at: { sheet: kept?.area.sheet ?? "", row: (kept?.area.row ?? 0) + row, column: kept?.area.column ?? 0 },
      cells: [Array.from({ length: width }, () => ({ value: undefined }))],
    })),
  ];
}

const blank: Keeping = { date: "", by: "", tool: "" };

function columnUnit({ measures }: Chart): MeasureColumn["unit"] {
  return measures[0]?.unit ?? "mm";
}
