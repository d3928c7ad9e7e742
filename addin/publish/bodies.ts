import type { Chart } from "../chart/chart.ts";
import type { ToleranceTable } from "../chart/tolerances.ts";
import { columnsOfZone } from "../similarity/columns.ts";
import { bodiesBy, groupsOf } from "../similarity/groups.ts";
import { apart, isWithin } from "../similarity/pair.ts";

/** A body, as places in the chart, in its order. */
type Body = readonly number[];

/** A figure that Groups has with others, of whom that cannot be told without the readings that are held back. */
export interface HeldApart {
  readonly figure: number;
  /** Those that it is with in Groups. */
  readonly others: Body;
  /** Keys of the columns that would be needed. */
  readonly lacking: readonly string[];
}

export interface PublishedBodies {
  /** Every published figure once, the body of the first figure first. */
  readonly bodies: readonly Body[];
  readonly heldApart: readonly HeldApart[];
  /** Figures that are several bodies by readings that are held back alone. */
  readonly mayBeOne: readonly Body[];
}

/**
 * The bodies of the published figures, as the section Groups and FIT.GROUPS name them: by every reading of the whole chart,
 * whatever part of it is published. Nothing is told by readings that are held back: who cannot be compared without them stands
 * alone.
 *
 * @param groups of the chart with all its readings
 * @param sound the same without those that are held back
 * @param places of the published figures
 */
export function publishedBodies(
  groups: readonly number[],
  sound: Chart,
  places: readonly number[],
  tolerances: ToleranceTable | undefined,
): PublishedBodies {
  const columns = columnsOfZone(sound, "body", tolerances);
  const found = bodiesBy(groups, places).map((body) => comparable(body, columns));
  const heldApart = found.flatMap((parts) => {
    const [most = [], ...others] = parts.toSorted((a, b) => b.length - a.length);
    return others.flat().map((figure) => ({
      figure,
      others: most,
      lacking: apart(columns, most[0] ?? figure, figure).lacking.map(({ column }) => column.key),
    }));
  });
  const bodies = found.flat().toSorted((one, other) => (one[0] ?? 0) - (other[0] ?? 0));
  const soundGroups = groupsOf(sound, tolerances);
  const mayBeOne = bodiesBy(soundGroups, places).filter(
    (figures) => new Set(figures.map((figure) => groups[figure])).size > 1,
  );
  return { bodies, heldApart, mayBeOne };
}

/** A body in parts of which every two figures can be compared. */
function comparable(body: Body, columns: ReturnType<typeof columnsOfZone>): readonly Body[] {
  const parts: number[][] = [];
  for (const figure of body) {
    const part = parts.find((others) =>
      others.every((other) => isWithin(apart(columns, other, figure).distance, 1)),
    );
    if (part) part.push(figure);
    else parts.push([figure]);
  }
  return parts;
}
