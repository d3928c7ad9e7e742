import { describe, expect, it } from "vitest";
import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { matchColumns } from "../../addin/chart/import/columns.ts";
import { layOut } from "../../addin/chart/import/source.ts";
import { textReader } from "../../addin/chart/import/texts.ts";
import { measureColumn } from "../../addin/chart/find.ts";
import { readChart, requireUnits } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { flagsFunction } from "../../functions/flags.ts";
import { groupsFunction } from "../../functions/groups.ts";
import { lengthFunction } from "../../functions/length.ts";

/** Figures down, one column a measure. */
function chartOf(columns: Readonly<Record<string, readonly Cell[]>>): Cells {
  const height = Math.max(...Object.values(columns).map((cells) => cells.length));
  return [
    ["Figure", ...Object.keys(columns)],
    ...Array.from({ length: height }, (_, i) => [
      `F${String(i)}`,
      ...Object.values(columns).map((cells) => cells[i]),
    ]),
  ];
}

/** The unit of each column, as a chart and as an import see it; they have to agree. “?” where it has to be asked. */
function units(cells: Cells): readonly string[] {
  const chart = readChart(cells);
  const asked = new Set(
    chart.problems.flatMap(({ kind, unstated }) =>
      kind === "unit not known" ? (unstated?.columns ?? []) : [],
    ),
  );
  const imported = matchColumns(
    layOut({ rows: cells, numbers: cells.map((_, i) => i + 1), texts: textReader() }, 0),
    {
      decimalMark: undefined,
    },
  );
  return chart.measures.map(({ position, unit }) => {
    const column = imported[position];
    expect(`${String(position)} ${column?.unit ?? ""}`).toBe(`${String(position)} ${unit}`);
    expect(column?.unitFrom === "guess").toBe(asked.has(position));
    return asked.has(position) ? `${unit}?` : unit;
  });
}

describe("columns whose heading states no unit", () => {
  it.each<[string, Readonly<Record<string, readonly Cell[]>>, readonly string[]]>([
    [
      "fractions are inches, and so are the plain numbers beside them",
      { Bust: ["5 3/8", 5, 5.25, "5½"] },
      ["in"],
    ],
    ["one fraction among numbers of its size", { Bust: ["5 3/8", 5, 5.25, 5.5, 6, 6] }, ["in"]],
    ["a fraction among millimetres", { Bust: [135, 136, 140, 138, "5 3/8", 131] }, ["mm"]],
    ["fractions in a third of a column of millimetres", { Bust: [135, 136, "5 3/8", "5 1/2"] }, ["mm"]],
    [
      "a column of whole inches beside one with fractions",
      { Bust: ["5 3/8", "5 1/2"], Waist: [4, 4] },
      ["in", "in"],
    ],
    ["centimetres as the other columns", { "Bust (cm)": [13.6, 14], Waist: [10.2, 10.4] }, ["cm", "cm"]],
    [
      "a head in inches among millimetres",
      { "Head (in)": [6.5, 7], Bust: [180, 182], Waist: [134, 135] },
      ["in", "mm", "mm"],
    ],
    ["texts with their unit", { Bust: ["13.6 cm", "14 cm"] }, ["cm"]],
    ["millimetres", { Bust: [136, 140], Waist: [100, 104] }, ["mm", "mm"]],
    ["full size in millimetres", { Bust: [880, 920], Height: [1650, 1700] }, ["mm", "mm"]],
    ["a tiny doll-house figure in millimetres", { Bust: [72, 70], Height: [140, 150] }, ["mm", "mm"]],
    ["decimal inches", { Bust: [5.375, 5.5], Waist: [4.25, 4.125] }, ["in?", "in?"]],
    ["centimetres", { Bust: [13.6, 14], Waist: [10.2, 10.7] }, ["cm?", "cm?"]],
    ["full size in inches", { Bust: [34, 36], Height: [64, 66] }, ["cm?", "cm?"]],
    [
      "one column in another unit than the rest",
      { Bust: [136, 140], Waist: [100, 104], "Foot length": [1.6, 1.7] },
      ["mm", "mm", "cm?"],
    ],
    ["a measure that nobody knows", { "Wing span": [5, 6] }, ["mm"]],
  ])("%s", (_, columns, expected) => {
    expect(units(chartOf(columns))).toEqual(expected);
  });

  it("a row of units below the headings counts as the headings’", () => {
    const chart = readChart([
      ["Figure", "Bust", "Waist"],
      [undefined, "in", "cm"],
      ["F", 5, 10],
    ]);
    expect(chart.measures.map(({ unit, mm }) => [unit, mm[0]])).toEqual([
      ["in", 127],
      ["cm", 100],
    ]);
  });

  it("under a heading in mm or cm a fraction of an inch tape is refused, halves and quarters are read", () => {
    const chart = readChart(
      chartOf({ "Bust (mm)": ["5 3/8", "135 1/2"], "Waist (cm)": ["10 1/4", "10 3/16"] }),
    );
    expect(chart.measures.map(({ mm }) => [...mm])).toEqual([
      [NaN, 135.5],
      [102.5, NaN],
    ]);
    expect(chart.problems.map(({ message }) => message).join(" ")).toContain(
      "a fraction as inch tapes have them, in a place for mm",
    );
  });

  it("what was assumed is said once for all columns alike, and last", () => {
    const flags = checkChart(
      readChart(chartOf({ Bust: [136, 140], Waist: [100, 104], "Hip (mm)": [140, 141] })),
    );
    expect(flags).toMatchObject([
      {
        kind: "unit assumed",
        measure: "Bust, Waist",
        why: "Bust, Waist state no unit; they are taken to be in mm. Write the unit into the headings, such as Bust (mm).",
      },
    ]);
    expect(flags[0]?.choices).toEqual([
      {
        label: "millimetres",
        headings: [
          { column: 1, heading: "Bust (mm)" },
          { column: 2, heading: "Waist (mm)" },
        ],
      },
      {
        label: "centimetres",
        headings: [
          { column: 1, heading: "Bust (cm)" },
          { column: 2, heading: "Waist (cm)" },
        ],
      },
      {
        label: "inches",
        headings: [
          { column: 1, heading: "Bust (in)" },
          { column: 2, heading: "Waist (in)" },
        ],
      },
    ]);
  });

  it("a column that is asked about has no readings, and comes first", () => {
    const chart = readChart(chartOf({ Bust: [136, 140], "Foot length": [1.6, 1.7] }));
    expect([...(chart.measures[1]?.mm ?? [])]).toEqual([NaN, NaN]);
    expect(() => measureColumn(chart, "Foot length")).toThrow("Foot length states no unit");
    expect(checkChart(chart)[0]).toMatchObject({ kind: "unit not known", measure: "Foot length", column: 2 });
  });

  it("where nothing can be read, it is said what to do", () => {
    expect(() => requireUnits(readChart(chartOf({ Bust: [5.375, 5.5] })))).toThrow(
      new InputError(
        "Bust states no unit, and taken to be in mm the figures would be too small or too large. Write the unit into the heading, such as Bust (in).",
      ),
    );
  });
});

describe("GROUPS, FLAGS, LENGTH and Import on the same writings", () => {
  const bust = ["5 3/8", "5⅜", '5-3/8"', "5.375", 5.375, "136.525 mm", "13,6525 cm"];
  const cells = chartOf({ Bust: bust, Waist: bust.map(() => "4 1/4"), Hip: bust.map(() => 5.5) });

  it("take them for the same lengths", () => {
    const chart = readChart(cells);
    for (const mm of chart.measures[0]?.mm ?? []) expect(mm).toBeCloseTo(136.525, 6);
    expect(
      bust
        .slice(0, 3)
        .concat(bust.slice(5))
        .map((text) => lengthFunction.compute([text, "mm", null])),
    ).toEqual([136.525, 136.525, 136.525, 136.525, 136.525]);
    expect(units(cells)).toEqual(["in", "in", "in"]);
    // One body, whatever the writing.
    const groups = groupsFunction.compute([cells, null, null, null]);
    expect(Array.isArray(groups) && groups.slice(1).map((row) => row[1])).toEqual(bust.map(() => 1));
    const flags = flagsFunction.compute([cells]);
    expect(Array.isArray(flags) && flags.slice(1).map((row) => [row[1], row[3]])).toEqual([
      ["Bust, Waist", "unit assumed"],
      ["Hip", "unit assumed"],
    ]);
  });

  it("and none of them takes decimal inches for millimetres in silence", () => {
    const decimals = chartOf({ Bust: [5.375, 5.5], Waist: [4.25, 4.5] });
    expect(() => groupsFunction.compute([decimals, null, null, null])).toThrow("state no unit");
    const flags = flagsFunction.compute([decimals]);
    expect(Array.isArray(flags) && flags.slice(1).map((row) => row[3])).toEqual(["unit not known"]);
    expect(units(decimals)).toEqual(["in?", "in?"]);
  });
});
