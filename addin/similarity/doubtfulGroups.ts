import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { doubtsByRow, mended, restsOnWords } from "../chart/doubt.ts";
import { someOf } from "../measures/quote.ts";
import type { ComparedColumn } from "./columns.ts";

/** The number of the group of each figure, in the order of the chart. */
type GroupOf = ArrayLike<number>;

/**
 * What the group of each figure rests on: its doubtful readings that were compared, and who would share a body with it if they
 * were mended. A figure that others would join or leave for that reason hears of it too. Empty where there is nothing to say.
 *
 * @param columns what is compared
 * @param doubtful the doubts about the chart, see `doubts`
 * @param groupOf the groups by other columns, made in the same way; what would become of the groups is not told without it
 */
export function groupMarks(
  chart: Chart,
  columns: readonly ComparedColumn[],
  groups: GroupOf,
  doubtful: readonly Doubt[],
  groupOf: ((columns: readonly ComparedColumn[]) => GroupOf) | undefined,
): readonly string[] {
  const concerned = comparedDoubts(chart, columns, doubtful);
  if (concerned.length === 0) return chart.figures.map(() => "");
  const mendable = concerned.filter(({ corrections }) => corrections.length > 0);
  const after = mendable.length === 0 || !groupOf ? groups : groupOf(mendedColumns(chart, columns, mendable));
  const ofRow = doubtsByRow(concerned);
  const ownOf = (figure: number) => ofRow.get(chart.rows[figure]!) ?? [];
  return chart.figures.map((_, figure) => {
    const own = ownOf(figure);
    const company = companyOf(after, figure);
    const before = companyOf(groups, figure);
    const isOther = company.length !== before.length || company.some((each, at) => each !== before[at]);
    if (own.length > 0) {
      const rests = restsOnWords(own.map(({ says }) => says));
      if (!own.some(({ corrections }) => corrections.length > 0)) return `${rests} Measure again.`;
      if (!groupOf) return rests;
      const shared =
        company.length === 0
          ? "it would be by itself"
          : `it would share a body with ${someOf(company.map((each) => chart.figures[each]!))}`;
      return `${rests} Mended, ${isOther ? shared : "its group stays"}.`;
    }
    if (!isOther) return "";
    const because = [...before.filter((each) => !company.includes(each)), ...company.filter((each) => !before.includes(each))]; // prettier-ignore
    const doubted = because.filter((each) => ownOf(each).length > 0);
    const whose = doubted.length > 0 ? ` of ${someOf(doubted.map((each) => chart.figures[each]!))}` : "";
    return `Another group if doubtful readings${whose} were mended.`;
  });
}

/** The doubts about readings that take part in the comparison. */
export function comparedDoubts(
  chart: Chart,
  columns: readonly ComparedColumn[],
  doubtful: readonly Doubt[],
): readonly Doubt[] {
  const placeOf = new Map(chart.rows.map((row, place) => [row, place]));
  const mmOf = new Map(columns.map(({ column }) => [column.position, column.mm]));
  return doubtful.filter(({ cells }) =>
    cells.some(({ row, column }) => !Number.isNaN(mmOf.get(column)?.[placeOf.get(row) ?? -1] ?? Number.NaN)),
  );
}

/** The columns with the doubtful readings mended, or taken out where nobody knows what they ought to be. */
export function mendedColumns(
  chart: Chart,
  columns: readonly ComparedColumn[],
  doubtful: readonly Doubt[],
): readonly ComparedColumn[] {
  const { measures } = mended({ ...chart, measures: columns.map(({ column }) => column) }, doubtful);
  return columns.map((compared, c) => ({ ...compared, column: measures[c]! }));
}

/** The other figures of the group. */
function companyOf(groups: GroupOf, figure: number): readonly number[] {
  const company: number[] = [];
  for (let each = 0; each < groups.length; each++)
    if (each !== figure && groups[each] === groups[figure]) company.push(each);
  return company;
}
