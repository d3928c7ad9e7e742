import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { withPossibleOffers } from "../../addin/checking/possibleOffers.ts";

/** Choices for a date number in a column of mm. 46150 is 8 May 2026, 11689 is 1 January 1932. */
function choicesFor(serial: number): readonly (readonly [string, number])[] {
  const cells = [
    ["Figure", "Waist (mm)", "Hip (mm)"],
    ["Mira", serial, 80],
    ["Tola", 60, 82],
  ];
  const formats = cells.map((row) => row.map((cell) => (cell === serial ? "d-mmm" : "General")));
  const flag = checkChart(readChart(cells, { formats })).find(
    ({ kind }) => kind === "date instead of a reading",
  );
  expect(flag).toMatchObject({ figure: "Mira", measure: "Waist", corrections: [] });
  return (flag?.choices ?? []).map((choice) => {
    if (!("correction" in choice)) throw new Error("A unit is no reading.");
    const { label, correction } = choice;
    expect(correction).toMatchObject({ row: 1, column: 1 });
    return [label, correction.mm] as const;
  });
}

it("gives a date as the fraction of an inch that a tape has", () => {
  expect(choicesFor(46150)).toEqual([["5/8 in", 15.875]]);
});

it("gives nothing where no tape has such a fraction", () => {
  // 3 May 2026.
  expect(choicesFor(46145)).toEqual([]);
});

it("gives no fraction over one", () => {
  expect(choicesFor(11689)).toEqual([["1/32 in", 0.79375]]);
});

// Invented figures. 8 July 2026 is 46211; a waist of 7/8 in, 22 mm, is that of a figure of some three inches.
describe("an offer", () => {
  const offered = (rows: readonly (readonly (string | number | undefined)[])[]) => {
    const cells = [["Figure", "Height (in)", "Bust (in)", "Waist (in)"], ...rows];
    const formats = cells.map((row) => row.map((cell) => (cell === 46211 ? "d-mmm" : "General")));
    const chart = readChart(cells, { formats });
    const flag = withPossibleOffers(chart, checkChart(chart)).find(
      ({ kind }) => kind === "date instead of a reading",
    );
    return { labels: (flag?.choices ?? []).map(({ label }) => label), why: flag?.why };
  };

  it("is not made of what cannot be a waist of the figure, and that is said", () => {
    const { labels, why } = offered([
      ["Mira", 17, 7, 46211],
      ["Tola", 17, 7.5, 5.25],
      ["Una", 22, 9.5, 7.25],
    ]);
    expect(labels).toEqual([]);
    expect(why).toMatch(
      /8 July 2026.* 7\/8 in would be about 6 times too small for this figure, so it is not offered\.$/,
    );
  });

  it("is made of what can be one, and where nothing else is known of the figure", () => {
    const others = [
      ["Tola", 17, 7.5, 5.25],
      ["Una", 22, 9.5, 7.25],
    ];
    expect(offered([["Wee", 3, 1.25, 46211], ...others]).labels).toEqual(["7/8 in"]);
    expect(offered([["Nobody", undefined, undefined, 46211], ...others]).labels).toEqual(["7/8 in"]);
  });

  it("of a figure alone goes by the proportions of people", () => {
    expect(offered([["Mira", 17, 7, 46211]]).labels).toEqual([]);
    expect(offered([["Wee", 3, 1.25, 46211]]).labels).toEqual(["7/8 in"]);
  });
});
