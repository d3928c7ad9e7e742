import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { Pattern } from "../chart/pattern.ts";
import type { GarmentClass } from "../chart/garmentClass.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import type { CompiledPattern, OpeningCheck, RouteName } from "../fit/compilePattern.ts";
import { bodiesOf, obstaclesOf } from "../fit/compilePattern.ts";
import { figureView } from "../fit/figureView.ts";
import { onFigures } from "../fit/lengths.ts";
import type { Fitting } from "../fit/match.ts";
import type { ReadingError } from "../fit/readingError.ts";
import type { Verdict } from "../fit/verdict.ts";
import { measureById } from "../measures/dictionary.ts";
import type { Tolerance } from "../measures/measure.ts";
import type { LengthUnit } from "../measures/units.ts";
import { toleranceOf } from "../chart/tolerances.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import type { PublishedLanguage, PublishedUnit } from "./publication.ts";
import type { PublicationAtWork } from "./published.ts";
import type { Closure } from "../chart/garmentTerms.ts";
import type { FitKind } from "./words/words.ts";
import type { EaseCheck } from "../fit/patternChecks.ts";

/** As in JSON, which has no NaN: a number that is not known is null. */
type Sent<T> = T extends number
  ? number | null
  : T extends readonly (infer Item)[]
    ? readonly Sent<Item>[]
    : T extends object
      ? { readonly [Key in keyof T]: Sent<T[Key]> }
      : T;

/** An opening without the figures. */
type OpeningAlone = Omit<OpeningCheck, "obstacles" | "measures">;

/** What a pattern asks of any figure, without the figures. */
interface PatternAlone extends Pick<CompiledPattern, "comfort" | "full"> {
  readonly code: string;
  readonly title: string;
  readonly wornOn: GarmentClass["wornOn"];
  readonly seamEdges: number;
  readonly closure: Closure;
  readonly stretch: number;
  readonly eases: readonly (Omit<EaseCheck, "bodies" | "contained" | "ends" | "rule"> & {
    readonly rule: Pick<EaseRule, "measure" | "least" | "most" | "required">;
  })[];
  readonly limbs: readonly OpeningAlone[];
  readonly routes: readonly { readonly name: RouteName; readonly openings: readonly OpeningAlone[] }[];
}

/** A measure that a buyer can be asked for. */
export interface AskedMeasure {
  readonly id: string;
  readonly term: string;
  /** Patterns whose verdict may rest on it. */
  readonly patterns: number;
}

/**
 * What the fit page holds, as JSON: what is published, and what the published garments measure. No reading is in it that is not
 * on the page, and none of a figure that is not.
 */
export interface BuyersFile {
  readonly language: PublishedLanguage;
  readonly units: readonly PublishedUnit[];
  readonly figures: readonly string[];
  /** The published columns that a body can be compared by, as they are shown. */
  readonly columns: readonly {
    readonly key: string;
    readonly term: string;
    readonly kind: MeasureColumn["kind"];
    readonly unit: LengthUnit;
    readonly tolerance: Tolerance;
    readonly mm: Sent<readonly number[]>;
  }[];
  /** In the order in which to ask. */
  readonly asked: readonly AskedMeasure[];
  readonly readingError: ReadingError;
  readonly patterns: Sent<readonly PatternAlone[]>;
  /** Different answers, and which of them each pattern has on each figure, pattern by pattern. */
  readonly answers: readonly { readonly verdict: Verdict; readonly kind: FitKind; readonly says: string }[];
  readonly pairs: readonly number[];
}

/** Everything that the fit page needs. */
export function buyersFile(
  { published, fitting, patternPlaces, shown }: PublicationAtWork,
  tolerances: ToleranceTable | undefined,
): BuyersFile {
  const patterns = patternPlaces.map((at) => fitting.patterns[at]!);
  const asked = askedMeasures(patterns, published);
  const answers = new Map<string, { readonly at: number; readonly answer: BuyersFile["answers"][number] }>();
  const pairs = published.patterns.flatMap((pattern) =>
    pattern.answers.map(({ verdict, kind, says }) => {
      const key = `${verdict} ${kind} ${says}`;
      const known = answers.get(key) ?? { at: answers.size, answer: { verdict, kind, says } };
      answers.set(key, known);
      return known.at;
    }),
  );
  return {
    language: published.publication.language,
    units: published.units,
    figures: published.figures,
    columns: shown.flatMap((column, c) => {
      const tolerance = toleranceOf(column, tolerances);
      if (!tolerance) return [];
      return [
        {
          key: column.key,
          term: published.columns[c]?.term ?? column.heading,
          kind: column.kind,
          unit: column.unit,
          tolerance,
          mm: sent(Array.from(column.mm)),
        },
      ];
    }),
    asked,
    readingError: errorOfAsked(fitting.readingError, asked),
    patterns: sent(patterns.map(alone)),
    answers: [...answers.values()].map(({ answer }) => answer),
    pairs,
  };
}

/** Of no measure that the page does not ask for. */
function errorOfAsked(
  { mm, percent, ofMeasures }: ReadingError,
  asked: readonly AskedMeasure[],
): ReadingError {
  if (!ofMeasures) return { mm, percent };
  const known = asked.flatMap(({ id }) => {
    const own = ofMeasures[id];
    return own === undefined ? [] : [[id, own] as const];
  });
  return { mm, percent, ofMeasures: Object.fromEntries(known) };
}

/** What a buyer may say of her figure beside its measures. */
export const buyersTraits = ["handsOff", "headOff", "feetOff", "softBody", "jointed", "heeledFoot"] as const;
export type BuyersTrait = (typeof buyersTraits)[number];

/** Headings of the chart that say each of them. */
const traitHeadings: Readonly<Record<BuyersTrait, string>> = {
  handsOff: "Hands removable",
  headOff: "Head removable",
  feetOff: "Feet removable",
  softBody: "Soft body",
  jointed: "Jointed",
  heeledFoot: "Heeled foot",
};

/** One body as a buyer types it. */
export interface TypedBody {
  /** mm by the dictionary’s id */
  readonly mm: ReadonlyMap<string, number>;
  readonly traits: ReadonlyMap<BuyersTrait, boolean>;
  /** The unit in which amounts come back. */
  readonly unit: LengthUnit;
}

/** The published patterns made ready for one typed body, which is figure 0: the engine judges it as any figure of a chart. */
export function fittingOf(file: BuyersFile, body: TypedBody): Fitting {
  const view = figureView(chartOf(body));
  const opening = (check: OpeningAlone): OpeningCheck => ({
    ...check,
    ...obstaclesOf(view, check.obstacle),
  });
  const patterns = received<readonly PatternAlone[]>(file.patterns).map((pattern): CompiledPattern => {
    const { comfort, full, eases, limbs, routes, wornOn } = pattern;
    return {
      ...{ pattern: patternOf(pattern), comfort, full, unjudged: [] },
      eases: eases.map((check) => ({
        ...check,
        rule: { ...check.rule, garmentClass: "", source: "" },
        ...bodiesOf(view, wornOn, check.rule.measure),
        ...(check.line && onFigures(check.line, view)),
      })),
      limbs: limbs.map(opening),
      routes: routes.map(({ name, openings }) => ({ name, openings: openings.map(opening) })),
    };
  });
  return { view, patterns, readingError: file.readingError };
}

function chartOf({ mm, traits, unit }: TypedBody): Chart {
  return {
    figures: [""],
    rows: [1],
    measures: [...mm].map(([key, length], position) => {
      const measure = measureById(key);
      return {
        key,
        heading: measure?.name ?? key,
        ...(measure && { measure }),
        kind: measure?.kind,
        zone: measure?.zone,
        unit,
        mm: Float64Array.of(length),
        position: position + 1,
      };
    }),
    attributes: [...traits].map(([trait, isSo], at) => ({
      heading: traitHeadings[trait],
      values: [isSo ? "yes" : "no"],
      position: mm.size + at + 1,
    })),
    problems: [],
  };
}

function patternOf({ code, title, wornOn, seamEdges, closure, stretch }: PatternAlone): Pattern {
  return {
    code,
    title,
    garmentClass: { name: "", synonyms: [], wornOn, seamEdges, openings: [], note: "" },
    draftedFor: undefined,
    stretch,
    thicknessMm: 0,
    wornOver: [],
    closure,
    closureMm: undefined,
    neckMm: undefined,
    cuffMm: undefined,
    hemMm: undefined,
    waistMm: undefined,
    finished: new Map(),
  };
}

function alone({ pattern, eases, limbs, routes, comfort, full }: CompiledPattern): PatternAlone {
  const { code, title, garmentClass, closure, stretch } = pattern;
  const { wornOn, seamEdges } = garmentClass;
  return {
    ...{ code, title, wornOn, seamEdges, closure, stretch, comfort, full },
    eases: eases.map(
      ({ kind, garmentMm, layers, ownMm, place, line, rule: { measure, least, most, required } }) => ({
        ...{ kind, garmentMm, layers, ownMm },
        ...(place !== undefined && { place }),
        ...(line && { line }),
        rule: { measure, least, most, required },
      }),
    ),
    limbs: limbs.map(openingAlone),
    routes: routes.map(({ name, openings }) => ({ name, openings: openings.map(openingAlone) })),
  };
}

function openingAlone(check: OpeningCheck): OpeningAlone {
  const { place, obstacle, shutMm, placket, thicknessMm, layers } = check;
  return { place, obstacle, shutMm, placket, thicknessMm, layers };
}

/** Plain data as JSON can hold it. */
function sent<T>(value: T): Sent<T> {
  return changed(value, (each) => (Number.isNaN(each) ? null : each)) as Sent<T>;
}

/** The same data back from JSON. No other null is ever sent. */
function received<T>(value: Sent<T>): T {
  return changed(value, (each) => (each === null ? Number.NaN : each)) as T;
}

function changed(value: unknown, change: (value: unknown) => unknown): unknown {
  if (Array.isArray(value)) return value.map((each) => changed(each, change));
  if (typeof value !== "object" || value === null) return change(value);
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, changed(each, change)]));
}

/** Measures that an obstacle may be taken from, the usual one first. */
const obstacleMeasures: Readonly<Record<OpeningCheck["obstacle"], readonly string[]>> = {
  head: ["headGirth", "neckGirth"],
  hand: ["handGirth", "wristGirth"],
  "arm to the elbow": ["handGirth", "wristGirth", "forearmGirth"],
  "whole arm": ["handGirth", "wristGirth", "forearmGirth", "elbowGirth", "upperArmGirth"],
  heel: ["heelGirth", "footGirth", "ankleGirth"],
  "leg to the calf": ["heelGirth", "footGirth", "ankleGirth", "calfGirth"],
  "leg to the knee": ["heelGirth", "footGirth", "ankleGirth", "calfGirth", "kneeGirth"],
  "leg to the thigh": ["heelGirth", "footGirth", "ankleGirth", "calfGirth", "kneeGirth", "midThighGirth"],
  "whole leg": [
    "heelGirth",
    "footGirth",
    "ankleGirth",
    "calfGirth",
    "kneeGirth",
    "midThighGirth",
    "thighGirth",
  ],
  hip: ["hipGirth"],
  "shoulders and bust": ["shoulderGirth", "bustGirth"],
};

/** Published measures first, in the order of the chart; then those that most patterns rest on. */
function askedMeasures(
  patterns: readonly CompiledPattern[],
  { columns, words }: PublicationAtWork["published"],
): readonly AskedMeasure[] {
  const counts = new Map<string, number>(columns.map(({ key }) => [key, 0]));
  for (const { eases, limbs, routes } of patterns) {
    const openings = [...limbs, ...routes.flatMap((route) => route.openings)];
    const needed = new Set([
      ...eases
        .filter(({ garmentMm }) => !Number.isNaN(garmentMm))
        .flatMap(({ rule, line }) => (line ? [...line.starts, ...line.lengths] : [rule.measure])),
      ...openings.flatMap(({ obstacle }) => obstacleMeasures[obstacle]),
    ]);
    for (const id of needed) counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  const isPublished = new Set(columns.map(({ key }) => key));
  return [...counts]
    .filter(([id]) => measureById(id) !== undefined)
    .map(([id, count]) => ({ id, term: words.measure(id) ?? id, patterns: count }))
    .sort(
      (a, b) =>
        Number(isPublished.has(b.id)) - Number(isPublished.has(a.id)) ||
        (isPublished.has(a.id) ? 0 : b.patterns - a.patterns),
    );
}
