import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import { apart, isWithin } from "../../addin/similarity/pair.ts";
import { comparedColumns } from "../../addin/similarity/columns.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { linkage, linkageMethods } from "../../addin/similarity/linkage.ts";
import { nearest } from "../../addin/similarity/nearest.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { figureTree } from "../../addin/similarity/tree.ts";
import { chartOf } from "./chartOf.ts";

const missing = Number.NaN;
const tolerances = new Map(
  ["bustGirth", "waistGirth", "hipGirth", "armLength"].map((key) => [key, { floorMm: 2, percent: 0 }]),
);
const headings = ["bustGirth", "waistGirth", "hipGirth", "armLength"];
const chart = chartOf(headings, {
  Teal: [140, 100, 150, 90],
  Wren: [100, 80, 110, 70],
  Lark: [101, 80, 111, 70],
  Siskin: [141, 100, 150, 90],
  Dunnock: [102, 81, 110, 70],
  Crane: [200, 150, 220, 130],
  Rook: [100, missing, 110, 70],
});
const columns = comparedColumns(chart, { tolerances });

describe("sharedBodyGroups", () => {
  const groups = sharedBodyGroups(chart, columns);

  it("gives a row a figure in the order of the chart, larger groups first, then by name", () => {
    expect(groups.map(({ figure, group, size }) => [figure, group, size])).toEqual([
      ["Teal", 2, 2],
      ["Wren", 1, 3],
      ["Lark", 1, 3],
      ["Siskin", 2, 2],
      ["Dunnock", 1, 3],
      ["Crane", 3, 1],
      ["Rook", 4, 1],
    ]);
  });

  it("names as base the figure nearest to all others, of equals the first name", () => {
    expect(groups.map(({ base }) => base)).toEqual([
      "Siskin",
      "Lark",
      "Lark",
      "Siskin",
      "Lark",
      "Crane",
      "Rook",
    ]);
  });

  it("names the worst measure between two of the group and how much of its tolerance it uses", () => {
    expect(groups.map(({ worst }) => worst?.column.key)).toEqual([
      "bustGirth",
      "bustGirth",
      "bustGirth",
      "bustGirth",
      "bustGirth",
      undefined,
      undefined,
    ]);
    expect(groups.map(({ ofTolerance }) => ofTolerance)).toEqual([0.5, 1, 1, 0.5, 1, missing, missing]);
  });

  it("says how far each figure is from its base figure", () => {
    expect(groups.map(({ fromBase }) => fromBase.deltaMm)).toEqual([
      -1,
      -1,
      undefined,
      undefined,
      1,
      undefined,
      undefined,
    ]);
  });

  it("forms no group across a required reading that is missing", () => {
    expect(groups.filter(({ group }) => group === groups[6]!.group)).toHaveLength(1);
  });

  it("puts one figure in one group", () => {
    const one = chartOf(headings, { Wren: [100, 80, 110, 70] });
    expect(sharedBodyGroups(one, comparedColumns(one))).toMatchObject([
      { figure: "Wren", group: 1, base: "Wren" },
    ]);
  });

  it("keeps figures of one name apart by row", () => {
    const twice = chartOf(headings, [
      ["Wren", [100, 80, 110, 70]],
      ["Wren", [150, 80, 110, 70]],
    ]);
    expect(sharedBodyGroups(twice, comparedColumns(twice)).map(({ group }) => group)).toEqual([1, 2]);
  });
});

/** Few different readings, so that distances are often equal; some missing. */
const anyRows = fc.array(
  fc.tuple(
    ...headings.map(() =>
      fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 100, max: 108 }) }, fc.constant(missing)),
    ),
  ),
  { minLength: 2, maxLength: 14 },
);

const chartOfRows = (rows: readonly (readonly number[])[], order = rows.map((_, i) => i)): Chart =>
  chartOf(
    headings,
    order.map((i) => [`Figure ${String(i)}`, rows[i]!] as const),
  );

const compared = (of: Chart) => comparedColumns(of, { tolerances, zone: "all" });

function hasReadings(rows: readonly (readonly number[])[]): boolean {
  return rows.some((row) => row.some((reading) => !Number.isNaN(reading)));
}

describe("any chart", () => {
  it("has the same groups, numbers and base figures whatever the order of rows", () => {
    fc.assert(
      fc.property(
        anyRows.chain((rows) =>
          fc.tuple(
            fc.constant(rows),
            fc.shuffledSubarray(
              rows.map((_, i) => i),
              { minLength: rows.length },
            ),
          ),
        ),
        fc.constantFrom(...linkageMethods),
        ([rows, order], method) => {
          fc.pre(hasReadings(rows));
          const one = chartOfRows(rows);
          const other = chartOfRows(rows, order);
          const byName = (of: Chart) =>
            sharedBodyGroups(of, compared(of), method)
              .map(({ figure, group, base, worst, ofTolerance }) => [
                figure,
                group,
                base,
                worst?.column.key,
                ofTolerance,
              ])
              .sort();
          expect(byName(other)).toEqual(byName(one));
          const heights = (of: Chart) => figureTree(of, compared(of), method).map(({ height }) => height);
          expect(heights(other)).toEqual(heights(one));
        },
      ),
    );
  });

  it("has every two figures of a group within tolerance everywhere", () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        fc.pre(hasReadings(rows));
        const of = chartOfRows(rows);
        const among = compared(of);
        const groups = sharedBodyGroups(of, among);
        groups.forEach((one, i) => {
          groups.forEach((other, j) => {
            if (i === j || one.group !== other.group) return;
            const { distance } = apart(among, i, j);
            expect(isWithin(distance, 1)).toBe(true);
            expect(distance).toBeLessThanOrEqual(one.ofTolerance);
          });
        });
      }),
    );
  });

  it("never joins two figures when a lost reading makes their distance unknown", () => {
    fc.assert(
      fc.property(
        anyRows,
        fc.nat(),
        fc.nat(),
        fc.constantFrom(...linkageMethods),
        (rows, row, column, method) => {
          const lost = rows.map((readings) => [...readings]);
          lost[row % rows.length]![column % headings.length] = missing;
          fc.pre(hasReadings(lost));
          const of = chartOfRows(lost);
          const among = compared(of);
          const groups = sharedBodyGroups(of, among, method);
          groups.forEach((one, i) => {
            groups.forEach((other, j) => {
              if (i !== j && one.group === other.group) expect(apart(among, i, j).distance).not.toBeNaN();
            });
          });
        },
      ),
    );
  });
});

describe("figureTree", () => {
  it("names both sides of every step", () => {
    const tree = figureTree(chart, columns);
    expect(tree.slice(0, 4)).toEqual([
      // Equally far: Dunnock and Lark come before Siskin and Teal.
      { step: 1, sides: [{ figure: "Dunnock" }, { figure: "Lark" }], height: 0.5, size: 2 },
      { step: 2, sides: [{ figure: "Siskin" }, { figure: "Teal" }], height: 0.5, size: 2 },
      { step: 3, sides: [{ figure: "Wren" }, { step: 1 }], height: 1, size: 3 },
      { step: 4, sides: [{ step: 2 }, { step: 3 }], height: 20.5, size: 5 },
    ]);
    expect(tree).toHaveLength(5);
  });

  it("does not depend on the order of rows", () => {
    const turned = chartOf(
      headings,
      Object.fromEntries(
        chart.figures
          .map((figure, i) => [figure, chart.measures.map(({ mm }) => mm[i] ?? missing)])
          .reverse(),
      ),
    );
    expect(figureTree(turned, comparedColumns(turned, { tolerances }))).toEqual(figureTree(chart, columns));
  });

  it("is the clustering in the order of rows when names are in order", () => {
    const sorted = chartOf(headings, { A: [100, 80, 110, 70], B: [101, 80, 110, 70], C: [109, 80, 110, 70] });
    const among = comparedColumns(sorted);
    const joined = linkage(toleranceDistances(among, 3), "complete");
    const side = (label: number) => (label < 0 ? { figure: sorted.figures[-label - 1] } : { step: label });
    expect(figureTree(sorted, among)).toEqual(
      joined.map(({ left, right, height, size }, i) => ({
        step: i + 1,
        sides: [side(left), side(right)],
        height,
        size,
      })),
    );
  });
});

describe("nearest", () => {
  it("lists the nearest first, equals by name, unknown ones last", () => {
    const found = nearest(chart, columns, 1, 9);
    expect(found.map(({ figure, distance }) => [figure, distance])).toEqual([
      ["Lark", 0.5],
      ["Dunnock", 1],
      ["Teal", 20],
      ["Siskin", 20.5],
      ["Crane", 55],
      ["Rook", missing],
    ]);
    expect(found[0]).toMatchObject({ compared: 4, of: 4, deltaMm: 1 });
  });

  it("gives at most so many", () => {
    expect(nearest(chart, columns, 1, 2)).toHaveLength(2);
  });
});
