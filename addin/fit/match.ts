import type { Chart } from "../chart/chart.ts";
import { defaultEaseRules } from "../chart/defaultEaseRules.ts";
import type { EaseRule } from "../chart/easeRule.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import type { Pattern } from "../chart/pattern.ts";
import { codeKey } from "../chart/readPatterns.ts";
import { underLayers } from "../chart/underLayers.ts";
import type { CompiledPattern } from "./compilePattern.ts";
import { compilePattern } from "./compilePattern.ts";
import type { FigureView } from "./figureView.ts";
import { figureView } from "./figureView.ts";
import type { GarmentContext } from "./garmentMeasure.ts";
import { judgePair } from "./judgePair.ts";
import { partsOf } from "./parts.ts";
import type { ReadingError } from "./readingError.ts";
import { usualReadingError } from "./readingError.ts";
import type { Verdict } from "./verdict.ts";
import { verdictOf } from "./verdict.ts";

export interface FitOptions {
  /** Ease rules; the project’s own when left out. */
  readonly rules?: readonly EaseRule[] | undefined;
  /** Of the readings of the chart; the usual one when left out. */
  readonly readingError?: ReadingError | undefined;
}

/** Patterns and figures made ready for questions of fit. */
export interface Fitting {
  readonly view: FigureView;
  readonly patterns: readonly CompiledPattern[];
  readonly readingError: ReadingError;
}

/** Verdicts of every pattern on every figure: one byte a pair. */
export interface Match {
  readonly patterns: readonly Pattern[];
  readonly figures: readonly string[];
  /** Ranks of `verdicts`, pattern by pattern, figures within. */
  readonly ranks: Uint8Array;
  verdict(pattern: number, figure: number): Verdict;
}

/**
 * Makes patterns and a chart ready: what does not depend on the figure is worked out once a pattern.
 *
 * @throws {InputError} when under-layers go round in a circle or name a code that is not there
 */
export function prepareFitting(
  patterns: readonly Pattern[],
  chart: Chart,
  options: FitOptions = {},
): Fitting {
  const context = garmentContext(patterns, chart, options.rules);
  return {
    view: context.view,
    patterns: patterns.map((pattern) => compilePattern(pattern, context)),
    readingError: options.readingError ?? usualReadingError,
  };
}

/**
 * What is needed to say what the garments measure.
 *
 * @throws {InputError} as {@link prepareFitting}
 */
export function garmentContext(
  patterns: readonly Pattern[],
  chart: Chart,
  rules?: readonly EaseRule[],
): GarmentContext {
  const view = figureView(chart);
  const byCode = new Map(patterns.map((pattern) => [codeKey(pattern.code), pattern]));
  const byClass = groupedBy(rules ?? defaultEaseRules, ({ garmentClass }) => garmentClass);
  const under = new Map(
    patterns.map((pattern) => [pattern, underLayers(pattern, (code) => byCode.get(codeKey(code)))]),
  );
  const parts = new Map(patterns.map((pattern) => [pattern, partsOf(pattern, view)]));
  return {
    view,
    rulesOf: (garmentClass) => byClass.get(garmentClass) ?? [],
    underOf: (pattern) => under.get(pattern) ?? [],
    partsOf: (pattern) => parts.get(pattern) ?? partsOf(pattern, view),
  };
}

/** The verdict of every pattern on every figure, without the words. */
export function matchAll({ view, patterns, readingError }: Fitting): Match {
  const { size } = view;
  const ranks = new Uint8Array(patterns.length * size);
  for (const [p, compiled] of patterns.entries()) {
    for (let figure = 0; figure < size; figure++) {
      ranks[p * size + figure] = judgePair(compiled, figure, readingError);
    }
  }
  return {
    patterns: patterns.map(({ pattern }) => pattern),
    figures: view.chart.figures,
    ranks,
    verdict: (pattern, figure) => verdictOf(ranks[pattern * size + figure] ?? Number.NaN),
  };
}
