import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import { zones } from "../../addin/measures/measure.ts";
import type { ZoneChoice } from "../../addin/similarity/columns.ts";
import { comparedColumns } from "../../addin/similarity/columns.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import type { LinkageMethod } from "../../addin/similarity/linkage.ts";
import { linkageMethods } from "../../addin/similarity/linkage.ts";
import { nearest } from "../../addin/similarity/nearest.ts";
import { nextReadings } from "../../addin/similarity/next.ts";
import { figureTree } from "../../addin/similarity/tree.ts";
import { chartOf } from "./chartOf.ts";

const headings = [
  ...["bustGirth", "waistGirth", "hipGirth", "armLength", "upperArmGirth", "thighGirth", "insideLeg"],
  ...["headGirth", "faceWidth", "handGirth", "handLength", "footLength", "footWidth", "Tail"],
];

/** Few different readings, so that distances are often equal; some missing. At least one figure has everything. */
const bodies = fc.array(
  fc.tuple(
    ...headings.map(() =>
      fc.oneof({ weight: 12, arbitrary: fc.integer({ min: 100, max: 106 }) }, fc.constant(Number.NaN)),
    ),
  ),
  { minLength: 1, maxLength: 11 },
);
const whole = headings.map(() => 103);

/** The same figures in two orders of rows. */
const twoOrders = bodies.chain((found) => {
  const rows = [whole, ...found];
  const places = rows.map((_, i) => i);
  // Names whose order as text is not that of their numbers.
  const chartIn = (order: readonly number[]) =>
    chartOf(
      headings,
      order.map((i) => [`Body ${String(i)}`, rows[i]!] as const),
    );
  return fc
    .shuffledSubarray(places, { minLength: places.length })
    .map((order): readonly [Chart, Chart] => [chartIn(places), chartIn(order)]);
});

const zoneChoices: readonly ZoneChoice[] = ["body", ...zones, "all"];
const cases = linkageMethods.flatMap((method) => zoneChoices.map((zone) => [method, zone] as const));

/** A result by figure, in the order of names of the chart’s text. */
const byFigure = <T extends { readonly figure: string }>(rows: readonly T[]) =>
  [...rows].sort((a, b) => (a.figure < b.figure ? -1 : 1));

describe("whatever the order of rows", () => {
  it.each(cases)(
    "groups, numbers, base figures and heights are the same: %s, %s",
    (method: LinkageMethod, zone) => {
      fc.assert(
        fc.property(twoOrders, (charts) => {
          const [one, other] = charts.map((chart) => {
            const columns = comparedColumns(chart, { zone });
            const groups = sharedBodyGroups(chart, columns, method).map(({ worst, fromBase, ...row }) => ({
              ...row,
              worst: worst?.column.key,
              fromBase: [fromBase.distance, fromBase.worst?.column.key, fromBase.deltaMm],
            }));
            const tree = figureTree(chart, columns, method).map(({ height, size }) => [height, size]);
            return { groups: byFigure(groups), tree };
          });
          expect(other).toEqual(one);
        }),
        { numRuns: 25 },
      );
    },
  );

  it("neighbours and what to measure next are the same", () => {
    fc.assert(
      fc.property(twoOrders, (charts) => {
        const [one, other] = charts.map((chart) => {
          const columns = comparedColumns(chart);
          const from = chart.figures.indexOf("Body 0");
          return {
            near: nearest(chart, columns, from, 5).map(({ figure, distance }) => [figure, distance]),
            next: nextReadings(chart, columns).map(({ figure, column, settles, neededBy }) => [
              figure,
              column.key,
              settles,
              neededBy,
            ]),
          };
        });
        expect(other).toEqual(one);
      }),
    );
  });
});
