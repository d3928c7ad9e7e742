import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { isBlank } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { InputError } from "../../addin/measures/inputError.ts";

const column = (chart: Chart, key: string): number[] => {
  const found = chart.measures.find((measure) => measure.key === key);
  return [...(found?.mm ?? [])].map((mm) => Number(mm.toFixed(6)));
};
/** All but what was assumed of the units, which tests/chart/units.test.ts is about. */
const problemsOf = (chart: Chart) => chart.problems.filter(({ kind }) => kind !== "unit assumed");
const kinds = (chart: Chart): string[] => problemsOf(chart).map(({ kind }) => kind);
const messages = (chart: Chart): string => chart.problems.map(({ message }) => message).join("\n");

describe("readChart", () => {
  const chart = readChart([
    ["Figure", "Maker", "Bust (in)", "Waist [mm]", "Hip, cm", "Heel height", "Notes"],
    ["Ada", "Larkfield", "5 3/8", 80, 12.5, 0, "first casting"],
    ["Bea", "Larkfield", 5.5, "n/a", "13,65", 12, undefined],
    ["Cleo", "Tansy", undefined, 81.5, "5 in", "-", "5"],
  ]);

  it("reads each column in its unit, with NaN for what was not taken", () => {
    expect(chart.figures).toEqual(["Ada", "Bea", "Cleo"]);
    expect(chart.rows).toEqual([1, 2, 3]);
    expect(column(chart, "bustGirth")).toEqual([136.525, 139.7, NaN]);
    expect(column(chart, "waistGirth")).toEqual([80, NaN, 81.5]);
    expect(column(chart, "hipGirth")).toEqual([125, 136.5, 127]);
    expect(column(chart, "heelHeight")).toEqual([0, 12, NaN]);
    expect(chart.measures.map(({ heading, unit, position }) => [heading, unit, position])).toEqual([
      ["Bust", "in", 2],
      ["Waist", "mm", 3],
      ["Hip", "cm", 4],
      ["Heel height", "mm", 5],
    ]);
    expect(chart.measures[0]).toMatchObject({ kind: "girth", zone: "torso", measure: { id: "bustGirth" } });
  });

  it("keeps text columns as attributes", () => {
    expect(chart.attributes).toEqual([
      { heading: "Maker", values: ["Larkfield", "Larkfield", "Tansy"], position: 1 },
      { heading: "Notes", values: ["first casting", "", "5"], position: 6 },
    ]);
  });

  it("converts and reports a reading in another unit than its column", () => {
    expect(kinds(chart)).toEqual(["unit differs"]);
    expect(chart.problems[0]).toMatchObject({ row: 3, column: 4 });
    expect(messages(chart)).toContain("Cleo, Hip: “5 in” is given in inches, the column is in cm");
  });

  it("takes the chart’s unit where a heading has none", () => {
    const inches = readChart(
      [
        ["Figure", "Bust", "Waist (cm)"],
        ["Ada", 5, 8],
      ],
      { unit: "in" },
    );
    expect(column(inches, "bustGirth")).toEqual([127]);
    expect(column(inches, "waistGirth")).toEqual([80]);
  });

  it("refuses what is not a reading, and names figure, measure and text", () => {
    const bad = readChart([
      ["Figure", "Bust"],
      ["Ada", 80],
      ["Bea", "8O"],
      ["Cleo", -3],
      ["Dot", true],
      ["Eve", { error: "#REF!" }],
      ["Fay", 46150],
    ]);
    expect(column(bad, "bustGirth")).toEqual([80, NaN, NaN, NaN, NaN, NaN]);
    expect(problemsOf(bad).map(({ kind, row, column }) => [kind, row, column])).toEqual([
      ["refused reading", 2, 1],
      ["refused reading", 3, 1],
      ["refused reading", 4, 1],
      ["error cell", 5, 1],
      ["date instead of a reading", 6, 1],
    ]);
    expect(messages(bad)).toContain("Bea, Bust: “8O”");
  });

  it("knows dates by their number format", () => {
    const dated = readChart(
      [
        ["Figure", "Bust (in)"],
        ["Ada", 46239],
      ],
      {
        formats: [
          ["", ""],
          ["", "d-mmm"],
        ],
      },
    );
    expect(dated.problems[0]).toMatchObject({ kind: "date instead of a reading", fractions: ["5/8"] });
    expect(messages(dated)).toContain("“5 August 2026”");
  });

  it("takes a 0 as not taken and says so once, for heel height as a flat foot", () => {
    const zeros = readChart([
      ["Figure", "Bust", "Heel height"],
      ["Ada", 0, 0],
      ["Bea", 0, 4],
      ["Cleo", 80, 0],
    ]);
    expect(column(zeros, "bustGirth")).toEqual([NaN, NaN, 80]);
    expect(column(zeros, "heelHeight")).toEqual([0, 4, 0]);
    expect(messages(zeros)).toContain(
      "Bust is 0 for 2 figures, which counts as not taken. Leave the cell empty, or type the reading.",
    );
  });

  it("keeps figures that appear twice, in any case and spacing, and reports them", () => {
    const twice = readChart([
      ["Figure", "Bust"],
      ["Ada  Lark", 80],
      ["Bea", 81],
      ["ada lark", 82],
    ]);
    expect(twice.figures).toEqual(["Ada  Lark", "Bea", "ada lark"]);
    expect(column(twice, "bustGirth")).toEqual([80, 81, 82]);
    expect(problemsOf(twice)).toEqual([expect.objectContaining({ kind: "figure twice", row: 3, column: 0 })]);
  });

  it("lets the first of two columns of one measure count, and keeps the second under a key of its own", () => {
    const twice = readChart([
      ["Figure", "Bust", "Chest (in)", "BUST"],
      ["Ada", 80, 3, 81],
    ]);
    expect(twice.measures.map(({ key, measure }) => [key, measure?.id])).toEqual([
      ["bustGirth", "bustGirth"],
      ["chest", undefined],
      ["bust", undefined],
    ]);
    expect(column(twice, "chest")).toEqual([76.2]);
    expect(kinds(twice)).toEqual(["measure twice", "measure twice"]);
    expect(messages(twice)).toContain("“Chest” and “Bust” are the same measure (Bust girth). “Bust” counts");
    const unknown = readChart([
      ["Figure", "Tail", "tail"],
      ["Ada", 80, 81],
    ]);
    expect(unknown.measures.map(({ key }) => key)).toEqual(["tail", "tail 2"]);
  });

  it("does not ask to remove the other side of the body", () => {
    const sides = readChart([
      ["Figure", "Left thigh", "Right thigh"],
      ["Ada", 80, 81],
    ]);
    expect(sides.measures.map(({ key }) => key)).toEqual(["thighGirth", "right thigh"]);
    expect(kinds(sides)).toEqual(["measure twice"]);
    expect(messages(sides)).not.toContain("Remove");
  });

  it("keeps an unknown heading as a measure when its cells read as lengths, with near names", () => {
    const unknown = readChart([
      ["Figure", "Bust", "Wasit", "Tail"],
      ["Ada", 80, 60, "9 cm"],
      ["Bea", 81, 61, "?"],
    ]);
    expect(unknown.measures.map(({ key }) => key)).toEqual(["bustGirth", "wasit", "tail"]);
    expect(kinds(unknown)).toEqual(["unknown measure", "unknown measure"]);
    expect(messages(unknown)).toContain("Did you mean “Waist”?");
  });

  it("does not take years and prices for lengths, unless the heading says that it is one", () => {
    const years = readChart([
      ["Figure", "Bust", "Year", "Price"],
      ["Ada", 80, 2019, 45],
    ]);
    expect(years.attributes.map(({ heading, values }) => [heading, values])).toEqual([
      ["Year", ["2019"]],
      ["Price", ["45"]],
    ]);
    expect(
      readChart([
        ["Figure", "Size (mm)"],
        ["Ada", 80],
      ]).measures[0]?.key,
    ).toBe("size");
  });

  it("keeps a column of words as text even when its heading is the name of a measure", () => {
    const words = readChart([
      ["Figure", "Bust", "Head"],
      ["Ada", 80, "Rosalind"],
      ["Bea", 81, "Marigold"],
    ]);
    expect(words.attributes[0]).toMatchObject({ heading: "Head", values: ["Rosalind", "Marigold"] });
    expect(messages(words)).toContain("“Head” is the name of a measure, but the column holds words only");
  });

  it("reports rows without a name and columns without a heading, which merged cells leave", () => {
    const merged = readChart([
      ["Figure", "Bust (mm)", undefined, undefined, "Hip"],
      [undefined, "girth", "width", undefined, undefined],
      ["Ada", 80, 12, undefined, 90],
      [undefined, undefined, undefined, undefined, undefined],
      ["", 81, undefined, undefined, 91],
    ]);
    expect(merged.figures).toEqual(["Ada"]);
    expect(problemsOf(merged).map(({ kind, row, column }) => [kind, row, column])).toEqual([
      ["no figure name", 1, 0],
      ["no figure name", 4, 0],
      ["no heading", 0, 2],
    ]);
    expect(messages(merged)).toContain("merged with “Bust (mm)”");
  });

  it("takes a 0 for a size among sizes, and for an empty cell among names", () => {
    const sizes = readChart([
      ["Size", "Bust (in)"],
      [0, 31.125],
      [2, 33],
      [0, 0],
    ]);
    expect(sizes.figures).toEqual(["0", "2"]);
    expect(problemsOf(sizes)).toEqual([]);
    const names = readChart([
      ["Figure", "Bust"],
      ["Ada", 80],
      [0, 81],
    ]);
    expect(names.figures).toEqual(["Ada"]);
    expect(messages(names)).toContain("Row 3 of the chart has no figure name");
  });

  it("sees a second row of headings or units", () => {
    const units = readChart([
      ["Figure", "Bust", "Hip"],
      [undefined, "in", "in"],
      ["Ada", 5, 6],
    ]);
    expect(messages(units)).toContain("second row of headings (“in”, “in”)");
    expect(column(units, "bustGirth")).toEqual([127]);
  });

  it("keeps a column in feet as text and says so", () => {
    const feet = readChart([
      ["Figure", "Bust", "Height (ft)"],
      ["Ada", 80, 1],
    ]);
    expect(feet.attributes[0]).toMatchObject({ heading: "Height", values: ["1"] });
    expect(kinds(feet)).toEqual(["unit differs"]);
  });

  it("reports error cells among headings and names", () => {
    const errors = readChart([
      ["Figure", "Bust", { error: "#NAME?" }],
      ["Ada", 80, 1],
      [{ error: "#N/A" }, 81, 2],
    ]);
    expect(errors.figures).toEqual(["Ada"]);
    expect(kinds(errors)).toEqual(["error cell", "error cell"]);
  });

  it("reads ragged rows, one figure, one measure, and numbers as names", () => {
    const ragged = readChart([["Figure", "Bust", "Hip"], ["Ada", 80], [101], ["Bea", 81, 90, "beyond"]]);
    expect(ragged.figures).toEqual(["Ada", "101", "Bea"]);
    expect(column(ragged, "hipGirth")).toEqual([NaN, NaN, 90]);
    expect(kinds(ragged)).toEqual(["no heading"]);
    expect(
      column(
        readChart([
          ["Figure", "Bust"],
          ["Ada", 80],
        ]),
        "bustGirth",
      ),
    ).toEqual([80]);
  });

  it.each<[string, Cells, string]>([
    ["no rows", [], "The chart is empty"],
    [
      "blank cells",
      [
        [undefined, " "],
        ["", undefined],
      ],
      "The chart is empty",
    ],
    ["one cell", [["Bust"]], "1 row and 1 column"],
    ["headings only", [["Figure", "Bust"]], "1 row and 2 columns"],
    ["names only", [["Figure"], ["Ada"]], "2 rows and 1 column"],
    [
      "headings above empty rows",
      [
        ["Figure", "Bust"],
        [undefined, undefined],
      ],
      "headings but no figures",
    ],
    [
      "no headings",
      [
        ["Ada", 80, "5 3/8"],
        ["Bea", 81, 5],
      ],
      "it holds “80”, “5 3/8”",
    ],
    [
      "an empty row of headings",
      [
        ["Figure", undefined],
        ["Ada", 80],
      ],
      "must hold the headings",
    ],
    [
      "text only",
      [
        ["Figure", "Notes"],
        ["Ada", "hello"],
      ],
      "No column of the chart holds readings (headings: “Notes”)",
    ],
  ])("refuses %s", (_, cells, message) => {
    expect(() => readChart(cells)).toThrow(InputError);
    expect(() => readChart(cells)).toThrow(message);
  });

  it("reads 5,000 figures of 20 measures, and more rows than a call can have arguments", () => {
    const headings = ["Figure", ...Array.from({ length: 20 }, (_, j) => `Measure ${String(j)} (mm)`)];
    const figures = Array.from({ length: 5000 }, (_, i): Cell[] => [
      `Figure ${String(i)}`,
      ...Array.from({ length: 20 }, (_, j) => 50 + ((i * 7 + j) % 40)),
    ]);
    const large = readChart([headings, ...figures]);
    expect(large.figures.length).toBe(5000);
    expect(large.measures.map(({ mm }) => mm[4999])).toEqual(figures[4999]?.slice(1));
    const long = readChart([
      ["Figure", "Bust"],
      ...Array.from({ length: 130_000 }, (_, i): Cell[] => [`F${String(i)}`, 80]),
    ]);
    expect(long.measures[0]?.mm.length).toBe(130_000);
  });

  it("loses nothing: every filled cell is a reading, an attribute or a problem", () => {
    const anyCell = fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom<Cell>(80, "5 3/8", 81.5, "9 cm", undefined, "n/a") },
      fc.constantFrom<Cell>("soft", -1, 46150, true, { error: "#N/A" }, "8-May", "5-6", 1e9, " "),
    );
    const anyHeading = fc.constantFrom<Cell>(
      "Bust",
      "Chest",
      "Waist (in)",
      "Tail",
      "Maker",
      undefined,
      "Height (m)",
      "Year",
    );
    const anyName = fc.constantFrom<Cell>("Ada", "ada", "Bea", undefined, { error: "#REF!" }, 7);
    const anyChart = fc
      .tuple(
        fc.array(anyHeading, { minLength: 1, maxLength: 6 }),
        fc.array(fc.tuple(anyName, fc.array(anyCell, { maxLength: 7 })), { maxLength: 6 }),
      )
      .map(([headings, rows]): Cells => [
        ["Figure", "Hip", ...headings],
        ...rows.map(([name, cells]) => [name, ...cells]),
      ]);
    fc.assert(
      fc.property(anyChart, (cells) => {
        const chart = readUnlessEmpty(cells);
        if (!chart) return;
        for (const [row, line] of cells.entries()) {
          for (const [position, cell] of line.entries()) {
            if (row > 0 && !isBlank(cell) && cell !== "n/a")
              expect(isAccountedFor(chart, row, position)).toBe(true);
          }
        }
        expect(new Set(chart.measures.map(({ key }) => key)).size).toBe(chart.measures.length);
      }),
      { numRuns: 500 },
    );
  });
});

function readUnlessEmpty(cells: Cells): Chart | undefined {
  try {
    return readChart(cells);
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return undefined;
  }
}

function isAccountedFor(chart: Chart, row: number, position: number): boolean {
  const figure = chart.rows.indexOf(row);
  const isReported = chart.problems.some(
    (problem) =>
      (problem.row === row && (problem.column === position || problem.column === 0)) ||
      (problem.row === 0 && problem.column === position),
  );
  const measure = chart.measures.find((column) => column.position === position);
  const attribute = chart.attributes.find((column) => column.position === position);
  return (
    isReported ||
    (position === 0 && figure >= 0) ||
    (measure !== undefined && Number.isFinite(measure.mm[figure])) ||
    (attribute !== undefined && attribute.values[figure] !== "")
  );
}
