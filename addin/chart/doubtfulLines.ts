import { InputError } from "../measures/inputError.ts";
import type { Chart } from "./chart.ts";
import type { Doubt } from "./doubt.ts";
import { chartWith, doubtsByRow, mended, placesOf } from "./doubt.ts";

/** One line of an answer: what is said about some figures. */
export interface AnswerLine {
  /** The same for the same question, asked of another chart. */
  readonly key: string;
  /** The figures that it is about, by their places. */
  readonly figures: readonly number[];
  /** What is answered: “Across”, “13.75”. */
  readonly answers: readonly (readonly [what: string, answer: string])[];
}

/** What a line rests on: without that, or with it mended, it would be another one. */
export interface LineDoubt {
  /** Doubtful readings of its figures; empty where it is another one because of other figures. */
  readonly grounds: readonly Doubt[];
  /** False where nobody knows what one of them ought to be, so that it is taken out. */
  readonly isMended: boolean;
  /** What it would be with all doubtful readings mended; `undefined` where there would be no such line. */
  readonly changes: AnswerLine["answers"] | undefined;
}

/** Lines that are asked anew to find out which of several readings is the ground; what is left then is all named. */
const mostAsked = 2000;

/**
 * Which lines of an answer rest on doubtful readings. All is asked anew without them, and with them mended as the check suggests; and
 * where several could be the ground, without each of them.
 *
 * @param doubtful the doubts about the chart, see `doubts`; those that the answer does not look at may be left out
 * @param linesOn asked of the chart, and of charts with other readings; nothing is answered where it throws an `InputError`
 * @returns by line; empty where nothing is doubtful
 */
export function lineDoubts(
  chart: Chart,
  doubtful: readonly Doubt[],
  linesOn: (chart: Chart) => readonly AnswerLine[],
): readonly (LineDoubt | undefined)[] {
  if (doubtful.length === 0) return [];
  const lines = linesOn(chart);
  const ask = (other: Chart): ReadonlyMap<string, AnswerLine> =>
    new Map(answered(() => linesOn(other)).map((line) => [line.key, line]));
  const without = ask(chartWith(chart, doubtful.flatMap(placesOf)));
  const sound = ask(mended(chart, doubtful));
  const ofRow = doubtsByRow(doubtful);
  const withoutSome = new Map<string, ReturnType<typeof ask>>();
  /** The answer without some of the readings; `undefined` when enough has been asked. */
  const askWithout = (some: readonly Doubt[]): ReturnType<typeof ask> | undefined => {
    const key = some.map((doubt) => doubtful.indexOf(doubt)).join();
    if (!withoutSome.has(key) && withoutSome.size * lines.length < mostAsked)
      withoutSome.set(key, ask(chartWith(chart, some.flatMap(placesOf))));
    return withoutSome.get(key);
  };
  return lines.map((line) => {
    const isOther = (asked: ReturnType<typeof ask> | undefined): boolean =>
      !asked || textOf(asked.get(line.key)) !== textOf(line);
    if (!isOther(without) && !isOther(sound)) return undefined;
    const own = [...new Set(line.figures.flatMap((place) => ofRow.get(chart.rows[place] ?? -1) ?? []))];
    const alone = own.filter((doubt) => isOther(askWithout([doubt])));
    // Two together may decide what neither does by itself.
    const grounds = alone.length === 0 && own.length > 1 && isOther(askWithout(own)) ? own : alone;
    return {
      grounds,
      isMended: grounds.every(({ corrections }) => corrections.length > 0),
      changes: sound.get(line.key)?.answers.filter(([, answer], i) => answer !== line.answers[i]?.[1]),
    };
  });
}

function textOf(line: AnswerLine | undefined): string {
  return line ? JSON.stringify(line.answers) : "";
}

function answered(ask: () => readonly AnswerLine[]): readonly AnswerLine[] {
  try {
    return ask();
  } catch (failure) {
    if (failure instanceof InputError) return [];
    throw failure;
  }
}
