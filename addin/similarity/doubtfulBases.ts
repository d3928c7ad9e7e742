import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { doubtSays, doubtsByRow, restsOnWords } from "../chart/doubt.ts";
import { someOf } from "../measures/quote.ts";
import { compareNames } from "./nameOrder.ts";

/** The base figure of each figure, by places in the chart. */
type BaseOf = ArrayLike<number>;

/** What the base figure of one figure rests on, or whom else those of a base figure would go to. */
export interface BaseMark {
  /** The figures that it is about, by their places. */
  readonly places: readonly number[];
  readonly says: string;
}

/**
 * What a base figure rests on: doubtful readings of a figure that it serves, with what serves that if all such readings are mended, and
 * the others that would go to another base figure then. What is doubtful of a whole column is told where it changes something.
 *
 * @param base place of the base figure
 * @param after the bases that are found when the readings are mended, or left out where nobody knows what they ought to be
 * @param doubtful the doubts about readings that were compared, see `comparedDoubts`
 * @returns in the order of names
 */
export function baseMarks(
  chart: Chart,
  { base, baseOf, after }: { readonly base: number; readonly baseOf: BaseOf; readonly after: BaseOf },
  doubtful: readonly Doubt[],
): readonly BaseMark[] {
  const { figures, rows } = chart;
  const ofRow = doubtsByRow(doubtful);
  const own: BaseMark[] = [];
  const moved = new Map<number, number[]>();
  const served = [...figures.keys()].filter((place) => baseOf[place] === base);
  for (const place of served.sort((i, j) => compareNames(chart, i, j))) {
    const other = after[place]!;
    const doubts = ofRow.get(rows[place] ?? -1) ?? [];
    if (doubts.some(({ figure }) => figure !== "")) {
      const how = doubts.every(({ corrections }) => corrections.length > 0) ? "Mended" : "Without";
      const serves =
        other === base ? "the same" : other === place ? "serves itself" : `${figures[other]!} serves it`;
      const says = restsOnWords(doubts.map((doubt) => doubtSays(doubt)));
      own.push({ places: [place], says: `${says} ${how}: ${serves}.` });
    } else if (other !== base) moved.set(other, [...(moved.get(other) ?? []), place]);
  }
  return [
    ...own,
    ...[...moved].map(([other, places]) => ({
      places,
      says: `If doubtful readings were mended: ${figures[other]!} serves ${someOf(places.map((place) => figures[place]!))}.`,
    })),
  ];
}
