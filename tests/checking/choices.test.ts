import { expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";

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
