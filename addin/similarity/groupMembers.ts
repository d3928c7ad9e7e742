import { apart, type Apart } from "./apart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import type { Condensed } from "./condensed.ts";
import { medoid } from "./medoid.ts";
import { toleranceDistances } from "./toleranceDistances.ts";

/** What holds the members of one group together. */
export interface Bond {
  /** The item nearest to all others, see `medoid`. Where pairs are not known they count as farthest. */
  readonly base: number;
  /** The two items that are farthest apart, of equals the first pair; an item by itself twice. */
  readonly pair: readonly [number, number];
  /** How far those two are apart. */
  readonly farthest: Apart;
}

/**
 * The base figure of a group and the pair that is nearest to its limit. Time grows with the square of the number of
 * members.
 *
 * @param columns see `comparedColumns`
 * @param members where each member stands in the columns, from 0; at least one
 */
export function bondOf(columns: readonly ComparedColumn[], members: readonly number[]): Bond {
  const within = toleranceDistances(readingsOf(members, columns), members.length);
  const pair = farthestPair(members, within);
  return { base: members[medoid(unknownFarthest(within))]!, pair, farthest: apart(columns, ...pair) };
}

function readingsOf(
  members: readonly number[],
  columns: readonly ComparedColumn[],
): readonly ComparedColumn[] {
  return columns.map((compared) => ({
    ...compared,
    column: { ...compared.column, mm: Float64Array.from(members, (item) => compared.column.mm[item]!) },
  }));
}

function farthestPair(members: readonly number[], within: Condensed): readonly [number, number] {
  let farthest: readonly [number, number] = [members[0]!, members[0]!];
  let most = 0;
  for (let i = 0, at = 0; i < members.length; i++) {
    for (let j = i + 1; j < members.length; j++, at++) {
      if (within.values[at]! > most) {
        most = within.values[at]!;
        farthest = [members[i]!, members[j]!];
      }
    }
  }
  return farthest;
}

function unknownFarthest({ size, values }: Condensed): Condensed {
  return { size, values: values.map((distance) => (Number.isNaN(distance) ? Infinity : distance)) };
}
