import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apart } from "../../addin/similarity/pair.ts";
import { comparedColumns } from "../../addin/similarity/columns.ts";
import { groupCards } from "../../addin/similarity/cards.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { linkageMethods } from "../../addin/similarity/linkage.ts";
import { chartOf } from "./chartOf.ts";
import { anyShuffledChart, percentColumns } from "./shuffledChart.ts";

const missing = Number.NaN;
const headings = ["bustGirth", "waistGirth", "hipGirth"];
const tolerances = new Map(headings.map((key) => [key, { floorMm: 2, percent: 0 }]));

describe("groupCards", () => {
  const chart = chartOf(headings, {
    Wren: [100, 80, 110],
    Teal: [140, 100, 150],
    Lark: [101, 80, 111.5],
    Rook: [100, 85, 110],
    Owl: [101, missing, 111],
  });
  const columns = comparedColumns(chart, { tolerances });
  const cards = groupCards(chart, columns, sharedBodyGroups(chart, columns));

  it("names members, base figure, and the pair and measure that bind the group", () => {
    expect(cards[0]).toMatchObject({
      number: 1,
      figures: ["Lark", "Wren"],
      places: [2, 0],
      base: "Lark",
      binding: { figure: "Lark", other: "Wren", deltaMm: -1.5, ofTolerance: 0.75 },
    });
    expect(cards[0]?.binding?.column).toBe(chart.measures[2]);
  });

  it("names the nearest outsider and what keeps it out, against the member that differs most", () => {
    expect(cards[0]?.outsider).toMatchObject({
      figure: "Rook",
      keptOutBy: { figure: "Lark", other: "Rook", deltaMm: 5, ofTolerance: 2.5 },
    });
    expect(cards[0]?.outsider?.keptOutBy?.column.heading).toBe("waistGirth");
  });

  it("says who may belong if readings were not missing", () => {
    expect(cards[0]?.perhaps).toEqual(["Owl"]);
    expect(cards.filter(({ figures }) => figures.includes("Teal"))[0]?.perhaps).toEqual([]);
  });

  it("has no binding pair in a group of one, and no outsider where there is only one group", () => {
    const rook = cards.find(({ figures }) => figures.includes("Rook"));
    expect(rook).not.toHaveProperty("binding");
    const two = chartOf(headings, { A: [100, 80, 110], B: [100, 80, 110] });
    const same = comparedColumns(two);
    const [only, ...none] = groupCards(two, same, sharedBodyGroups(two, same));
    expect(none).toEqual([]);
    expect(only).toEqual({ number: 1, figures: ["A", "B"], places: [0, 1], base: "A", perhaps: [] });
  });

  it("says of an identical figure in another group that nothing keeps it out", () => {
    const two = chartOf(headings, { A: [100, 80, 110], B: [100, 80, 110] });
    const cardsOfTwo = groupCards(two, comparedColumns(two), Int32Array.of(1, 2));
    expect(cardsOfTwo[0]?.outsider).toEqual({ figure: "B", group: 2 });
  });
});

describe("group cards of any chart", () => {
  it("find the outsider and the binding pair that a search through all pairs finds", () => {
    fc.assert(
      fc.property(anyShuffledChart, fc.constantFrom(...linkageMethods), ({ chart }, method) => {
        const columns = percentColumns(chart);
        const groups = sharedBodyGroups(chart, columns, method);
        const numbers = Int32Array.from(groups, ({ group }) => group);
        const cards = groupCards(chart, columns, numbers);
        expect(cards.flatMap(({ figures }) => figures).sort()).toEqual([...chart.figures].sort());
        for (const { number, places, base, binding, outsider } of cards) {
          expect(base).toBe(groups[places[0]!]!.base);
          const within = places.flatMap((i) =>
            places.map((j) => (i === j ? 0 : apart(columns, i, j).distance)),
          );
          expect(binding?.ofTolerance ?? 0).toBe(Math.max(...within));
          const known = chart.figures
            .map((_, i) => i)
            .filter((i) => numbers[i] !== number)
            .map((i) => Math.max(...places.map((j) => apart(columns, j, i).distance)))
            .filter((worst) => !Number.isNaN(worst));
          expect(outsider === undefined).toBe(known.length === 0);
          if (outsider) expect(outsider.keptOutBy?.ofTolerance ?? 0).toBe(Math.min(...known));
        }
      }),
    );
  });

  it("are the same whatever the order of rows", () => {
    fc.assert(
      fc.property(anyShuffledChart, fc.constantFrom(...linkageMethods), ({ chart, shuffled }, method) => {
        const [one, other] = [chart, shuffled].map((each) => {
          const columns = percentColumns(each);
          return groupCards(each, columns, sharedBodyGroups(each, columns, method)).map(
            ({ places, binding, outsider, ...card }) => ({
              ...card,
              named: places.map((place) => each.figures[place]),
              binding: binding && { ...binding, column: binding.column.key },
              outsider: outsider && {
                ...outsider,
                keptOutBy: outsider.keptOutBy && {
                  ...outsider.keptOutBy,
                  column: outsider.keptOutBy.column.key,
                },
              },
            }),
          );
        });
        expect(other).toEqual(one);
      }),
    );
  });
});
