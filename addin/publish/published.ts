import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { PatternTable } from "../chart/pattern.ts";
import { codeKey } from "../chart/readPatterns.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import type { Flag } from "../checking/flag.ts";
import type { Fitting } from "../fit/match.ts";
import { prepareFitting } from "../fit/match.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { MeasureKind } from "../measures/measure.ts";
import type { ReadingError } from "../measures/readingError.ts";
import { mmPerUnit } from "../measures/units.ts";
import { columnsOfZone } from "../similarity/columns.ts";
import { apart, isWithin } from "../similarity/pair.ts";
import type { PairAnswer } from "./answers.ts";
import { answerPair } from "./answers.ts";
import type { BodyDrawing } from "./drawing/bodyDrawings.ts";
import { bodyDrawings } from "./drawing/bodyDrawings.ts";
import type { PublishedBodies } from "./bodies.ts";
import { groupsOf } from "../similarity/groups.ts";
import { publishedBodies } from "./bodies.ts";
import type { Doubts } from "./chosen.ts";
import { chosenColumns, chosenFigures, doubtsOf, partOf, withoutDoubts } from "./chosen.ts";
import type { Publication, PublishedUnit } from "./publication.ts";
import { publishedLength, stepMm, wholeSteps, withUnit } from "./publishedLength.ts";
import { isolated, tellingOf } from "./telling.ts";
import { englishVerdicts } from "./words/englishVerdicts.ts";
import { wordsOf } from "./words/wordsOf.ts";
import type { BodyPart, Words } from "./words/words.ts";

/** What a publication is made from. */
export interface PublishedFrom {
  readonly chart: Chart;
  /** Read against that chart; undefined where the workbook has no patterns. */
  readonly patterns: PatternTable | undefined;
  /** Ease rules; the project’s own when left out. */
  readonly rules?: readonly EaseRule[] | undefined;
  /** Of the readings of the chart; the usual one when left out. */
  readonly readingError?: ReadingError | undefined;
  readonly tolerances?: ToleranceTable | undefined;
  /** What the check of the chart doubts and the maker has not confirmed. */
  readonly flags: readonly Flag[];
}

/** A measure of the published chart. */
export interface PublishedColumn {
  /** The dictionary’s id, or the key of a measure that it does not know. */
  readonly key: string;
  readonly term: string;
  readonly kind: MeasureKind;
  readonly howToTake: string | undefined;
}

export interface PublishedCell {
  /** One text a unit, without the unit; none where there is nothing to publish. */
  readonly texts: readonly string[];
  /** What it is sorted by; NaN where there is nothing. */
  readonly sortMm: number;
  /** Why there is nothing, or what is to be known of the reading; "" for a sound one. */
  readonly remark: string;
}

/** One row of the chart: a figure, or figures that share a body. Rows of one body stand one after the other. */
export interface PublishedRow {
  /** The number of the body, from 0. */
  readonly body: number;
  readonly names: readonly string[];
  readonly cells: readonly PublishedCell[];
}

/** A pattern with the figures of the chart. */
export interface PublishedPattern {
  readonly code: string;
  readonly title: string;
  readonly garment: string;
  /** The figure that it was drafted for, where that one is published. */
  readonly draftedFor: string | undefined;
  /** One answer a figure, in the order of `figures`. */
  readonly answers: readonly PairAnswer[];
}

/** All that is published, as plain texts in the language of the buyers. Nothing else goes into page, sheet and words. */
export interface Published {
  readonly words: Words;
  readonly publication: Publication;
  readonly title: string;
  readonly cautions: readonly string[];
  readonly rounded: string;
  readonly units: readonly PublishedUnit[];
  /** The unit of each text of a cell, for headings. */
  readonly unitHeadings: readonly string[];
  readonly columns: readonly PublishedColumn[];
  readonly figures: readonly string[];
  readonly rows: readonly PublishedRow[];
  /** In sentences: who wears the same body. */
  readonly bodies: readonly string[];
  /** The bodies that several figures share. */
  readonly drawings: readonly BodyDrawing[];
  readonly patterns: readonly PublishedPattern[];
  /** Codes of patterns whose rows cannot be used. */
  readonly notJudged: readonly string[];
  /** For the maker, in English: readings that are left out, and why. */
  readonly leftOut: readonly string[];
  /** For the maker, in English: where bodies rest on readings that are left out. */
  readonly aboutBodies: readonly string[];
}

/** A publication, with what the fit page works with: judged without the readings that are not published. */
export interface PublicationAtWork {
  readonly published: Published;
  readonly fitting: Fitting;
  /** Rows of the published patterns in `fitting.patterns`. */
  readonly patternPlaces: readonly number[];
  /** Published columns with what of their readings is published, as it is shown, in the order of `figures`. */
  readonly shown: readonly MeasureColumn[];
  /** The same columns with what was measured, for the maker alone. */
  readonly measured: readonly MeasureColumn[];
}

/** More figures would make a page that no browser likes. */
export const mostFigures = 2000;

/**
 * Works out all that is published. Verdicts are those of the fit engine on the chart without the readings that are held
 * back: what rests on one of these is not known.
 *
 * @throws {InputError} when nothing can be published, naming what is missing
 */
export function publish(from: PublishedFrom, publication: Publication): PublicationAtWork {
  const { chart, flags, tolerances } = from;
  const words = wordsOf(publication.language);
  const doubts = doubtsOf(chart, flags);
  const sound = withoutDoubts(chart, doubts, publication);
  const groups = groupsOf(chart, tolerances);
  const places = chosenFigures(chart, publication, groups);
  if (places.length > mostFigures)
    throw new InputError(
      `${String(places.length)} figures are too many for one chart: at most ${String(mostFigures)}. Publish one line or maker at a time.`,
    );
  const columns = chosenColumns(sound, publication);
  const part = partOf(sound, places);
  const given = {
    part,
    columns: chosenColumns(part, { ...publication, measures: columns.map(({ heading }) => heading) }),
  };
  const found = publishedBodies(groups, sound, places, tolerances);
  const bodies = found.bodies.map((body) => body.map((place) => places.indexOf(place)));
  const fitting = prepareFitting(from.patterns?.patterns ?? [], sound, {
    rules: from.rules,
    readingError: from.readingError,
  });
  const patternPlaces = chosenPatterns(from.patterns, publication);
  const cellOf = cellMaker(given.columns, { chart, places, doubts, words, publication });
  const shared = bodies.filter(({ length }) => length > 1);
  const shown = given.columns.map((column) => ({
    ...column,
    mm: column.mm.map((mm) => shownMm(mm, publication)),
  }));
  const published: Published = {
    words,
    publication,
    title: publication.title.trim() === "" ? words.page.chart : publication.title.trim(),
    cautions: !publication.showCautions
      ? []
      : publication.cautions.length > 0
        ? publication.cautions.filter((line) => line.trim() !== "")
        : words.cautions,
    rounded: words.rounded(publication.units.map((unit) => stepWords(unit, publication, words))),
    units: publication.units,
    unitHeadings: publication.units.map((unit) =>
      unit === "mm" || unit === "cm" ? unit : words.inchHeading,
    ),
    columns: given.columns.map((column) => ({
      key: column.key,
      term: words.measure(column.key) ?? column.heading,
      kind: column.kind ?? "girth",
      howToTake: words.howToTake(column.key),
    })),
    figures: part.figures,
    rows: rowsOf(bodies, publication.sharedRows).map(({ body, members }) => ({
      body,
      names: members.map((at) => part.figures[at] ?? ""),
      cells: given.columns.map((_, c) => cellOf(c, members)),
    })),
    bodies: shared.map((members) => bodyWords(members, part, words, tolerances)),
    drawings: publication.drawings ? bodyDrawings(shared, shown, part.figures) : [],
    patterns: patternPlaces.map((p) =>
      patternAnswers(fitting, p, { places, given, words, publication, sound }),
    ),
    notJudged: notJudged(from.patterns, publication),
    leftOut: leftOutWords(chart, places, doubts, publication),
    aboutBodies: bodiesInDoubt(chart, found),
  };
  return {
    published,
    fitting,
    patternPlaces,
    shown,
    measured: given.columns,
  };
}

interface Given {
  readonly part: Chart;
  readonly columns: readonly MeasureColumn[];
}

function patternAnswers(
  fitting: Fitting,
  pattern: number,
  at: {
    readonly places: readonly number[];
    readonly given: Given;
    readonly words: Words;
    readonly publication: Publication;
    readonly sound: Chart;
  },
): PublishedPattern {
  const { places, given, words, publication, sound } = at;
  const keys = new Set(given.columns.map(({ key }) => key));
  const telling = tellingOf(words, publication, (measure) => keys.has(measure));
  const { code, title, garmentClass, draftedFor } = fitting.patterns[pattern]!.pattern;
  return {
    code,
    title,
    garment: words.garmentClass(garmentClass.name),
    draftedFor:
      draftedFor !== undefined && places.includes(draftedFor) ? sound.figures[draftedFor] : undefined,
    answers: places.map((figure) => answerPair(fitting, pattern, figure, telling)),
  };
}

/** @throws {InputError} when a pattern is not in the table */
function chosenPatterns(table: PatternTable | undefined, { patterns }: Publication): readonly number[] {
  if (!table) return [];
  if (!patterns) return table.patterns.map((_, at) => at);
  return patterns.flatMap((code) => {
    const at = table.patterns.findIndex((each) => codeKey(each.code) === codeKey(code));
    if (at >= 0) return [at];
    if (table.problems.some((problem) => codeKey(problem.code) === codeKey(code))) return [];
    const codes = table.patterns.map((each) => each.code);
    throw new InputError(`There is no pattern ${quote(code)}.${didYouMean(code, codes)}`, "absent");
  });
}

function notJudged(table: PatternTable | undefined, { patterns }: Publication): readonly string[] {
  const isChosen = (code: string): boolean =>
    patterns === undefined || patterns.some((each) => codeKey(each) === codeKey(code));
  const codes = (table?.problems ?? []).map(({ code }) => code).filter((code) => code !== "");
  return codes.filter(isChosen);
}

interface Row {
  readonly body: number;
  readonly members: readonly number[];
}

/** A row a body with all its names where that is asked for, else a row a figure; in the order of the chart by the first of each body. */
function rowsOf(bodies: readonly (readonly number[])[], sharedRows: boolean): readonly Row[] {
  return bodies.flatMap((members, body): readonly Row[] =>
    sharedRows ? [{ body, members }] : members.map((at) => ({ body, members: [at] })),
  );
}

const bodyParts: readonly BodyPart[] = ["head", "hands", "feet"];

function bodyWords(
  members: readonly number[],
  part: Chart,
  words: Words,
  tolerances: ToleranceTable | undefined,
): string {
  const said = bodyParts.map((zone) => {
    const columns = columnsOfZone(part, zone, tolerances);
    if (columns.length === 0) return undefined;
    const [first = 0, ...others] = members;
    const pairs = others.flatMap((other, i) =>
      [first, ...others.slice(0, i)].map((one) => [one, other] as const),
    );
    const found = pairs.map(([one, other]) => apart(columns, one, other).distance);
    if (found.some((distance) => distance > 1 && !isWithin(distance, 1))) return false;
    return found.every((distance) => isWithin(distance, 1)) ? true : undefined;
  });
  return words.sameBody(
    words.list(members.map((at) => isolated(part.figures[at] ?? ""))),
    bodyParts.filter((_, i) => said[i] === false),
    bodyParts.filter((_, i) => said[i] === true),
  );
}

function cellMaker(
  columns: readonly MeasureColumn[],
  given: {
    readonly chart: Chart;
    readonly places: readonly number[];
    readonly doubts: Doubts;
    readonly words: Words;
    readonly publication: Publication;
  },
): (column: number, members: readonly number[]) => PublishedCell {
  const { places, doubts, words, publication } = given;
  return (c, members) => {
    const column = columns[c]!;
    const doubted = members.flatMap((at) => doubts.get(column.key)?.get(places[at] ?? -1) ?? []);
    const lengths = members.map((at) => column.mm[at] ?? Number.NaN).filter((mm) => !Number.isNaN(mm));
    if (lengths.length === 0) {
      const why = doubted.includes("doubtful")
        ? words.inQuestion
        : doubted.includes("estimated")
          ? words.estimatedHere
          : words.notMeasured;
      return { texts: [], sortMm: Number.NaN, remark: why };
    }
    const least = Math.min(...lengths);
    const most = Math.max(...lengths);
    const remarks = [
      !doubted.includes("doubtful")
        ? ""
        : publication.flagged
          ? words.markedDoubtful
          : words.partlyInQuestion,
      !doubted.includes("estimated")
        ? ""
        : publication.estimated
          ? words.markedEstimated
          : words.partlyEstimated,
      members.some((at) => column.origins?.get(at) === "from a list") ? words.markedListed : "",
    ].filter((remark) => remark !== "");
    return {
      texts: publication.units.map((unit) => {
        const [from, to] = [least, most].map((mm) =>
          publishedLength(mm, unit, publication.rounding, words.decimalMark),
        );
        return from === to ? (from ?? "") : `${from ?? ""} – ${to ?? ""}`;
      }),
      sortMm: shownMm(least, publication),
      remark: remarks.join(", "),
    };
  };
}

/** A reading as its first unit shows it, so that no more is told than is published. */
function shownMm(mm: number, { units: [unit], rounding }: Publication): number {
  const step =
    unit === "inches in eighths"
      ? mmPerUnit.in / 8
      : unit === "inches in sixteenths"
        ? mmPerUnit.in / 16
        : stepMm[rounding];
  return Number.isNaN(mm) ? mm : wholeSteps(mm, step) * step;
}

function stepWords(unit: PublishedUnit, { rounding }: Publication, words: Words): string {
  if (unit === "inches in eighths") return withUnit("⅛", unit, words.inch);
  if (unit === "inches in sixteenths") return withUnit("¹⁄₁₆", unit, words.inch);
  const mm = stepMm[rounding];
  const text = String(unit === "mm" ? mm : mm / 10).replace(".", words.decimalMark);
  return withUnit(text, unit, words.inch);
}

function leftOutWords(
  chart: Chart,
  places: readonly number[],
  doubts: Doubts,
  { flagged, estimated }: Publication,
): readonly string[] {
  return chart.measures.flatMap(({ key, heading }) =>
    places.flatMap((at) => {
      const doubt = doubts.get(key)?.get(at);
      const isOut = doubt === "doubtful" ? !flagged : doubt === "estimated" && !estimated;
      return isOut
        ? [
            `${chart.figures[at] ?? ""}, ${heading}: ${doubt === "doubtful" ? "Check doubts it" : "estimated"}`,
          ]
        : [];
    }),
  );
}

function bodiesInDoubt(chart: Chart, { heldApart, mayBeOne }: PublishedBodies): readonly string[] {
  const names = (places: readonly number[]): string =>
    englishVerdicts.list(places.map((at) => chart.figures[at] ?? ""));
  const headings = (keys: readonly string[]): string =>
    englishVerdicts.list(
      chart.measures.filter(({ key }) => keys.includes(key)).map(({ heading }) => heading),
    );
  return [
    ...heldApart.map(
      ({ figure, others, lacking }) =>
        `${names([figure])} has the body of ${names(others)} in Groups, but stands alone here: ${lacking.length === 0 ? "too many of its readings are" : `${headings(lacking)} is`} held back.`,
    ),
    ...mayBeOne.map(
      (figures) =>
        `${names(figures)} are told apart, here as in Groups, by readings alone that are held back: confirm or mend these.`,
    ),
  ];
}
