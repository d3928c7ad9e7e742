import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutAt } from "../../../addin/similarity/cut.ts";
import type { Merge } from "../../../addin/similarity/linkage.ts";
import { linkage } from "../../../addin/similarity/linkage.ts";
import type { DrawnTree } from "../../../taskpane/groups/drawTree.ts";
import { drawTree } from "../../../taskpane/groups/drawTree.ts";

/**
 * Five cities of the classical worked example of complete linkage: distances 9, 3, 6, 11, 7, 5, 10, 9, 2, 8 in the order
 * of pairs. Source: R. A. Johnson & D. W. Wichern, Applied Multivariate Statistical Analysis, example 12.4 and 12.6, from
 * memory: 3 and 5 join at 2, then 2 and 4 at 5, 1 joins those at 9, and all at 11.
 */
const example: readonly Merge[] = linkage(
  { size: 5, values: Float64Array.of(9, 3, 6, 11, 7, 5, 10, 9, 2, 8) },
  "complete",
);

const drawn = (merges: readonly Merge[], size: number, cut: number, more = {}): DrawnTree =>
  drawTree({ merges, groupOf: cutAt(merges, size, cut), cut, isFolded: false, mostRows: 1000, ...more });

describe("a tree laid out in rows", () => {
  test("joins at the heights of the worked example, the larger part above", () => {
    const { rows, joins, roots } = drawn(example, 5, 4);
    expect(joins.map(({ height, size }) => [height, size])).toEqual([
      [2, 2],
      [5, 2],
      [9, 3],
      [11, 5],
    ]);
    expect(rows.map(({ items }) => items)).toEqual([[1], [3], [0], [2], [4]]);
    expect(joins.map(({ isGroup }) => isGroup)).toEqual([true, false, false, false]);
    expect(roots).toEqual([{ row: (0.5 + 2) / 2 / 2 + 3.5 / 2, height: 11 }]);
  });

  test("has one row for each group where groups are folded", () => {
    const { rows, joins } = drawn(example, 5, 5, { isFolded: true });
    expect(rows.map(({ items }) => items)).toEqual([[1, 3], [0], [2, 4]]);
    expect(joins.map(({ height }) => height)).toEqual([9, 11]);
  });

  test("leaves out the groups with the highest numbers where there are too many rows, and says how many figures", () => {
    const { rows, joins, leftOut } = drawTree({
      merges: example,
      groupOf: [2, 1, 3, 1, 3],
      cut: 5,
      isFolded: false,
      mostRows: 3,
    });
    expect(rows.map(({ group }) => group)).toEqual([1, 1, 2]);
    expect(leftOut).toBe(2);
    expect(joins.map(({ height }) => height)).toEqual([5, 9]);
  });

  test("draws figures that join nobody, and a single one", () => {
    const apart = drawn([], 3, 1);
    expect(apart.rows.map(({ items }) => items)).toEqual([[0], [1], [2]]);
    expect(apart.roots.map(({ row }) => row)).toEqual([0, 1, 2]);
    expect(drawn([], 1, 1)).toMatchObject({ joins: [], leftOut: 0 });
  });

  test("gives every figure one row, and what joins stands together, for any distances and any cut", () => {
    const distances = fc.integer({ min: 2, max: 12 }).chain((size) =>
      fc.tuple(
        fc.constant(size),
        fc.array(fc.constantFrom(0, 0.5, 1, 2, 3, Number.NaN), {
          minLength: (size * (size - 1)) / 2,
          maxLength: (size * (size - 1)) / 2,
        }),
        fc.constantFrom(0, 0.5, 1, 2.5),
        fc.boolean(),
      ),
    );
    fc.assert(
      fc.property(distances, ([size, values, cut, isFolded]) => {
        const merges = linkage({ size, values: Float64Array.from(values) }, "complete");
        const tree = drawn(merges, size, cut, { isFolded });
        expect(tree.rows.flatMap(({ items }) => items).sort((a, b) => a - b)).toEqual(
          Array.from({ length: size }, (_, item) => item),
        );
        expect(tree.joins.length + tree.roots.length).toBe(tree.rows.length);
        const parts: (readonly number[])[] = [];
        for (const { left, right } of merges) {
          const items = [left, right].flatMap((label) =>
            label < 0 ? [-label - 1] : (parts[label - 1] ?? []),
          );
          parts.push(items);
          const rows = new Set(
            items.map((item) => tree.rows.findIndex((row) => row.items.some((each) => each === item))),
          );
          expect(Math.max(...rows) - Math.min(...rows) + 1, "what joins stands together").toBe(rows.size);
        }
      }),
    );
  });
});
