import { hasBit } from "./bits.ts";
import { components, disjoint, partOf, undominated } from "./graph.ts";
import { fewerGroups, searchGroups } from "./searchGroups.ts";
import type { Graph } from "./graph.ts";
import { mutuallyApart } from "./mutuallyApart.ts";
import { leastReported, mostSearched } from "./exactOptions.ts";
import type { ExactOptions } from "./exactOptions.ts";

/** Items in as few groups as possible, every two of a group within reach of each other. */
export interface FewestGroups {
  /** The group of each item, from 0 in the order of first appearance. */
  readonly groupOf: Int32Array;
  readonly count: number;
  /** No answer has fewer groups than this. Equal to `count` when that is proved to be the fewest. */
  readonly atLeast: number;
}

/** Steps of the search without a solver, for all sets together. */
const mostSteps = 100_000;
const mostMoves = 5_000;
const mostApartSteps = 20_000;

/**
 * The fewest groups: a smallest clique cover. Items that can follow another are left out; what is left falls into sets that hang
 * together, each of which is solved by itself: a first answer, made better by moving items; as many items as can be found that
 * are mutually apart as the bound; then the solver, or a search in steps.
 *
 * The answer depends on the order of items and on nothing else, unless a limit in time ends the work.
 *
 */
export function exactGroups(graph: Graph, options: ExactOptions<FewestGroups> = {}): FewestGroups {
  const { solver, leftMs = () => Infinity, onProgress } = options;
  const { stays, follows } = undominated(graph);
  const rest = partOf(graph, stays);
  const parts = components(rest)
    .map((items) => {
      const part = partOf(rest, items);
      const groups = firstFit(part);
      return { part, items: items.map((item) => stays[item]!), groups, atLeast: 1 };
    })
    .sort((a, b) => a.items.length - b.items.length);
  const answer = (): FewestGroups => {
    const groupOf = new Int32Array(graph.size);
    let count = 0;
    let atLeast = 0;
    for (const part of parts) {
      disjoint(part.groups).forEach((group, number) => {
        for (const at of group) groupOf[part.items[at]!] = count + number;
      });
      count += part.groups.length;
      atLeast += part.atLeast;
    }
    for (const { item, whom } of [...follows].reverse()) groupOf[item] = groupOf[whom]!;
    return { groupOf: byFirstAppearance(groupOf), count, atLeast };
  };

  onProgress?.(answer());
  let stepsLeft = mostSteps;
  for (const each of parts) {
    const { part } = each;
    if (part.size === 1) continue;
    const improve = (better: { groups?: readonly (readonly number[])[]; atLeast?: number }): void => {
      if (better.groups && better.groups.length < each.groups.length) each.groups = better.groups;
      each.atLeast = Math.max(each.atLeast, better.atLeast ?? 0);
    };
    const seeds = mutuallyApart(part, mostApartSteps);
    improve({ atLeast: seeds.length });
    if (part.size > mostSearched) continue;
    improve({
      groups: fewerGroups(part, each.groups, each.atLeast, mostMoves, () => leftMs() <= 0),
    });
    if (each.groups.length <= each.atLeast) continue;
    if (part.size >= leastReported) onProgress?.(answer());
    if (solver) {
      solver.fewestCliques(part, each.groups, each.atLeast, {
        solver,
        leftMs,
        onProgress: (cover) => {
          improve(cover);
          if (part.size >= leastReported) onProgress?.(answer());
        },
      });
    } else {
      const found = searchGroups(part, seeds, each.groups.length, stepsLeft);
      stepsLeft = Math.max(0, stepsLeft - found.steps);
      improve(found);
      if (found.isProved) improve({ atLeast: each.groups.length });
    }
  }
  return answer();
}

/** Each item into the first group that it can join. */
function firstFit({ size, near }: Graph): readonly (readonly number[])[] {
  const groups: { readonly items: number[]; joins: Uint32Array }[] = [];
  for (let item = 0; item < size; item++) {
    const row = near[item]!;
    const group = groups.find(({ joins }) => hasBit(joins, item));
    if (!group) {
      groups.push({ items: [item], joins: row });
      continue;
    }
    group.items.push(item);
    group.joins = group.joins.map((word, at) => word & row[at]!);
  }
  return groups.map(({ items }) => items);
}

function byFirstAppearance(groupOf: Int32Array): Int32Array {
  const numbers = new Map<number, number>();
  return groupOf.map((group) => {
    const number = numbers.get(group) ?? numbers.size;
    numbers.set(group, number);
    return number;
  });
}
