import { figureKey } from "../chart/find.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import { codeKey } from "../chart/readPatterns.ts";
import type { Verdict } from "../fit/verdict.ts";
import { verdictOf } from "../fit/verdict.ts";
import { publishedLength, withUnit } from "./publishedLength.ts";
import type { PublicationHistory, PublicationRecord } from "./record.ts";

/** A reading that buyers would read otherwise now. Undefined is nothing published. */
export interface ChangedReading {
  readonly figure: string;
  readonly measure: string;
  /** In the units of the earlier chart, rounded as it was, with the unit. */
  readonly from: string | undefined;
  readonly to: string | undefined;
}

export interface TurnedVerdict {
  readonly pattern: string;
  /** As it is called now. */
  readonly figure: string;
  readonly from: Verdict;
  readonly to: Verdict;
}

/** What buyers of an earlier chart do not know. */
export interface Changes {
  readonly figuresAdded: readonly string[];
  readonly figuresGone: readonly string[];
  /** One figure gone and one added that have the same readings, and share them with no other. */
  readonly figuresRenamed: readonly { readonly from: string; readonly to: string }[];
  readonly measuresAdded: readonly string[];
  readonly measuresGone: readonly string[];
  readonly readings: readonly ChangedReading[];
  readonly verdicts: readonly TurnedVerdict[];
  readonly patternsAdded: readonly string[];
  readonly patternsGone: readonly string[];
}

/**
 * What changed between two publications: figures by name, measures and patterns that only one has, and for what both have the
 * readings that buyers would read otherwise and the verdicts that are others. Another order, unit or rounding changes nothing.
 */
export function changesBetween(before: PublicationRecord, now: PublicationRecord): Changes {
  const measures = pairsOf(before.measures, now.measures, ({ key }) => key);
  const patterns = pairsOf(before.patterns, now.patterns, ({ code }) => codeKey(code));
  const places = (record: PublicationRecord): readonly number[] => record.figures.map((_, at) => at);
  const named = pairsOf(
    places(before),
    places(now),
    (at) => figureKey(before.figures[at]!),
    (at) => figureKey(now.figures[at]!),
  );
  const telling = tellingAs(before);
  const renamed = sameReadings(named, measures.both, telling);
  const isRenamed = (at: number, side: 0 | 1): boolean => renamed.some((pair) => pair[side] === at);
  const figures = [...named.both, ...renamed].toSorted(([, one], [, other]) => one - other);
  const called = (record: PublicationRecord, at: number): string => record.figures[at] ?? "";
  return {
    figuresAdded: named.added.filter((at) => !isRenamed(at, 1)).map((at) => called(now, at)),
    figuresGone: named.gone.filter((at) => !isRenamed(at, 0)).map((at) => called(before, at)),
    figuresRenamed: renamed.map(([from, to]) => ({ from: called(before, from), to: called(now, to) })),
    measuresAdded: measures.added.map(({ term }) => term),
    measuresGone: measures.gone.map(({ term }) => term),
    readings: figures.flatMap(([was, is]) =>
      measures.both.flatMap(([old, { term, mm }]) => {
        const from = telling(old.mm[was]);
        const to = telling(mm[is]);
        return from === to ? [] : [{ figure: called(now, is), measure: term, from, to }];
      }),
    ),
    verdicts: patterns.both.flatMap(([old, { code, ranks }]) =>
      figures.flatMap(([was, is]) => {
        const from = verdictOf(old.ranks[was] ?? Number.NaN);
        const to = verdictOf(ranks[is] ?? Number.NaN);
        return from === to ? [] : [{ pattern: code, figure: called(now, is), from, to }];
      }),
    ),
    patternsAdded: patterns.added.map(({ code }) => code),
    patternsGone: patterns.gone.map(({ code }) => code),
  };
}

/** True where buyers know all. */
export function isUnchanged(changes: Changes): boolean {
  return Object.values(changes).every((list: readonly unknown[]) => list.length === 0);
}

/**
 * What is remembered once something is published. The publication before stays while the same is published again, or something
 * else on the same day: saving twice does not lose what buyers are to be told.
 */
export function afterPublishing(history: PublicationHistory, now: PublicationRecord): PublicationHistory {
  const [last, before] = history;
  if (!last) return [now];
  if (isUnchanged(changesBetween(last, now))) return before ? [now, before] : [now];
  // What is published again on the same day is a correction of what nobody has yet.
  return [now, last.day === now.day && before ? before : last];
}

interface Pairs<T> {
  readonly both: readonly (readonly [T, T])[];
  readonly gone: readonly T[];
  readonly added: readonly T[];
}

/** Items of two lists by their keys; the second of a key with the second, and so on. */
function pairsOf<T>(
  before: readonly T[],
  now: readonly T[],
  keyOf: (item: T) => string,
  keyNow: (item: T) => string = keyOf,
): Pairs<T> {
  const waiting = new Map(
    [...groupedBy(before, keyOf)].map(([key, items]): [string, T[]] => [key, [...items]]),
  );
  const both: (readonly [T, T])[] = [];
  const added: T[] = [];
  for (const item of now) {
    const same = waiting.get(keyNow(item))?.shift();
    if (same === undefined) added.push(item);
    else both.push([same, item]);
  }
  const left = new Set([...waiting.values()].flat());
  return { both, added, gone: before.filter((item) => left.has(item)) };
}

type Told = (mm: number | null | undefined) => string | undefined;

/** Readings as the buyers of a chart read them; the maker’s words are English. */
function tellingAs({ publication: { units, rounding } }: PublicationRecord): Told {
  return (mm) =>
    mm === null || mm === undefined
      ? undefined
      : units.map((unit) => withUnit(publishedLength(mm, unit, rounding, "."), unit, "in")).join(" / ");
}

/** Figures gone and added with the same readings, of which there is one on each side. */
function sameReadings(
  { gone, added }: Pairs<number>,
  measures: readonly (readonly [
    PublicationRecord["measures"][number],
    PublicationRecord["measures"][number],
  ])[],
  telling: Told,
): readonly (readonly [number, number])[] {
  const readings = (at: number, side: 0 | 1): string => {
    const told = measures.map((pair) => telling(pair[side].mm[at]));
    return told.every((text) => text === undefined) ? "" : JSON.stringify(told.map((text) => text ?? null));
  };
  const before = groupedBy(gone, (at) => readings(at, 0));
  const now = groupedBy(added, (at) => readings(at, 1));
  return [...before].flatMap(([key, [was, ...others]]) => {
    const [is, ...more] = now.get(key) ?? [];
    const isSure = key !== "" && others.length === 0 && more.length === 0;
    return isSure && was !== undefined && is !== undefined ? [[was, is] as const] : [];
  });
}
