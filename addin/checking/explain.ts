import type { Chart } from "../chart/chart.ts";
import { fromMm, mmPerUnit, toMm } from "../measures/units.ts";
import { amount, mendedAmount, roughAmount } from "./amount.ts";
import { beforeDigitSlip, type DigitSlip } from "./digitSlips.ts";
import type { Correction, FlagKind } from "./flag.ts";
import { limit, type Proportions } from "./proportions.ts";
import { columnAt, correctionAt, type Place } from "./readings.ts";
import { timesOff, unitQuestion, unitSlips } from "./unitSlips.ts";

/** What may have happened to a reading that is out of proportion. */
export interface Explanation {
  readonly kind: FlagKind;
  readonly why: string;
  readonly corrections: readonly Correction[];
  /** Readings that need no flag of their own once this one is raised. */
  readonly places: readonly Place[];
}

interface Candidate extends Explanation {
  /** Smaller is more likely: how far out of proportion the mended readings are, and how rare the slip is. */
  readonly cost: number;
}

/** Mended readings must be in proportion, and at least this many times closer to it than before. */
const clearlyBetter = 2.5;
/** Digits and neighbours can be swapped in so many ways that the mended reading must be this close, in spreads. */
const quiteClose = 2;
/** How much rarer than a mix-up of units each slip is; this project’s own judgement. */
const rarity: Readonly<Record<string, number>> = {
  "half of the girth": 0.1,
  "twice the girth": 0.3,
  "two readings swapped": 0.2,
  "digits swapped": 0.3,
  "digit doubled": 0.3,
  "digit missing": 1.2,
};
/** A factor that no confusion of the column’s unit with another one explains. */
const noSuchUnit = 1;
/** A mended reading that is finer than the column is read. */
const finerThanRead = 0.5;

/**
 * The most likely slip that turns a reading which is out of proportion into one that is not; `undefined` when none does.
 *
 * @param logs ln(mm) as far as mended already
 */
export function explain(
  chart: Chart,
  fit: Proportions,
  logs: readonly (readonly number[])[],
  place: Place,
): Explanation | undefined {
  const candidates = [
    ...unitCandidates(chart, fit, logs, place),
    ...girthCandidates(chart, fit, logs, place),
    ...digitCandidates(chart, fit, logs, place),
    ...swapCandidates(chart, fit, logs, place),
  ];
  return candidates.sort((a, b) => a.cost - b.cost)[0];
}

type Look = readonly [chart: Chart, fit: Proportions, logs: readonly (readonly number[])[], place: Place];

/** Distance from proportion after mending, or `undefined` when that is no clear gain. */
function gain([, fit, logs, place]: Look, mm: number, farthest = limit): number | undefined {
  const { figure, column } = place;
  const before = Math.abs(fit.deviation(figure, column, logs[figure]![column]!));
  const after = Math.abs(fit.deviation(figure, column, Math.log(mm)));
  if (!(after <= farthest && after * clearlyBetter <= before)) return undefined;
  return Math.abs(Math.log(mm) - fit.expected(figure, column)) / fit.spread(figure, column);
}

function unitCandidates(...look: Look): readonly Candidate[] {
  const [chart, , , place] = look;
  const { unit, heading } = columnAt(chart, place.column);
  const reading = readingAt(chart, place);
  return unitSlips(unit).flatMap((slip) => {
    const mm = reading * slip.factor;
    const off = gain(look, mm);
    if (off === undefined) return [];
    const rounding = slip.readIn === "in" ? 0 : coarseness(chart, place.column, mm);
    const why =
      `${heading} ${amount(reading, unit)} is ${timesOff(slip.factor)} for this figure: ` +
      `${unitQuestion(slip, "was it")} ${mendedAmount(mm, unit)} would be in proportion.`;
    const isPower = Math.abs(Math.abs(Math.log10(slip.factor)) - 1) < 1e-9;
    const cost = off + rounding + ((slip.readIn ?? isPower) ? 0 : noSuchUnit);
    return [
      {
        kind: "wrong unit" as const,
        why,
        corrections: [correctionAt(chart, place, mm)],
        places: [place],
        cost,
      },
    ];
  });
}

function girthCandidates(...look: Look): readonly Candidate[] {
  const [chart, , , place] = look;
  const { unit, heading, kind } = columnAt(chart, place.column);
  if (kind !== "girth" && kind !== undefined) return [];
  const reading = readingAt(chart, place);
  return ([2, 0.5] as const).flatMap((factor) => {
    const mm = reading * factor;
    const off = gain(look, mm);
    if (off === undefined) return [];
    const flagKind = factor === 2 ? ("half of the girth" as const) : ("twice the girth" as const);
    const about = factor === 2 ? "half" : "twice";
    const question = factor === 2 ? "was it measured flat, from side to side?" : "was it doubled by mistake?";
    const why = `${heading} ${amount(reading, unit)} is about ${about} what is in proportion: ${question} ${mendedAmount(mm, unit)} would fit the figure.`;
    return [
      {
        kind: flagKind,
        why,
        corrections: [correctionAt(chart, place, mm)],
        places: [place],
        cost: off + rarity[flagKind]!,
      },
    ];
  });
}

const digitQuestion: Readonly<Record<DigitSlip, string>> = {
  "digits swapped": "were two digits swapped?",
  "digit doubled": "was a digit typed twice?",
  "digit missing": "is a digit missing?",
};

function digitCandidates(...look: Look): readonly Candidate[] {
  const [chart, fit, , place] = look;
  const { unit, heading } = columnAt(chart, place.column);
  const reading = readingAt(chart, place);
  const fitting = beforeDigitSlip(fromMm(reading, unit), unit === "in").flatMap(({ slip, length }) => {
    const mm = toMm(length, unit);
    const off = gain(look, mm, quiteClose);
    return off === undefined ? [] : [{ slip, mm, off }];
  });
  const severalMissing = fitting.filter(({ slip }) => slip === "digit missing").length > 1;
  return fitting.map(({ slip, mm, off }) => {
    // Which digit is missing can only be told when one alone puts the reading in proportion.
    const unsure = slip === "digit missing" && severalMissing;
    const about = unsure
      ? `About ${roughAmount(Math.exp(fit.expected(place.figure, place.column)), unit)}`
      : mendedAmount(mm, unit);
    return {
      kind: slip,
      why: `${heading} ${amount(reading, unit)} is out of proportion: ${digitQuestion[slip]} ${about} would be in proportion.`,
      corrections: unsure ? [] : [correctionAt(chart, place, mm)],
      places: [place],
      cost: off + rarity[slip]! + (unsure ? noSuchUnit : 0),
    };
  });
}

/** The reading changed places with that of the neighbour column or the neighbour row. */
function swapCandidates(...look: Look): readonly Candidate[] {
  const [chart, , , { figure, column }] = look;
  const neighbours = [
    { figure, column: column - 1 },
    { figure, column: column + 1 },
    { figure: figure - 1, column },
    { figure: figure + 1, column },
  ];
  return neighbours
    .filter((other) => readingAt(chart, other) > 0)
    .flatMap((other) => swapCandidate(look, other) ?? []);
}

function swapCandidate([chart, fit, logs, place]: Look, other: Place): Candidate | undefined {
  const [mine, theirs] = [columnAt(chart, place.column), columnAt(chart, other.column)];
  // The numbers change places, each into the unit of the column where it lands.
  const myMm = (readingAt(chart, other) / mmPerUnit[theirs.unit]) * mmPerUnit[mine.unit];
  const theirMm = (readingAt(chart, place) / mmPerUnit[mine.unit]) * mmPerUnit[theirs.unit];
  const myOff = gain([chart, fit, logs, place], myMm, quiteClose);
  const theirOff = gain([chart, fit, logs, other], theirMm, quiteClose);
  if (myOff === undefined || theirOff === undefined) return undefined;
  const [first, second] =
    place.figure < other.figure || place.column < other.column ? [place, other] : [other, place];
  const says = (at: Place) =>
    place.column === other.column
      ? `${chart.figures[at.figure]!} ${amount(readingAt(chart, at), mine.unit)}`
      : `${columnAt(chart, at.column).heading} ${amount(readingAt(chart, at), columnAt(chart, at.column).unit)}`;
  const where = place.column === other.column ? `${mine.heading}: ` : "";
  return {
    kind: "two readings swapped",
    why: `${where}${says(first)} and ${says(second)} would both be in proportion the other way round: do they stand in each other’s cells?`,
    corrections: [correctionAt(chart, place, myMm), correctionAt(chart, other, theirMm)],
    places: [first, second],
    cost: Math.max(myOff, theirOff) + rarity["two readings swapped"]!,
  };
}

function readingAt(chart: Chart, { figure, column }: Place): number {
  return chart.measures[column]?.mm[figure] ?? Number.NaN;
}

/** A cost for a reading that is finer than nine in ten readings of its column. */
function coarseness(chart: Chart, column: number, mm: number): number {
  const { mm: readings, unit } = columnAt(chart, column);
  const known = Array.from(readings).filter((reading) => reading > 0);
  const step = [1, 0.5, 0.25, 0.1, 0.05].find(
    (one) => known.filter((reading) => isMultiple(fromMm(reading, unit), one)).length >= 0.9 * known.length,
  );
  return step === undefined || isMultiple(fromMm(mm, unit), step) ? 0 : finerThanRead;
}

function isMultiple(length: number, step: number): boolean {
  return Math.abs(length / step - Math.round(length / step)) < 1e-6;
}
