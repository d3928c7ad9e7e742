import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../addin/measures/inputError.ts";
import { descriptors } from "../../functions/all.ts";
import type { Result } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";

const chartFunctions = descriptors.filter(({ parameters }) => parameters[0]?.name === "chart");

function compute(name: string, ...raw: unknown[]): Result {
  const descriptor = descriptors.find((each) => each.name === name);
  if (!descriptor) throw new Error(`There is no ${name}.`);
  return descriptor.compute(raw);
}

/** A chart function with figures A and B where it names figures. */
function onChart(name: string, chart: unknown): Result {
  const needed = descriptors
    .find((each) => each.name === name)
    ?.parameters.filter(({ optional, name: parameter }) => !optional && parameter !== "chart");
  return compute(name, chart, ...(needed ?? []).map((_, i) => ["A", "B"][i]));
}

describe.each(chartFunctions)("$name", ({ name }) => {
  it.each([
    ["nothing", null],
    [
      "an empty range",
      [
        [null, ""],
        ["", null],
      ],
    ],
    ["a single cell", "Bust"],
    ["headings alone", [["Figure", "Bust", "Waist"]]],
    ["figures alone", [["Figure"], ["A"], ["B"]]],
    [
      "no readings",
      [
        ["Figure", "Maker"],
        ["A", "Hazel"],
        ["B", "Hazel"],
      ],
    ],
    [
      "numbers instead of headings",
      [
        ["A", 135, 100],
        ["B", 136, 101],
      ],
    ],
    ["an error", [[{ error: "#REF!" }]]],
  ])("says what is wrong with %s", (_, chart) => {
    expect(() => onChart(name, chart)).toThrow(InputError);
    expect(() => onChart(name, chart)).toThrow(/chart|headings/i);
  });

  it.each([
    [
      "text in a column of readings",
      [
        ["Figure", "Bust", "Waist", "Hip"],
        ["A", "wig", 100, 140],
        ["B", 136, 101, 142],
        ["C", 137, 102, 143],
      ],
    ],
    [
      "an error cell",
      [
        ["Figure", "Bust", "Waist", "Hip"],
        ["A", { error: "#N/A" }, 100, 140],
        ["B", 136, 101, 142],
      ],
    ],
    ["ragged rows", [["Figure", "Bust", "Waist", "Hip"], ["A", 135], ["B", 136, 101, 142], []]],
    [
      "a merged heading",
      [
        ["Figure", "Bust", null, "Hip"],
        ["A", 135, 100, 140],
        ["B", 136, 101, 142],
      ],
    ],
    [
      "a measure twice",
      [
        ["Figure", "Bust", "Chest", "Waist", "Hip"],
        ["A", 135, 134, 100, 140],
        ["B", 136, 136, 101, 142],
      ],
    ],
    [
      "a figure twice",
      [
        ["Figure", "Bust", "Waist", "Hip"],
        ["A", 135, 100, 140],
        ["B", 136, 101, 142],
        ["A", 1, 1, 1],
      ],
    ],
    [
      "one measure",
      [
        ["Figure", "Bust"],
        ["A", 135],
        ["B", 136],
      ],
    ],
  ])("answers %s with a table, a number or words", (_, chart) => {
    const outcome = outcomeOf(() => onChart(name, chart));
    if (outcome instanceof InputError) expect(outcome).toMatchObject({ kind: "absent" });
    else expectShowable(outcome);
  });
});

describe("one figure", () => {
  const chart = [
    ["Figure", "Bust", "Waist", "Hip"],
    ["A", 135, 100, 140],
  ];

  it("is a group of its own, with nothing to join and nothing near", () => {
    expect(compute("GROUPS", chart)).toEqual([
      ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
      ["A", 1, "A", "", 0],
    ]);
    expect(compute("TREE", chart)).toEqual([["Step", "One side", "Joins", "Times the limit", "Figures"]]);
    expect(compute("NEAREST", chart, "A")).toEqual([["Figure", "Distance", "Worst measure", "Compared"]]);
    expect(compute("STEPS", chart)).toEqual([["From", "To", "Bust", "Waist", "Hip", "Missing"]]);
    expect(compute("APART", chart, "A", "A")).toBe(0);
  });
});

describe("whole worksheet columns", () => {
  it("are read down to the last row that holds anything", () => {
    const blank = Array.from({ length: 200_000 }, () => [null, null, null, 0]);
    const chart = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["A", 135, 100, 140],
      ["B", 136, 101, 142],
      ...blank,
    ];
    expect(compute("STEPS", chart)).toHaveLength(2);
    expect(compute("GROUPS", chart)).toHaveLength(3);
    expect(compute("FLAGS", chart)).toHaveLength(1);
  });
});

describe("a date in the place of a reading", () => {
  it("is shown by its day, as the cell shows it, and not by the number that is kept", () => {
    const flags = compute("FLAGS", [
      ["Figure", "Bust (mm)"],
      ["A", 135],
      ["B", 46150],
    ]);
    // 46150 is 8 May 2026 in LibreOffice 7.4.7, see tests/reference/typedFractions.test.ts.
    expect(isTable(flags) && flags[1]?.slice(0, 4)).toEqual([
      ...["B", "Bust", "8 May 2026", "date instead of a reading"],
    ]);
  });
});

describe("missing readings", () => {
  const chart = [
    ["Figure", "Bust (in)", "Waist (mm)", "Hip"],
    ["A", "5 3/8", 100, null],
    ["B", 5.5, "n/a", 142],
    ["C", 5.5, 102, 143],
  ];

  it("leave blanks in COMPARE, each length in the unit of its column", () => {
    expect(
      compute("COMPARE", chart, "A", "B", [
        ["Measure", "Tolerance"],
        ["Bust", 0.25],
      ]),
    ).toEqual([
      ["Measure", "Base", "Target", "Delta", "Percent", "Of tolerance"],
      ["Bust (in)", 5.375, 5.5, 0.125, 2.3255813953, 0.5],
      ["Waist (mm)", 100, "", "", "", ""],
      ["Hip (mm)", "", 142, "", "", ""],
    ]);
  });

  it("are named by STEPS", () => {
    expect(compute("STEPS", chart)).toEqual([
      ["From", "To", "Bust", "Waist", "Hip", "Missing"],
      ["A", "B", 0.125, "", "", "Waist, Hip"],
      ["B", "C", 0, "", 1, "Waist"],
    ]);
  });

  it("make APART say which to take", () => {
    expect(() => compute("APART", chart, "A", "B")).toThrow(
      "The figures “A” and “B” cannot be compared yet: 1 of 3 measures are known of both; take “Waist”, “Hip” first.",
    );
  });

  it("put a figure last in NEAREST, with the reason", () => {
    expect(compute("NEAREST", chart, "B")).toEqual([
      ["Figure", "Distance", "Worst measure", "Compared"],
      ["A", "not known", "Waist missing, Hip missing", "1 of 3"],
      ["C", "not known", "Waist missing", "2 of 3"],
    ]);
  });

  it("keep figures apart in GROUPS and TREE", () => {
    expect(compute("GROUPS", chart)).toEqual([
      ["Figure", "Group", "Base figure", "Worst measure", "Of tolerance"],
      ["A", 1, "A", "Hip missing", ""],
      ["B", 2, "B", "Waist missing", ""],
      ["C", 3, "C", "", 0],
    ]);
    expect(compute("TREE", chart)).toHaveLength(1);
  });

  it("are no flag, even where a host passes them as 0", () => {
    const passed = chart.map((row) => row.map((value) => value ?? 0));
    expect(compute("FLAGS", passed)).toEqual(compute("FLAGS", chart));
  });
});

describe("choices and tolerances", () => {
  const chart = [
    ["Figure", "Bust", "Waist", "Hip", "Head"],
    ["A", 135, 100, 140, 90],
    ["B", 135, 100, 140, 120],
  ];

  it("a zone compares that part alone", () => {
    expect(compute("APART", chart, "A", "B")).toBe(0);
    const heads = compute("GROUPS", chart, null, "head");
    expect(isTable(heads) && heads.slice(1).map((row) => row[1])).toEqual([1, 2]);
    expect(() => compute("GROUPS", chart, null, "feet")).toThrow("The chart has no readings of the feet");
    expect(() => compute("GROUPS", chart, null, "heads")).toThrow("Did you mean “head”");
  });

  it("a method that is not offered is refused with those that are", () => {
    expect(() => compute("TREE", chart, null, null, "centroid")).toThrow(
      "method: “centroid” is not known here. Write complete, average, single or ward.",
    );
  });

  it("every method gives the one merge of two figures", () => {
    for (const method of ["complete", "average", "single"]) {
      expect(
        compute(
          "TREE",
          chart,
          [
            ["Measure", "Tolerance"],
            ["Head", 10],
          ],
          "head",
          method,
        ),
      ).toEqual([
        ["Step", "One side", "Joins", "Times the limit", "Figures"],
        [1, "A", "B", 3, 2],
      ]);
    }
  });

  it("a tolerance for a measure that nobody knows is #N/A, one that is no number #VALUE!", () => {
    const withTolerance = (measure: string, tolerance: unknown) => () =>
      compute("APART", chart, "A", "B", [
        ["Measure", "Tolerance"],
        [measure, tolerance],
      ]);
    expect(withTolerance("Bustt", 3)).toThrow(/“Bustt”.*Did you mean “Bust”/);
    expect(withTolerance("Bust", "soft")).toThrow(/“soft” is neither a length nor a percentage/);
  });
});

describe("any input", () => {
  const cell = fc.oneof(
    fc.constantFrom(null, undefined, "", 0, "n/a", "Bust", "A", true, "5 3/8", "wig", Number.NaN),
    fc.double({ noNaN: true, min: -500, max: 500 }),
    fc.constant({ type: "Error", basicValue: "#N/A" }),
    fc.string({ maxLength: 8 }),
  );
  const raw = fc.oneof(cell, fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 5 }));

  it.each(descriptors)("$name gives what a cell can show, or words", ({ compute: run, parameters }) => {
    const call = fc.array(raw, { maxLength: parameters.length });
    fc.assert(
      fc.property(call, (args) => {
        const outcome = outcomeOf(() => run(args));
        if (outcome instanceof InputError) expect(outcome.message).toMatch(/\S/);
        else expectShowable(outcome);
      }),
      { numRuns: 150 },
    );
  });
});

function outcomeOf(run: () => Result): Result | InputError {
  try {
    return run();
  } catch (thrown) {
    if (thrown instanceof InputError) return thrown;
    throw thrown;
  }
}

/** Never null, never a number that is none; tables are rectangles with a first row. */
function expectShowable(result: Result): void {
  const rows = isTable(result) ? result : [[result]];
  expect(rows.length).toBeGreaterThan(0);
  for (const row of rows) {
    expect(row.length).toBe(rows[0]?.length);
    for (const value of row) {
      expect(["number", "string", "boolean"]).toContain(typeof value);
      if (typeof value === "number") expect(value).toSatisfy(Number.isFinite);
    }
  }
}
