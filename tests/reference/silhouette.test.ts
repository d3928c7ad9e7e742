import { expect, it } from "vitest";
import { groupSilhouette } from "../../addin/similarity/silhouette.ts";
import { chartOf } from "../similarity/chartOf.ts";
import { body10, body10Cm } from "./body10.ts";

// R 4.2.2, package cluster, d being the data frame of the ten rows of body10.ts:
// x <- dist(d / 3, "maximum"); g <- cutree(hclust(x), 3); s <- silhouette(g, x); g; s[, 2]; format(s[, 3], digits = 15)
it("sits each of ten bodies in its group, and beside the nearest other, as R does", () => {
  const chart = chartOf(
    body10.map(({ column }) => column.heading),
    body10Cm.map((row, i) => [`Man ${String(i + 1)}`, row] as const),
  );
  const { widths, neighbours } = groupSilhouette(chart, body10, Int32Array.of(1, 2, 3, 2, 2, 3, 3, 3, 1, 3));
  expect([...neighbours]).toEqual([2, 3, 2, 1, 1, 2, 2, 1, 2, 2]);
  const expected = [
    0.410714285714286, 0.377659574468085, 0.181249999999999, 0.294797687861271, 0.613636363636363,
    0.467479674796747, 0.3671875, 0.428015564202335, 0.595588235294118, 0.28125,
  ];
  widths.forEach((width, i) => expect(width).toBeCloseTo(expected[i]!, 9));
});
