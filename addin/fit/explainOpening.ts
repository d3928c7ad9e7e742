import type { Pattern } from "../chart/pattern.ts";
import { measureById } from "../measures/dictionary.ts";
import type { LengthUnit } from "../measures/units.ts";
import { openingAlteration } from "./alteration.ts";
import type { Check } from "./check.ts";
import type { CompiledPattern, OpeningCheck, RouteName } from "./compilePattern.ts";
import { judgeOpening, passMm } from "./judgePair.ts";
import { lengthWords } from "../measures/lengthWords.ts";
import type { Obstacle } from "./obstacles.ts";
import type { ReadingError } from "./readingError.ts";
import { readingErrorMm } from "./readingError.ts";
import type { Verdict } from "./verdict.ts";
import { verdictOf } from "./verdict.ts";

const placeNames = { neck: "Neck", cuff: "Cuff", hem: "Hem", waist: "Waist" } as const;

/** An opening on one figure, in words and numbers. */
export function explainOpening(
  check: OpeningCheck,
  { pattern, comfort }: CompiledPattern,
  figure: {
    readonly index: number;
    readonly name: string;
    readonly unit: LengthUnit;
    readonly obstacle: Obstacle;
  },
  error: ReadingError,
  route: { readonly name: RouteName; readonly isBest: boolean } | undefined,
): Check {
  const { obstacle, unit } = figure;
  const verdict = verdictOf(judgeOpening(check, figure.index, error));
  const needsMm = passMm(check, obstacle.mm);
  const hasMm = reachMm(check, verdict);
  const differenceMm = hasMm - needsMm;
  const place = `${placeNames[check.place]} over ${obstacle.words}`;
  const lacking = [
    ...obstacle.lacking.map((measure) => `${measureById(measure)?.name ?? measure} of ${figure.name}`),
    ...(Number.isNaN(check.shutMm) ? [`${check.place} opening of ${pattern.code}`] : []),
    ...(isOpenEnded(check)
      ? [`Back waist length of ${pattern.code}, since its opening begins at the neck`]
      : []),
  ];
  const because = obstacle.because === undefined ? "" : ` (${obstacle.because})`;
  const says = saysOf(verdict, {
    by: lengthWords(Math.abs(differenceMm), unit),
    error: lengthWords(readingErrorMm(error, obstacle.mm, obstacle.measure, figure.index), unit),
    lacking: lacking.join(" and "),
  });
  return {
    kind: "opening",
    place,
    opening: { place: check.place, passes: obstacle.measure, lacking: obstacle.lacking },
    ...(route ? { route: route.name } : {}),
    bodyMm: obstacle.mm,
    needsMm,
    hasMm,
    differenceMm,
    verdict,
    counts: route?.isBest ?? true,
    says: says + because,
    ...(verdict === "will not go on"
      ? {
          alteration: openingAlteration(
            -differenceMm,
            comfort,
            placketWords(check, pattern, -differenceMm, unit),
            unit,
          ),
        }
      : {}),
    unit,
    take: verdict === "too close to call" ? [`${figure.name}: ${obstacle.words}`] : lacking,
  };
}

/** True where nobody can say how far below the waist a placket ends. */
function isOpenEnded({ placket }: OpeningCheck): boolean {
  return placket.leastMm < placket.mostMm;
}

/** With its placket undone: what is sure for a yes, the most that there can be for a no. */
function reachMm(check: OpeningCheck, verdict: Verdict): number {
  const { shutMm, placket } = check;
  if (isOpenEnded(check) && verdict === "not known") return Number.NaN;
  return shutMm + (verdict === "will not go on" ? placket.mostMm : placket.leastMm);
}

function saysOf(
  verdict: Verdict,
  { by, error, lacking }: { readonly by: string; readonly error: string; readonly lacking: string },
): string {
  switch (verdict) {
    case "fits":
      return `passes, with ${by} to spare`;
    case "too close to call":
      return `too close to call: the tape may be off by ${error}. Measure again`;
    case "not known":
      return `not known: measure ${lacking}`;
    default:
      return `will not go on: ${by} too small`;
  }
}

/** The other way to a larger opening: a placket, so long that its two edges give what is missing. */
function placketWords(
  { place, placket: { mostMm: placketMm } }: OpeningCheck,
  { closure }: Pattern,
  missingMm: number,
  unit: LengthUnit,
): string {
  const half = lengthWords(missingMm / 2, unit);
  if (place === "waist" && closure === "neck") {
    return `let its opening reach ${lengthWords((placketMm + missingMm) / 2, unit)} below the waist`;
  }
  return placketMm > 0 ? `make its placket ${half} longer` : `give it a placket of ${half}`;
}
