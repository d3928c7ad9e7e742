import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { comparedColumns } from "../../../addin/similarity/columns.ts";
import { clumps } from "../../../taskpane/groups/clumps.ts";
import { nearMap } from "../../../taskpane/groups/nearMap.ts";
import { placeLabels, withRoom } from "../../../taskpane/groups/placeLabels.ts";

const room = { width: 200, height: 120, size: 12, widthOf: (words: string) => words.length * 6 };

describe("labels of a drawing", () => {
  test("stand to the right where there is room, else elsewhere, else nowhere", () => {
    const [right, left] = placeLabels(
      [
        { x: 20, y: 60, radius: 4, label: "Ash" },
        { x: 190, y: 60, radius: 4, label: "Birch" },
      ],
      room,
    );
    expect(right).toMatchObject({ anchor: "start" });
    expect(left).toMatchObject({ anchor: "end" });
    const crowded = Array.from({ length: 40 }, () => ({ x: 100, y: 60, radius: 4, label: "Alder" }));
    expect(placeLabels(crowded, room).filter((place) => place === undefined).length).toBeGreaterThan(20);
  });

  test("cover no other label", () => {
    const marks = fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 200 }),
        y: fc.integer({ min: 0, max: 120 }),
        radius: fc.constant(4),
        label: fc.constantFrom("A", "Alder", "Blackthorn"),
      }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(marks, (given) => {
        const boxes = placeLabels(given, room).flatMap((place, i) => {
          if (!place) return [];
          const width = room.widthOf(given[i]?.label ?? "");
          const left =
            place.anchor === "start"
              ? place.x
              : place.anchor === "end"
                ? place.x - width
                : place.x - width / 2;
          return [{ left, right: left + width, top: place.y - 9.6, bottom: place.y + 3 }];
        });
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1)) {
            expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
          }
        });
      }),
    );
  });
});

describe("marks of the map", () => {
  test("have a number where it lies over no other, and only there", () => {
    const marks = fc.array(
      fc.record({ x: fc.integer({ min: 0, max: 200 }), y: fc.integer({ min: 0, max: 120 }) }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(marks, (given) => {
        const roomy = withRoom(given, 10);
        const apart = (i: number, j: number) =>
          Math.hypot(given[i]!.x - given[j]!.x, given[i]!.y - given[j]!.y);
        const before = (i: number) => given.flatMap((_, j) => (j < i && roomy[j] ? [apart(i, j)] : []));
        return given.every((_, i) => roomy[i] === before(i).every((distance) => distance >= 20));
      }),
    );
  });

  test("stand for figures of one group that lie close together, the base figure first", () => {
    const spot = (x: number, group: number, isBase = false) => ({ x, y: 0, group, isBase });
    const found = clumps([spot(0, 1), spot(5, 1, true), spot(6, 2), spot(90, 1)], 10);
    expect(found.map(({ group, spots }) => [group, spots.map(({ x }) => x)])).toEqual([
      [1, [5, 0]],
      [2, [6]],
      [1, [90]],
    ]);
  });
});

describe("a map without figures far off", () => {
  const rows: Cells = [
    ["Figure", "Bust", "Waist", "Hip"],
    ...Array.from({ length: 8 }, (_, i) => [`Ash ${String(i)}`, 130 + 2 * i, 100 + i, 140 + 3 * i]),
    ["Inches by mistake", 5.2, 4, 5.6],
  ];

  test("leaves out the one whose unit is wrong, and names it", () => {
    const chart = readChart(rows);
    const { map, far } = nearMap(chart, comparedColumns(chart), true);
    expect(far).toEqual(["Inches by mistake"]);
    expect(map.points.map(({ figure, place }) => chart.figures[place] === figure)).toEqual(
      Array.from({ length: 8 }, () => true),
    );
  });

  test("shows all when that is wanted, or when there are few", () => {
    const chart = readChart(rows);
    expect(nearMap(chart, comparedColumns(chart), false).far).toEqual([]);
    const few = readChart([rows[0] ?? [], ...rows.slice(-3)]);
    expect(nearMap(few, comparedColumns(few), true).far).toEqual([]);
  });
});
