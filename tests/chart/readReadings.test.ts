import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { readReadings } from "../../addin/chart/readReadings.ts";

const chart = readChart([
  ["Figure", "Bust (mm)", "Waist (in)", "Tail (mm)"],
  ["Ashby", 180, 5.25, 60],
  ["Corran", 190, undefined, 61],
]);

describe("the table Readings", () => {
  it("is read by any name of a figure and measure, in the unit that is nearest to the number", () => {
    const { readings, problems } = readReadings(
      [
        ["Figure", "Measure", "Reading", "Date", "By", "Tool"],
        ["ashby ", "Chest girth", 181, "2026-03-01", "Ida", "cloth tape"],
        // In the unit of its column, of the name, and of its own.
        ["Ashby", "Waist", "5 3/8", 46082, "", ""],
        ["Ashby", "Waist (mm)", 134],
        ["Corran", "tail", "6.2 cm"],
        ["Corran", "Tail", "?"],
        [undefined, undefined, undefined],
      ],
      chart,
    );
    expect(problems).toEqual([]);
    expect(readings.map(({ figure, column, mm, row }) => [row, figure, column.heading, mm])).toEqual([
      [1, 0, "Bust", 181],
      [2, 0, "Waist", 5.375 * 25.4],
      [3, 0, "Waist", 134],
      [4, 1, "Tail", 62],
    ]);
    expect(readings[0]).toMatchObject({ date: "2026-03-01", by: "Ida", tool: "cloth tape" });
    // A spreadsheet’s number of a day: LibreOffice 7.4 shows 46082 as 2026-03-01.
    expect(readings[1]).toMatchObject({ date: "2026-03-01", by: "" });
  });

  it("goes by the unit of its heading where the measure names none", () => {
    const { readings } = readReadings(
      [
        ["Measure", "Figure", "Reading (cm)"],
        ["Waist", "Ashby", 13.4],
      ],
      chart,
    );
    expect(readings[0]?.mm).toBeCloseTo(134, 9);
  });

  it("tells every row that it cannot use, and why", () => {
    const { readings, problems } = readReadings(
      [
        ["Figure", "Measure", "Reading (mm)"],
        ["Ashbi", "Bust", 180],
        ["Ashby", "Ankle", 30],
        ["Ashby", "", 30],
        ["", "Bust", 180],
        ["Ashby", "Bust", "84/88"],
        ["Ashby", "Bust", "~ 180"],
        ["Ashby", "Bust", 0],
      ],
      chart,
    );
    expect(readings).toEqual([]);
    expect(problems.map(({ row }) => row)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(problems[0]?.message).toMatch(/^Row 2 of the readings: The chart has no figure “Ashbi”\..*Ashby/);
    expect(problems[1]?.message).toMatch(/no column for “Ankle”/);
    expect(problems[5]?.message).toMatch(/“~ 180” was not read off a tape/);
  });

  it("asks for the headings that it needs", () => {
    expect(() => readReadings([["Figure", "Measure"]], chart)).toThrow(
      /The readings need the heading “Reading”/,
    );
  });
});
