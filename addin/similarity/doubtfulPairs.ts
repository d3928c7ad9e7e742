import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { chartWith, doubtSays, doubtsByRow, mended, placesOf, restsOnWords } from "../chart/doubt.ts";
import { someOf } from "../measures/quote.ts";
import type { ComparedColumn } from "./columns.ts";
import { comparedDoubts } from "./doubtfulGroups.ts";

/** One of the answers about two figures: “Loose clothes”, “no”, “Bust 9 mm larger”. */
export interface PairAnswer {
  /** Empty where there is one answer only. */
  readonly what: string;
  readonly answer: string;
  readonly why: string;
}

/** What a chart answers about two of its figures, by their places. */
export type AnswersOf = (chart: Chart) => (place: number, other: number) => readonly PairAnswer[];

/**
 * What the answers about pairs of figures rest on: the doubtful readings without which they would be others, and what they would
 * be with all of them mended; `undefined` for pairs whose answers rest on sound readings. Pairs of sound figures are not asked again.
 *
 * @param pairs places in the chart, from 0
 * @param columns all that may be compared
 * @param doubtful the doubts about the chart, see `doubts`
 * @param answersOf asked of the chart, and of charts with some readings mended or taken out
 */
export function pairDoubts(
  chart: Chart,
  pairs: readonly (readonly [place: number, other: number])[],
  columns: readonly ComparedColumn[],
  doubtful: readonly Doubt[],
  answersOf: AnswersOf,
): readonly (string | undefined)[] {
  const concerned = comparedDoubts(chart, columns, doubtful);
  if (concerned.length === 0) return pairs.map(() => undefined);
  const ofRow = doubtsByRow(concerned);
  const asRead = answersOf(chart);
  const without = answersOf(chartWith(chart, concerned.flatMap(placesOf)));
  const sound = answersOf(mended(chart, concerned));
  const withoutOne = new Map<Doubt, ReturnType<AnswersOf>>();
  const isOther = (ask: ReturnType<AnswersOf>, [place, other]: readonly [number, number]) =>
    answersText(ask(place, other)) !== answersText(asRead(place, other));
  const decides = (doubt: Doubt, pair: readonly [number, number]) => {
    const ask = withoutOne.get(doubt) ?? answersOf(chartWith(chart, placesOf(doubt)));
    withoutOne.set(doubt, ask);
    return isOther(ask, pair);
  };
  return pairs.map((pair) => {
    const [place, other] = pair;
    const own = new Set(pair.flatMap((each) => ofRow.get(chart.rows[each] ?? -1) ?? []));
    if (own.size === 0 || !(isOther(without, pair) || isOther(sound, pair))) return undefined;
    const alone = [...own].filter((doubt) => decides(doubt, pair));
    // Two together may decide what neither does by itself.
    const grounds = alone.length > 0 ? alone : [...own];
    const before = asRead(place, other);
    const changes = sound(place, other).filter(({ answer }, i) => answer !== before[i]?.answer);
    const after =
      changes.length === 0
        ? "the same"
        : someOf(changes.map(({ what, answer }) => `${what} ${answer}`.trim()));
    const isMended = grounds.every(({ corrections }) => corrections.length > 0);
    return `${restsOnWords(grounds.map((doubt) => doubtSays(doubt)))} The answer: ${after} ${isMended ? "if mended" : "without"}.`;
  });
}

function answersText(answers: readonly PairAnswer[]): string {
  return answers.map(({ answer, why }) => `${answer} ${why}`).join("\n");
}
