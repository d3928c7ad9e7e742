import type { Check } from "./check.ts";
import type { CompiledPattern, OpeningCheck, Route, RouteName } from "./compilePattern.ts";
import { explainEase } from "./explainEase.ts";
import { explainOpening } from "./explainOpening.ts";
import { judgePair, judgeRoute } from "./judgePair.ts";
import { lineMeasures } from "./lengths.ts";
import type { Fitting } from "./match.ts";
import type { ObstacleName } from "./obstacles.ts";
import type { Verdict } from "./verdict.ts";
import { isWearable, rank, verdictOf } from "./verdict.ts";

/** One way of putting a garment on. */
export interface ExplainedRoute {
  readonly name: RouteName;
  readonly verdict: Verdict;
  readonly isBest: boolean;
}

/** Why a pattern has its verdict on a figure. */
export interface Explanation {
  readonly pattern: string;
  readonly figure: string;
  readonly verdict: Verdict;
  /** The verdict in one sentence, with place and amount. */
  readonly words: string;
  /** The check that decides; undefined only where nothing could be checked. */
  readonly governing?: Check;
  /** Every check: measures first, then limb openings, then each way of putting it on, the best way first. */
  readonly checks: readonly Check[];
  /** The ways of putting it on, the best first. */
  readonly routes: readonly ExplainedRoute[];
  /** What to measure, where that would decide. */
  readonly take: readonly string[];
  /** What was not judged and why, in sentences: “Length not judged: …”. */
  readonly unjudged: readonly string[];
  /** What was not judged and what was assumed, in sentences. */
  readonly notes: readonly string[];
}

/**
 * Reasons for one pattern on one figure. Agrees with the verdict that `matchAll` gives for the pair.
 *
 * @param pattern row in `fitting.patterns`
 * @param figure row in `fitting.view.chart.figures`
 */
export function explainPair(fitting: Fitting, pattern: number, figure: number): Explanation {
  const compiled = fitting.patterns[pattern];
  if (!compiled) throw new RangeError(`There is no pattern ${String(pattern)}.`);
  const { view, readingError } = fitting;
  const name = view.chart.figures[figure] ?? "";
  const verdict = verdictOf(judgePair(compiled, figure, readingError));
  const routes = rankRoutes(compiled, fitting, figure);
  const opening = (check: OpeningCheck, route?: { name: RouteName; isBest: boolean }): Check =>
    explainOpening(
      check,
      compiled,
      {
        index: figure,
        name,
        unit: view.unitOf(unitMeasure[check.obstacle]),
        obstacle: view.obstacle(check.obstacle, figure),
      },
      readingError,
      route,
    );
  const checks = [
    ...compiled.eases.map((check) =>
      explainEase(
        check,
        compiled,
        { index: figure, name, unit: view.unitOf(check.ends?.uses[0]?.measure ?? check.rule.measure) },
        readingError,
      ),
    ),
    ...compiled.limbs.map((check) => opening(check)),
    ...routes.flatMap(({ route, isBest }) =>
      route.openings.map((check) => opening(check, { name: route.name, isBest })),
    ),
  ];
  const governing = governingCheck(checks, verdict);
  const unjudged = [...compiled.unjudged, ...checks.flatMap(unknownLength)];
  return {
    pattern: compiled.pattern.code,
    figure: name,
    verdict,
    words: [sentence(verdict, governing), ...(isWearable(verdict) ? briefly(unjudged) : [])].join(" "),
    ...(governing ? { governing } : {}),
    checks,
    routes: routes.map(({ route, isBest, rankOf }) => ({
      name: route.name,
      verdict: verdictOf(rankOf),
      isBest,
    })),
    take:
      verdict === "not known" || verdict === "too close to call"
        ? [
            ...new Set(
              checks.filter((check) => check.counts && check.verdict === verdict).flatMap(({ take }) => take),
            ),
          ]
        : [],
    unjudged,
    notes: [...unjudged, ...notesOn(compiled, fitting, figure)],
  };
}

const unitMeasure: Readonly<Record<ObstacleName, string>> = {
  head: "headGirth",
  hand: "handGirth",
  "arm to the elbow": "handGirth",
  "whole arm": "handGirth",
  heel: "heelGirth",
  "leg to the calf": "heelGirth",
  "leg to the knee": "heelGirth",
  "leg to the thigh": "heelGirth",
  "whole leg": "heelGirth",
  hip: "hipGirth",
  "shoulders and bust": "bustGirth",
};

interface RankedRoute {
  readonly route: Route;
  readonly rankOf: number;
  readonly isBest: boolean;
}

/** The better verdict first; of equal ones that with more room at its narrowest place. */
function rankRoutes(compiled: CompiledPattern, fitting: Fitting, figure: number): readonly RankedRoute[] {
  return compiled.routes
    .map((route) => ({
      route,
      rankOf: judgeRoute(route, figure, fitting.readingError),
      room: Math.min(
        Infinity,
        ...route.openings.map((check) => {
          const reachMm = check.shutMm + check.placket.leastMm;
          const room = reachMm / (check.obstacles[figure] ?? Number.NaN);
          return Number.isNaN(room) ? 0 : room;
        }),
      ),
    }))
    .sort((a, b) => a.rankOf - b.rankOf || b.room - a.room)
    .map(({ route, rankOf }, i) => ({ route, rankOf, isBest: i === 0 }));
}

/** Of the checks with the verdict of the whole, the one that is furthest off for its size. */
function governingCheck(checks: readonly Check[], verdict: Verdict): Check | undefined {
  const off = ({ differenceMm, needsMm }: Check): number => {
    const share = Math.abs(differenceMm) / Math.max(needsMm, 1);
    return Number.isNaN(share) ? 0 : share;
  };
  return checks
    .filter((check) => check.counts && check.verdict === verdict)
    .sort((a, b) => off(b) - off(a) || rank[a.verdict] - rank[b.verdict])[0];
}

function sentence(verdict: Verdict, governing: Check | undefined): string {
  if (verdict === "fits") return "Fits.";
  if (!governing) return "Not known: its garment class has no ease rule that could be checked.";
  return `${governing.place}: ${governing.says}.`;
}

/** A length that is known of the garment, but not of the figure. */
function unknownLength({ place, measure = "", counts, take }: Check): readonly string[] {
  if (counts || !lineMeasures.includes(measure)) return [];
  return [`${place === "Hem" ? "Length" : place} not judged: measure ${take.join(" and ")}.`];
}

/** “Length not judged.” */
export function briefly(unjudged: readonly string[]): readonly string[] {
  return unjudged.map((each) => `${each.slice(0, each.indexOf(":"))}.`);
}

function notesOn(compiled: CompiledPattern, { view }: Fitting, figure: number): readonly string[] {
  const { pattern } = compiled;
  const traits = view.traits[figure];
  const under = pattern.wornOver.length > 0 ? [`Worn over ${pattern.wornOver.join(", ")}.`] : [];
  const stretch =
    pattern.stretch > 0
      ? [
          `The cloth stretches by ${String(Math.round(pattern.stretch * 100))} %; half of that is counted as comfortable.`,
        ]
      : [];
  const wig =
    traits?.wig && pattern.garmentClass.wornOn === "head"
      ? ["The head is measured without its wig: try a hat on over the wig."]
      : [];
  return [...under, ...stretch, ...wig];
}
