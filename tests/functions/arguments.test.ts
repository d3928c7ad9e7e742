import { describe, expect, expectTypeOf, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { Numbers, Parameter } from "../../functions/arguments.ts";
import {
  aboveZero,
  amount,
  chart,
  choice,
  count,
  length,
  lengths,
  names,
  numbers,
  optionalReading,
  optionalUnit,
  reading,
  readingOrDifference,
  requiredAmount,
  stretch,
  text,
  toCell,
  toCells,
  tolerances,
  unit,
} from "../../functions/arguments.ts";
import type { Choices } from "../../functions/choices.ts";
import { defineFunction } from "../../functions/descriptor.ts";
import { exampleChart } from "../../functions/exampleChart.ts";

/** What hosts pass where nothing was given. */
const nothing = [
  null,
  undefined,
  "",
  "  ",
  [[null]],
  [[""]],
  [[undefined]],
  [],
  [[]],
  { type: "Empty", basicValue: "" },
];

function offered<const T extends string>(...words: readonly T[]): Choices<T> {
  return { id: "WORDS", values: words.map((word) => ({ word, says: "" })) };
}

describe("toCells", () => {
  it.each([
    [5, [[5]]],
    ["Linnet", [["Linnet"]]],
    [true, [[true]]],
    [[[5]], [[5]]],
    [null, [[undefined]]],
    [undefined, [[undefined]]],
    ["", [[undefined]]],
    [[], [[undefined]]],
    [[[]], [[undefined]]],
    [
      [[1, 2], [3]],
      [
        [1, 2],
        [3, undefined],
      ],
    ],
    [
      [1, 2],
      [[1], [2]],
    ],
    [[[null, 0, ""]], [[undefined, 0, undefined]]],
  ])("%j → %j", (raw, cells) => {
    expect(toCells(raw)).toEqual(cells);
  });

  it.each([
    [{ error: "#N/A" }, { error: "#N/A" }],
    [{ type: "Error", basicValue: "#DIV/0!", errorType: "Div0" }, { error: "#DIV/0!" }],
    [{ type: "Error", basicValue: "" }, { error: "#VALUE!" }],
    [{ type: "FormattedNumber", basicValue: 135.5, numberFormat: "0.0" }, 135.5],
    [{ type: "String", basicValue: "Linnet" }, "Linnet"],
    [{ type: "Empty", basicValue: "" }, undefined],
    [{ text: "an entity without a plain value" }, { error: "#VALUE!" }],
    [Number.NaN, { error: "#NUM!" }],
    [Number.POSITIVE_INFINITY, { error: "#NUM!" }],
    [[[1]], { error: "#VALUE!" }],
    [() => 1, undefined],
  ])("reads the cell %j", (raw, cell) => {
    expect(toCell(raw)).toEqual(cell);
  });

  it("takes a whole worksheet column without a stack overflow", () => {
    const column = Array.from({ length: 300_000 }, () => [null]);
    expect(toCells(column)).toHaveLength(300_000);
  });
});

describe("length", () => {
  const parameter = length("");

  it.each([
    [135.5, 135.5],
    [[[135.5]], 135.5],
    ["135.5", 135.5],
    ["135,5", 135.5],
    ["5 3/8", 5.375],
    ["5⅜", 5.375],
    [{ type: "FormattedNumber", basicValue: 135.5 }, 135.5],
  ])("reads %j as %d", (raw, value) => {
    expect(parameter.isBlank(raw)).toBe(false);
    expect(parameter.read(raw, "girth")).toBe(value);
  });

  it.each([...nothing, 0, [[0]], "-", "n/a", "?"])("takes %j as blank", (raw) => {
    expect(parameter.isBlank(raw)).toBe(true);
  });

  it.each([
    ["wig", "girth: “wig” is not a length"],
    [true, "girth: “TRUE” is not a number"],
    [-3, "girth: “-3” is below zero"],
    ["-3", "girth: “-3” is below zero"],
    ["5 in", "girth: “5 in” names its unit"],
    ['5 3/8"', 'girth: “5 3/8"” names its unit'],
    ["13 mm", "Turn it into a number with LENGTH first."],
    [{ error: "#N/A" }, "girth: the cell holds the error #N/A"],
    [{ type: "Error", basicValue: "#REF!" }, "#REF!"],
    [[[1, 2, 3]], "girth takes one cell, but was given 1 row by 3 columns"],
    [[[1], [2]], "girth takes one cell, but was given 2 rows by 1 column"],
  ])("refuses %j and says so", (raw, message) => {
    expect(parameter.isBlank(raw)).toBe(false);
    expect(() => parameter.read(raw, "girth")).toThrow(InputError);
    expect(() => parameter.read(raw, "girth")).toThrow(message);
  });
});

describe("amounts and counts", () => {
  it.each([...nothing, 0])("an omitted amount (%j) is its default", (raw) => {
    expect(amount("", 1).read(raw, "layers")).toBe(1);
    expect(count("", 5).read(raw, "count")).toBe(5);
    expect(stretch("").read(raw, "stretch")).toBe(0);
    expect(aboveZero("", 2).read(raw, "reach")).toBe(2);
  });

  it("an amount may be broken; 0 may be an empty cell, so that nothing is written “none”", () => {
    expect(amount("", 1).read("1/2", "layers")).toBe(0.5);
    for (const zero of [0, "0"]) expect(amount("", 1).read(zero, "layers")).toBe(1);
    for (const none of ["none", " None ", [["NONE"]]]) expect(amount("", 1).read(none, "layers")).toBe(0);
    expect(amount("Layers.", 1).help).toBe("Layers. Write none for 0.");
    expect(amount("Thickness.", 0).help).toBe("Thickness.");
  });

  it.each([...nothing, 0])("a needed amount may be nothing (%j)", (raw) => {
    expect(requiredAmount("").isBlank(raw)).toBe(false);
    expect(requiredAmount("").read(raw, "thickness")).toBe(0);
  });

  it("a needed amount that is not known gives a blank", () => {
    expect(requiredAmount("").isBlank("n/a")).toBe(true);
    expect(requiredAmount("").isBlank("-")).toBe(true);
  });

  it("a count is a whole number, and an empty cell that arrives as 0 is its default", () => {
    expect(count("", 5).read(3, "count")).toBe(3);
    expect(count("", 5).read(0, "count")).toBe(5);
    for (const bad of [-1, 2.5, "2.5"]) {
      expect(() => count("", 5).read(bad, "count")).toThrow(`count: “${String(bad)}” is not a whole number`);
    }
  });

  it.each([
    [0.25, 0.25],
    ["25%", 0.25],
    ["12,5 %", 0.125],
    [2, 2],
  ])("a stretch of %j is %d", (raw, share) => {
    expect(stretch("").read(raw, "stretch")).toBe(share);
  });

  it.each([25, "25", "300%", -0.1, "soft"])("refuses a stretch of %j", (raw) => {
    expect(() => stretch("").read(raw, "stretch")).toThrow(`stretch: “${String(raw)}”`);
  });
});

describe("text", () => {
  it.each([
    ["Linnet", "Linnet"],
    [" Linnet ", "Linnet"],
    [101, "101"],
    [[["Linnet"]], "Linnet"],
  ])("reads %j as %j", (raw, name) => {
    expect(text("").read(raw, "figure")).toBe(name);
  });

  it.each(nothing)("takes %j as blank", (raw) => {
    expect(text("").isBlank(raw)).toBe(true);
  });

  it("refuses an error", () => {
    expect(() => text("").read({ error: "#REF!" }, "figure")).toThrow(
      "figure: the cell holds the error #REF!",
    );
  });
});

describe("choice", () => {
  const parameter = choice("", offered("complete", "average", "single"), "complete");

  it.each([...nothing, 0])("an omitted one (%j) is its default", (raw) => {
    expect(parameter.read(raw, "method")).toBe("complete");
  });

  it("takes any case", () => {
    expect(parameter.read(" Average ", "method")).toBe("average");
  });

  it("lists the words, and offers a near one", () => {
    expect(() => parameter.read("averge", "method")).toThrow(
      "method: “averge” is not known here. Write complete, average or single. Did you mean “average”?",
    );
    expect(() => parameter.read("fewest", "method")).toThrow(/single\.$/);
  });
});

describe("unit", () => {
  it.each([
    ["mm", "mm"],
    ["CM", "cm"],
    ["inches", "in"],
    ['"', "in"],
  ])("reads %j as %s", (raw, value) => {
    expect(unit("", "mm").read(raw, "to_unit")).toBe(value);
  });

  it.each([...nothing, 0])("an omitted one (%j) is its default, or nothing", (raw) => {
    expect(unit("", "mm").read(raw, "to_unit")).toBe("mm");
    expect(optionalUnit("", "").read(raw, "from_unit")).toBeUndefined();
  });

  it("refuses what is not mm, cm or in", () => {
    expect(() => unit("", "mm").read("yards", "to_unit")).toThrow("“yards” is not a unit of length");
  });
});

describe("reading", () => {
  it("keeps the unit that is written, and assumes one otherwise", () => {
    expect(reading("").read("5 in", "reading").mm("mm")).toBeCloseTo(127, 12);
    expect(reading("").read("5", "reading").mm("in")).toBeCloseTo(127, 12);
    expect(reading("").read(5, "reading").mm("cm")).toBe(50);
    expect(reading("").read("n/a", "reading").mm("cm")).toBeUndefined();
  });

  it("knows a fraction", () => {
    expect(reading("").read("5⅜", "reading").mm("mm", "in")).toBeCloseTo(136.525, 9);
    expect(reading("").read("5.25", "reading").mm("mm", "in")).toBe(5.25);
    expect(reading("").read(5.375, "reading").mm("mm", "in")).toBe(5.375);
  });

  it("quotes what is not a length", () => {
    expect(() => reading("").read("wig", "reading").mm("mm")).toThrow("“wig”");
    expect(() => reading("").read({ error: "#N/A" }, "reading").mm("mm")).toThrow("#N/A");
    expect(() => reading("").read(-5, "reading").mm("mm")).toThrow("“-5” is negative");
    expect(() => reading("").read(46150, "reading").mm("mm")).toThrow(
      "reading: “46150” (8 May 2026) is a date",
    );
  });

  it("may be a difference below zero where the function says so", () => {
    expect(readingOrDifference("").read(-5, "length").mm("cm")).toBe(-50);
    expect(readingOrDifference("").read("5 in", "length").mm("cm")).toBeCloseTo(127, 12);
    expect(readingOrDifference("").isBlank(0)).toBe(true);
  });

  it.each([...nothing, 0])("takes %j as blank or omitted", (raw) => {
    expect(reading("").isBlank(raw)).toBe(true);
    expect(optionalReading("", "").read(raw, "full_height")).toBeUndefined();
  });
});

describe("ranges of numbers", () => {
  it("keep their shape, with nothing where a cell is blank", () => {
    const raw = [
      [1, "2,5", null],
      ["", "n/a"],
      [0, "-1.5"],
    ];
    expect(numbers("").read(raw, "values")).toEqual([
      [1, 2.5, undefined],
      [undefined, undefined, undefined],
      [0, -1.5, undefined],
    ]);
  });

  it("of lengths take 0 as blank, and none below zero", () => {
    expect(lengths("").read([[0, 135]], "base")).toEqual([[undefined, 135]]);
    expect(() =>
      lengths("").read(
        [
          [1, 2],
          [3, -4],
        ],
        "base",
      ),
    ).toThrow("base, row 2, column 2: “-4” is below zero");
  });

  it("quote the text that is not a number, and say where it stands", () => {
    expect(() => lengths("").read([[1], ["wig"]], "base")).toThrow(
      "base, row 2, column 1: “wig” is not a length",
    );
    expect(() => lengths("").read("wig", "base")).toThrow("base: “wig” is not a length");
    expect(() => numbers("").read([[false]], "values")).toThrow("“FALSE” is not a number");
    expect(() => numbers("").read([[1, { error: "#DIV/0!" }]], "values")).toThrow(
      "values, row 1, column 2: the cell holds the error #DIV/0!",
    );
  });
});

describe("names", () => {
  it("come from a range, or from one text with commas", () => {
    expect(names("", "").read([["Bust", "Waist"], [null]], "measures")).toEqual(["Bust", "Waist"]);
    expect(names("", "").read("Bust, Waist; Hip,", "measures")).toEqual(["Bust", "Waist", "Hip"]);
  });

  it.each([...nothing, 0])("%j is none", (raw) => {
    expect(names("", "").read(raw, "measures")).toBeUndefined();
  });
});

describe("chart and tolerances", () => {
  it("reads a chart", () => {
    const figures = chart().read(exampleChart, "chart");
    expect(figures.figures).toEqual(["Linnet", "Dunnock", "Teal", "Siskin"]);
    expect(figures.measures.map(({ heading }) => heading)).toEqual(["Height", "Bust", "Waist", "Hip"]);
  });

  it("an omitted table of tolerances is none", () => {
    const figures = chart().read(exampleChart, "chart");
    for (const raw of [
      ...nothing,
      0,
      [
        [null, null],
        [0, ""],
      ],
    ]) {
      expect(tolerances().read(raw, "tolerances")(figures)).toBeUndefined();
    }
  });

  it("matches tolerances with the columns of the chart", () => {
    const figures = chart().read(exampleChart, "chart");
    const table = tolerances().read(
      [
        ["Measure", "Tolerance"],
        ["Bust", 3],
      ],
      "tolerances",
    )(figures);
    expect([...(table ?? [])]).toEqual([["bustGirth", { floorMm: 3, percent: 0 }]]);
  });
});

describe("defineFunction", () => {
  const add = defineFunction({
    name: "ADD",
    summary: "",
    parameters: { first: length(""), second: amount("", 10), all: names("", "") },
    result: "number",
    examples: [],
    failures: [],
    compute: ({ first, second, all }) => {
      expectTypeOf(first).toEqualTypeOf<number>();
      expectTypeOf(second).toEqualTypeOf<number>();
      expectTypeOf(all).toEqualTypeOf<readonly string[] | undefined>();
      return first + second;
    },
  });

  it("gives each argument by its name, read and checked", () => {
    expect(add.compute([1, 2])).toBe(3);
    expect(add.compute([1, null])).toBe(11);
    expect(add.parameters.map(({ name }) => name)).toEqual(["first", "second", "all"]);
    expect(() => add.compute([1, "much"])).toThrow(InputError);
  });

  it.each([[[]], [[null, 2]], [["", "x"]], [[0, 2]]])(
    "a blank needed argument gives a blank result (%j)",
    (raw) => {
      expect(add.compute(raw)).toBe("");
    },
  );

  it("a table is always a rectangle", () => {
    const table = defineFunction({
      name: "ONE",
      summary: "",
      parameters: { first: length("") },
      result: "table",
      examples: [],
      failures: [],
      compute: ({ first }) => first,
    });
    expect(table.compute([1])).toEqual([[1]]);
    expect(table.compute([null])).toEqual([[""]]);
  });

  it("infers the type of every kind of parameter", () => {
    expectTypeOf(length("")).toEqualTypeOf<Parameter<number>>();
    expectTypeOf(lengths("")).toEqualTypeOf<Parameter<Numbers>>();
    expectTypeOf(choice("", offered("a", "b"), "a")).toEqualTypeOf<Parameter<"a" | "b">>();
    expectTypeOf(unit("", "mm")).toEqualTypeOf<Parameter<LengthUnit>>();
    expectTypeOf(chart()).toEqualTypeOf<Parameter<Chart>>();
    expectTypeOf(tolerances()).toEqualTypeOf<Parameter<(chart: Chart) => ToleranceTable | undefined>>();
  });
});
