import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { fromMm, mmPerUnit, toMm } from "../measures/units.ts";
import { amount, mendedAmount, roughAmount } from "./amount.ts";
import { normal95, type ChartModel } from "./chartModel.ts";
import { afterDigitSlip, beforeDigitSlip, type DigitSlip } from "./digitSlips.ts";
import type { Correction, FlagKind } from "./flag.ts";
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
  /** ln of how likely this slip is to have made the reading, beside the others. */
  readonly likelihood: number;
}

/**
 * How often each thing happens when a tape is read and a table typed, of all that goes wrong; this project’s own judgement. A
 * swap may be with any of four neighbours.
 */
const frequency = {
  "wrong unit": 0.2,
  "slipped point": 0.14,
  "no such unit": 0.005,
  "half of the girth": 0.18,
  "twice the girth": 0.15,
  "two readings swapped": 0.05,
  "digits swapped": 0.1,
  "digit doubled": 0.06,
  "digit missing": 0.05,
  "out of proportion": 0.08,
};
/** Two-sided 95 % point and density at 0 of the t distribution of five degrees of freedom. */
const studentT95 = 2.5706;
const studentTDensity = 0.3796;
/** A reading that is wrong for no such reason strays by about this factor, in ln: a Laplace distribution. */
const wildSpread = 0.5;
/** How often any reading is wrong at all. */
const seldom = 0.01;
/** Where no reading is finer than the rest, one may yet have been: as if it were so many of them. */
const leastFiner = 0.2;
/** Readings that are less likely than a wild one by so much, in ln, are not looked at. */
const hopeless = 5;
/** Which of several digits is missing is told only when one of them is so likely. */
const sureOf = 0.7;

/** What is needed to explain readings of a chart. */
export interface Evidence {
  readonly chart: Chart;
  readonly model: ChartModel;
  /** ln of how likely a reading in mm is to be finer than the rest of its column. */
  readonly fineness: (column: number, mm: number) => number;
}

export function evidenceOf(chart: Chart, model: ChartModel): Evidence {
  const grains = chart.measures.map(grainOf);
  return { chart, model, fineness: (column, mm) => finenessOf(chart.measures[column]!, grains[column]!, mm) };
}

/**
 * The most likely thing that made a reading what it is: slips compete by how often they happen, how well the mended reading
 * is in proportion, and in how many ways the slip could have gone. “Out of proportion” stands for all else. A slip that
 * makes large numbers of small ones (reading / mended) leaves fewer numbers of that size, so that it is likelier to have made
 * this one.
 *
 * @param place of a reading
 */
export function explain(evidence: Evidence, place: Place): Explanation {
  const candidates = [
    unexplained(evidence, place),
    ...unitCandidates(evidence, place),
    ...girthCandidates(evidence, place),
    ...digitCandidates(evidence, place),
    ...swapCandidates(evidence, place),
  ];
  return candidates.reduce((best, one) => (one.likelihood > best.likelihood ? one : best));
}

/**
 * ln of the density, in ln(reading), with which a reading that is right stands there: a t distribution of five degrees of
 * freedom, as bodies now and then stray farther than the normal distribution has it, with as much beyond 1.96 spreads.
 */
function asRight(model: ChartModel, { figure, column }: Place, mm: number): number {
  const scale = model.spread(figure, column) * (normal95 / studentT95);
  const t = (Math.log(mm) - model.expected(figure, column)) / scale;
  return Math.log(studentTDensity / scale) - 3 * Math.log(1 + (t * t) / 5);
}

/** The same of a reading that is wrong for no known reason. */
function asWild(model: ChartModel, { figure, column }: Place, mm: number): number {
  const off = Math.abs(Math.log(mm) - model.expected(figure, column));
  return -off / wildSpread - Math.log(2 * wildSpread);
}

function unexplained({ chart, model, fineness }: Evidence, place: Place): Candidate {
  const { heading, unit } = columnAt(chart, place.column);
  const reading = readingAt(chart, place);
  const expected = Math.exp(model.expected(place.figure, place.column));
  return {
    kind: "out of proportion",
    why: `${heading} ${amount(reading, unit)} is ${reading > expected ? "large" : "small"} for this figure: about ${roughAmount(expected, unit)} would be in proportion. Measure again; if it is right, leave it.`,
    corrections: [],
    places: [place],
    likelihood:
      Math.log(frequency["out of proportion"]) +
      asWild(model, place, reading) +
      fineness(place.column, reading),
  };
}

function unitCandidates({ chart, model, fineness }: Evidence, place: Place): readonly Candidate[] {
  const { unit, heading } = columnAt(chart, place.column);
  const reading = readingAt(chart, place);
  return unitSlips(unit).map((slip) => {
    const mm = reading * slip.factor;
    const isPower = Math.abs(Math.abs(Math.log10(slip.factor)) - 1) < 1e-9;
    const often =
      (slip.readIn ? frequency["wrong unit"] : frequency["no such unit"]) +
      (isPower ? frequency["slipped point"] : 0);
    return {
      kind: "wrong unit" as const,
      why:
        `${heading} ${amount(reading, unit)} is ${timesOff(slip.factor)} for this figure: ` +
        `${unitQuestion(slip, "was it")} ${mendedAmount(mm, unit)} would be in proportion.`,
      corrections: [correctionAt(chart, place, mm)],
      places: [place],
      likelihood:
        Math.log(often) +
        asRight(model, place, mm) +
        (isPower ? Math.log(reading / mm) : 0) +
        (slip.readIn === "in" ? 0 : fineness(place.column, mm)),
    };
  });
}

function girthCandidates({ chart, model, fineness }: Evidence, place: Place): readonly Candidate[] {
  const { unit, heading, kind } = columnAt(chart, place.column);
  if (kind !== "girth" && kind !== undefined) return [];
  const reading = readingAt(chart, place);
  return ([2, 0.5] as const).map((factor) => {
    const mm = reading * factor;
    const flagKind = factor === 2 ? ("half of the girth" as const) : ("twice the girth" as const);
    const about = factor === 2 ? "half" : "twice";
    const question = factor === 2 ? "was it measured flat, from side to side?" : "was it doubled by mistake?";
    return {
      kind: flagKind,
      why: `${heading} ${amount(reading, unit)} is about ${about} what is in proportion: ${question} ${mendedAmount(mm, unit)} would fit the figure.`,
      corrections: [correctionAt(chart, place, mm)],
      places: [place],
      likelihood:
        Math.log(frequency[flagKind]) +
        asRight(model, place, mm) +
        Math.log(reading / mm) +
        fineness(place.column, mm),
    };
  });
}

const digitQuestion: Readonly<Record<DigitSlip, string>> = {
  "digits swapped": "were two digits swapped?",
  "digit doubled": "was a digit typed twice?",
  "digit missing": "is a digit missing?",
};

/** Each slip of the hand, with all readings that it may have been before. */
function digitCandidates({ chart, model, fineness }: Evidence, place: Place): readonly Candidate[] {
  const { unit, heading } = columnAt(chart, place.column);
  const reading = readingAt(chart, place);
  const before = beforeDigitSlip(fromMm(reading, unit), unit === "in").flatMap(({ slip, length }) => {
    const mm = toMm(length, unit);
    if (asRight(model, place, mm) < asWild(model, place, mm) - hopeless) return [];
    const ways = afterDigitSlip(length, slip, unit === "in");
    const likelihood =
      Math.log(frequency[slip] / ways) +
      asRight(model, place, mm) +
      Math.log(reading / mm) +
      fineness(place.column, mm);
    return [{ slip, mm, likelihood }];
  });
  return (["digits swapped", "digit doubled", "digit missing"] as const).flatMap((slip) => {
    const all = before.filter((one) => one.slip === slip).sort((a, b) => b.likelihood - a.likelihood);
    const [best] = all;
    if (!best) return [];
    const together = all.reduce((sum, one) => sum + Math.exp(one.likelihood - best.likelihood), 0);
    const isSure = 1 / together > sureOf;
    const about = isSure
      ? mendedAmount(best.mm, unit)
      : `About ${roughAmount(Math.exp(model.expected(place.figure, place.column)), unit)}`;
    return [
      {
        kind: slip,
        why: `${heading} ${amount(reading, unit)} is out of proportion: ${digitQuestion[slip]} ${about} would be in proportion.`,
        corrections: isSure ? [correctionAt(chart, place, best.mm)] : [],
        places: [place],
        likelihood: best.likelihood + Math.log(together),
      },
    ];
  });
}

/** The reading changed places with that of the neighbour column or the neighbour row. */
function swapCandidates(evidence: Evidence, place: Place): readonly Candidate[] {
  const { figure, column } = place;
  const neighbours = [
    { figure, column: column - 1 },
    { figure, column: column + 1 },
    { figure: figure - 1, column },
    { figure: figure + 1, column },
  ];
  return neighbours
    .filter((other) => readingAt(evidence.chart, other) > 0)
    .flatMap((other) => swapCandidate(evidence, place, other) ?? []);
}

function swapCandidate({ chart, model }: Evidence, place: Place, other: Place): Candidate | undefined {
  const [mine, theirs] = [columnAt(chart, place.column), columnAt(chart, other.column)];
  // The numbers change places, each into the unit of the column where it lands.
  const myMm = (readingAt(chart, other) / mmPerUnit[theirs.unit]) * mmPerUnit[mine.unit];
  const theirMm = (readingAt(chart, place) / mmPerUnit[mine.unit]) * mmPerUnit[theirs.unit];
  // Without a swap the other reading is what it is: right, as a rule.
  const asItStands = Math.max(
    asRight(model, other, readingAt(chart, other)),
    Math.log(seldom) + asWild(model, other, readingAt(chart, other)),
  );
  const likelihood =
    Math.log(frequency["two readings swapped"]) +
    asRight(model, place, myMm) +
    asRight(model, other, theirMm) -
    asItStands;
  if (Number.isNaN(likelihood)) return undefined;
  // Of two columns the left one is told; of two rows the one that strays farther, however the chart is sorted.
  const [first, second] = other.column < place.column ? [other, place] : [place, other];
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
    likelihood,
  };
}

function readingAt(chart: Chart, { figure, column }: Place): number {
  return chart.measures[column]?.mm[figure] ?? Number.NaN;
}

/** To what a column is read, in its unit, and how often it is read finer; no step where it is read anyhow. */
interface Grain {
  readonly step: number | undefined;
  readonly finer: number;
}

/** The coarsest step of which nine in ten readings are multiples. One finer reading may be the slip that is looked at. */
function grainOf({ mm, unit }: MeasureColumn): Grain {
  const known = Array.from(
    mm.filter((reading) => reading > 0),
    (reading) => fromMm(reading, unit),
  );
  for (const step of [1, 0.5, 0.25, 0.1, 0.05]) {
    const finer = known.filter((length) => !isMultiple(length, step)).length;
    if (finer <= 0.1 * known.length) return { step, finer: Math.max(leastFiner, finer - 1) / known.length };
  }
  return { step: undefined, finer: 1 };
}

function finenessOf({ unit }: MeasureColumn, { step, finer }: Grain, mm: number): number {
  return step === undefined || isMultiple(fromMm(mm, unit), step) ? 0 : Math.log(finer);
}

function isMultiple(length: number, step: number): boolean {
  return Math.abs(length / step - Math.round(length / step)) < 1e-6;
}
