import type { Merge } from "../../addin/similarity/linkage.ts";
import { isWithin } from "../../addin/similarity/pair.ts";

/** A row of the drawing: one figure, or all figures of a group where groups are folded. */
export interface TreeRow {
  /** Items of the tree, first name first. */
  readonly items: readonly number[];
  /** The number of their group. */
  readonly group: number;
}

/** Where a line begins: at which row, counted from 0 and also between rows, and at which height. */
export interface TreeEnd {
  readonly row: number;
  readonly height: number;
}

/** Two lines that join. */
export interface TreeJoin {
  readonly height: number;
  /** The upper one first. */
  readonly ends: readonly [TreeEnd, TreeEnd];
  /** Number of figures that are together from here on, those that are not drawn included. */
  readonly size: number;
  /** True when it lies at or below the cut, so that its figures are one group. */
  readonly isGroup: boolean;
}

/** A tree laid out: what is drawn in which row. */
export interface DrawnTree {
  readonly rows: readonly TreeRow[];
  /** Lowest first. */
  readonly joins: readonly TreeJoin[];
  /** Lines that join no other. */
  readonly roots: readonly TreeEnd[];
  /** Number of figures that are not drawn. */
  readonly leftOut: number;
}

export interface TreeToDraw {
  readonly merges: readonly Merge[];
  /** The group of each item at the cut, from 1, larger groups first. */
  readonly groupOf: ArrayLike<number>;
  readonly cut: number;
  /** One row for each group, not for each figure. */
  readonly isFolded: boolean;
  /** Rows beyond which the groups with the highest numbers are left out. */
  readonly mostRows: number;
}

/** A part of the tree: its rows as a chain from first to last. */
interface Branch {
  readonly first: number;
  readonly last: number;
  readonly figures: number;
  /** The first of its items. */
  readonly least: number;
}

/**
 * Lays out a tree in rows without crossing lines: the larger part of each join stands above, of equals that with the
 * first name.
 */
export function drawTree(tree: TreeToDraw): DrawnTree {
  const { merges, groupOf, cut } = tree;
  const rows = rowsOf(tree);
  const rowOfItem = new Map(rows.flatMap(({ items }, row) => items.map((item) => [item, row] as const)));
  const placeOfRow = orderRows(merges, rows.length, rowOfItem);

  const ends: (TreeEnd | undefined)[] = [];
  const isJoined = new Set<number>();
  const endOf = (label: number): TreeEnd | undefined => {
    if (label > 0) return ends[label - 1];
    const row = rowOfItem.get(-label - 1);
    return row === undefined ? undefined : { row: placeOfRow[row]!, height: 0 };
  };
  const joins: TreeJoin[] = [];
  for (const { left, right, height, size } of merges) {
    const [one, other] = [endOf(left), endOf(right)];
    [left, right].filter((label) => label > 0).forEach((label) => isJoined.add(label));
    if (one && other && one.row !== other.row) {
      const pair = one.row < other.row ? ([one, other] as const) : ([other, one] as const);
      joins.push({ height, ends: pair, size, isGroup: isWithin(height, cut) });
      ends.push({ row: (one.row + other.row) / 2, height });
    } else ends.push(one ?? other);
  }

  const isPlaced = new Set(joins.flatMap((join) => join.ends.map(({ row }) => row)));
  const tops = ends.filter((end, i) => end !== undefined && !isJoined.has(i + 1));
  const alone = [...placeOfRow].filter((row) => !isPlaced.has(row)).map((row) => ({ row, height: 0 }));
  const roots = new Map(
    [...alone, ...tops.filter((end) => end !== undefined)].map((end) => [end.row, end] as const),
  );
  const inOrder: TreeRow[] = new Array<TreeRow>(rows.length);
  rows.forEach((row, i) => (inOrder[placeOfRow[i]!] = row));
  return {
    rows: inOrder,
    joins,
    roots: [...roots.values()].sort((a, b) => a.row - b.row),
    leftOut: groupOf.length - rowOfItem.size,
  };
}

/** The rows, group by group. */
function rowsOf({ groupOf, isFolded, mostRows }: TreeToDraw): readonly TreeRow[] {
  const members: number[][] = [];
  for (let item = 0; item < groupOf.length; item++) (members[groupOf[item]! - 1] ??= []).push(item);
  const rows: TreeRow[] = [];
  for (const [i, items] of members.entries()) {
    const group = i + 1;
    const ofGroup = isFolded ? [{ items, group }] : items.map((item) => ({ items: [item], group }));
    if (rows.length > 0 && rows.length + ofGroup.length > mostRows) break;
    rows.push(...ofGroup);
  }
  return rows;
}

/** The place of each row in the drawing, from 0. */
function orderRows(
  merges: readonly Merge[],
  count: number,
  rowOfItem: ReadonlyMap<number, number>,
): Int32Array {
  const next = new Int32Array(count).fill(-1);
  const branches: (Branch | undefined)[] = [];
  const open = new Map<number, Branch>();
  const branchOf = (label: number): Branch | undefined => {
    if (label > 0) return branches[label - 1];
    const item = -label - 1;
    const row = rowOfItem.get(item);
    return row === undefined ? undefined : { first: row, last: row, figures: 1, least: item };
  };
  // Every row stands by itself until it joins; a branch is known by its first row.
  for (const [item, row] of rowOfItem) {
    if (!open.has(row)) open.set(row, { first: row, last: row, figures: 1, least: item });
  }
  for (const { left, right } of merges) {
    const parts = [branchOf(left), branchOf(right)].filter((part) => part !== undefined).sort(larger);
    const [above, below] = parts;
    if (!above || !below) {
      branches.push(above);
      continue;
    }
    const isOneRow = above.first === below.first;
    const joined: Branch = {
      first: above.first,
      last: isOneRow ? above.last : below.last,
      figures: above.figures + below.figures,
      least: Math.min(above.least, below.least),
    };
    if (!isOneRow) {
      next[above.last] = below.first;
      open.delete(below.first);
    }
    open.set(joined.first, joined);
    branches.push(joined);
  }
  const places = new Int32Array(count);
  let place = 0;
  for (const { first } of [...open.values()].sort(larger)) {
    for (let row = first; row >= 0; row = next[row]!) places[row] = place++;
  }
  return places;
}

function larger(a: Branch, b: Branch): number {
  return b.figures - a.figures || a.least - b.least;
}
