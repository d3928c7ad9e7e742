import type { MeasureColumn } from "../chart/chart.ts";
import { measureById } from "../measures/dictionary.ts";
import { apart, isWithin } from "../similarity/pair.ts";
import type { ComparedColumn } from "../similarity/columns.ts";
import type { PairAnswer } from "./answers.ts";
import { answerPair } from "./answers.ts";
import type { BuyersFile, TypedBody } from "./buyersFile.ts";
import { fittingOf } from "./buyersFile.ts";
import { tellingOf } from "./telling.ts";
import { wordsOf } from "./words/wordsOf.ts";

/** A figure of the chart beside what was typed. */
export interface LikeFigure {
  readonly figure: string;
  /** True where no typed measure differs by more than its tolerance. */
  readonly isAlike: boolean;
  /** What differs beyond tolerance, the worst first, in words. */
  readonly differs: readonly string[];
}

/** What can be said of a typed body. */
export interface BuyersAnswer {
  /** One answer a pattern, in the order of the file. */
  readonly answers: readonly PairAnswer[];
  /** Nearest first. Empty where nothing that was typed is published. */
  readonly like: readonly LikeFigure[];
  /** Measures that would decide, those for most patterns first. */
  readonly takeNext: readonly { readonly id: string; readonly term: string; readonly patterns: number }[];
}

const mostLike = 5;

/** Judges every published pattern on a typed body, and finds the figures of the chart that are like it. */
export function answerBuyer(file: BuyersFile, body: TypedBody): BuyersAnswer {
  const words = wordsOf(file.language);
  const fitting = fittingOf(file, body);
  // Her own measures may be told to her.
  const units = body.unit === "in" ? (["inches in sixteenths"] as const) : ([body.unit] as const);
  const telling = tellingOf(words, { units }, () => true);
  const answers = file.patterns.map((_, pattern) => answerPair(fitting, pattern, 0, telling));
  const counts = new Map<string, number>();
  for (const { take } of answers) for (const id of take) counts.set(id, (counts.get(id) ?? 0) + 1);
  return {
    answers,
    like: likeFigures(file, body, (mm) => telling.amount(mm)),
    takeNext: [...counts]
      .map(([id, patterns]) => ({ id, term: words.measure(id) ?? id, patterns }))
      .sort((a, b) => b.patterns - a.patterns),
  };
}

function likeFigures(
  file: BuyersFile,
  { mm: typed }: TypedBody,
  amount: (mm: number) => string | undefined,
): readonly LikeFigure[] {
  const words = wordsOf(file.language);
  const yours = file.figures.length;
  const columns = file.columns
    .filter(({ key }) => typed.has(key))
    .map((sent): ComparedColumn => {
      const measure = measureById(sent.key);
      const column: MeasureColumn = {
        key: sent.key,
        heading: sent.term,
        ...(measure && { measure }),
        kind: sent.kind,
        zone: measure?.zone,
        unit: sent.unit,
        mm: Float64Array.from([...sent.mm.map((mm) => mm ?? Number.NaN), typed.get(sent.key) ?? Number.NaN]),
        position: 0,
      };
      return { column, tolerance: sent.tolerance, required: false };
    });
  if (columns.length === 0) return [];
  return file.figures
    .map((figure, at) => {
      const found = columns
        .map((compared) => ({ compared, found: apart([compared], at, yours) }))
        .filter(({ found: { compared } }) => compared > 0);
      const beyond = found
        .filter(({ found: { distance } }) => !isWithin(distance, 1))
        .sort((a, b) => b.found.distance - a.found.distance);
      return {
        figure,
        worst:
          found.length === columns.length
            ? Math.max(...found.map(({ found: { distance } }) => distance))
            : Infinity,
        isAlike: found.length === columns.length && beyond.length === 0,
        differs: beyond.map(({ compared: { column }, found: { deltaMm = 0 } }) =>
          words.differs(column.heading, column.kind ?? "girth", deltaMm > 0, amount(Math.abs(deltaMm)) ?? ""),
        ),
      };
    })
    .filter(({ worst }) => worst < Infinity)
    .sort((a, b) => a.worst - b.worst)
    .slice(0, mostLike)
    .map(({ figure, isAlike, differs }) => ({ figure, isAlike, differs }));
}
