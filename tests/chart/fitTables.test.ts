import { describe, expect, it } from "vitest";
import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import { easeRuleSchema, garmentClassSchema, patternSchema } from "../../addin/chart/fitSchemas.ts";
import { defaultGarmentClasses, garmentClassNamed } from "../../addin/chart/garmentClass.ts";
import { easeRuleCells, readEaseRules } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells, readGarmentClasses } from "../../addin/chart/readGarmentClasses.ts";
import { readPatterns, readPatternTable } from "../../addin/chart/readPatterns.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { chartWith, table, wisp } from "../fit/fitOf.ts";

const chart = chartWith({ Wisp: wisp, Thrush: { ...wisp, Bust: 190 } });

const patternsOf = (row: Readonly<Record<string, Cell>>): Cells =>
  table("Pattern", { G1: { "Garment class": "Dress" }, G2: { "Garment class": "Dress", ...row } });

describe("the patterns table", () => {
  it("reads every column, in any unit and order", () => {
    const [pattern] = readPatterns(
      [
        [
          "Title",
          "Code",
          "Finished bust (in)",
          "Class",
          "Drafted for",
          "Stretch %",
          "Thickness",
          "Worn over",
        ],
        ["Lake dress", "L1", "7 3/4", "frock", "wisp", "25%", 0.3, "L2"],
        ["Lake slip", "L2", "", "loose top", "", 0.25, "0.2 mm", ""],
      ],
      chart,
    );
    expect(pattern).toMatchObject({ code: "L1", title: "Lake dress", draftedFor: 0, stretch: 0.25 });
    expect(pattern?.garmentClass.name).toBe("Dress");
    expect(pattern?.finished.get("bustGirth")).toBeCloseTo(7.75 * 25.4, 9);
    expect(pattern?.wornOver).toEqual(["L2"]);
    expect(patternSchema.safeParse(pattern).success).toBe(true);
  });

  it("takes no measure of the body for one of the garment", () => {
    const [pattern] = readPatterns(
      [
        ["Pattern", "Garment class", "Bust (to fit)", "To fit waist (mm)", "Finished hip (mm)"],
        ["L1", "Dress", 181, 134, 206],
      ],
      chart,
    );
    expect([...(pattern?.finished ?? [])]).toEqual([["hipGirth", 206]]);
  });

  it.each([
    ["25%", undefined, 0.25],
    [25, undefined, 0.25],
    [0.25, undefined, 0.25],
    [0.25, "0%", 0.25],
    [1.5, "0%", 1.5],
    ["", undefined, 0],
  ])("takes a stretch of %s in format %s for %s", (cell, format, stretch) => {
    const cells: Cells = [
      ["Pattern", "Garment class", "Stretch"],
      ["G", "Dress", cell],
    ];
    const formats = format === undefined ? {} : { formats: [[], ["", "", format]] };
    expect(readPatterns(cells, chart, formats)[0]?.stretch).toBe(stretch);
  });

  it.each<[string, Readonly<Record<string, Cell>>, RegExp]>([
    [
      "an unknown garment class",
      { "Garment class": "Dresss" },
      /Row 3 of the patterns, Garment class: “Dresss” is not a garment class\. Did you mean “Dress”/,
    ],
    [
      "a class that is like no other",
      { "Garment class": "zzzzzz" },
      /Which is nearest: Close-fitting bodice, .* and \d+ more\? Write it, or add your own\./,
    ],
    [
      "a figure that is not in the chart",
      { "Drafted for": "Wsip" },
      /Row 3 of the patterns, Drafted for: The chart has no figure “Wsip”\. Did you mean “Wisp”/,
    ],
    ["an opening of 0", { "Neck opening": 0 }, /Row 3 of the patterns, Neck opening: “0” is not an opening/],
    ["a negative opening", { "Cuff opening": -3 }, /Row 3 of the patterns, Cuff opening: “-3” is negative/],
    [
      "a negative opening as text",
      { "Hem opening (in)": "-1/2" },
      /Row 3 of the patterns, Hem opening \(in\): .*negative/,
    ],
    ["a stretch of 300 %", { "Stretch %": "300%" }, /Row 3 of the patterns, Stretch %: “300%”.*300 %.*200 %/],
    ["a stretch that can be read in two ways", { "Stretch %": 2 }, /“2” can be 2 % or 200 %/],
    ["a negative stretch", { "Stretch %": -5 }, /“-5” is below zero/],
    [
      "an unknown kind of sleeve",
      { Sleeves: "puffed" },
      /Sleeves: “puffed” is not a kind of sleeve\. Write none, /,
    ],
    ["an unknown end", { "Ends at": "kne" }, /Ends at: “kne” is not a place .*Did you mean “knee”/],
    [
      "no sleeves with a cuff",
      { Sleeves: "sleeveless", "Cuff opening": 40 },
      /Sleeves: it says that there are no sleeves, but there is a cuff opening/,
    ],
    ["a stretch in words", { "Stretch %": "some" }, /“some” is not a percentage/],
    ["an error", { Bust: { error: "#REF!" } }, /Row 3 of the patterns, Bust: The cell shows the error #REF!/],
    [
      "a length without a place",
      { Opens: "", "Opening length": 30 },
      /Opening length: there is a length, but “Opens”/,
    ],
    [
      "a place without a length",
      { Opens: "back", "Opening length": "" },
      /the length of the opening is missing/,
    ],
    ["an unknown place", { Opens: "sleve", "Opening length": 9 }, /Opens: “sleve” is not a place/],
    [
      "an unknown under-layer",
      { "Worn over": "G3" },
      /Row 3 of the patterns, Worn over: “G3” is not the code of a pattern\. Did you mean “G1” or “G2”/,
    ],
    ["a garment over itself", { "Worn over": "G2" }, /round in a circle: “G2” over “G2”/],
  ])("names row and column of %s", (_, row, message) => {
    expect(() => readPatterns(patternsOf(row), chart)).toThrow(message);
    expect(() => readPatterns(patternsOf(row), chart)).toThrow(InputError);
    const read = readPatternTable(patternsOf(row), chart);
    expect(read.patterns.map(({ code }) => code)).toEqual(["G1"]);
    expect(read.problems).toMatchObject([{ row: 2, code: "G2" }]);
  });

  it("names every code of a circle of under-layers", () => {
    const cells = table("Pattern", {
      A: { "Garment class": "Coat", "Worn over": "B" },
      B: { "Garment class": "Jacket", "Worn over": "C" },
      C: { "Garment class": "Dress", "Worn over": "A" },
    });
    expect(() => readPatterns(cells, chart)).toThrow(
      /“A” over “B” over “C” over “A”.*There are 2 more to mend\./,
    );
  });

  it("refuses a code that is there twice, or missing", () => {
    const twice: Cells = [
      ["Pattern", "Garment class"],
      ["G", "Dress"],
      ["g ", "Coat"],
      ["", "Coat"],
    ];
    expect(readPatternTable(twice, chart).problems.map(({ message }) => message)).toEqual([
      "Row 3 of the patterns, Pattern: “g” is in row 2 too. Give each pattern a code of its own.",
      "Row 4 of the patterns, Pattern: the code is missing. Give the pattern a code.",
    ]);
  });

  it("asks for its headings", () => {
    expect(() => readPatterns([["Code", "Title"]], chart)).toThrow(/need the heading “Garment class”/);
  });
});

describe("the ease rules table", () => {
  it("comes back from its own cells, and fits its schema", () => {
    expect(readEaseRules(easeRuleCells())).toEqual(defaultEaseRules);
    for (const rule of defaultEaseRules) expect(easeRuleSchema.safeParse(rule).success).toBe(true);
  });

  it("names a known class and measure in every default rule, with its source", () => {
    const classes = defaultGarmentClasses.map(({ name }) => name);
    for (const { garmentClass, measure, source } of defaultEaseRules) {
      expect(classes).toContain(garmentClass);
      expect(measureById(measure)).toBeDefined();
      expect(source).toMatch(/^The project’s own: .{10}/);
    }
    expect(new Set(defaultEaseRules.map(({ garmentClass }) => garmentClass))).toEqual(new Set(classes));
  });

  it("replaces the rules of the classes that it names, and keeps those of the others", () => {
    const own: Cells = [
      ["Garment class", "Measure", "Least %", "Most %", "Most (in)"],
      ["Shoe", "Foot length", 1, 4, "1/16"],
    ];
    const rules = readEaseRules(own);
    expect(rules.filter(({ garmentClass }) => garmentClass === "Shoe")).toEqual([
      {
        garmentClass: "Shoe",
        measure: "footLength",
        least: { percent: 1, mm: 0 },
        most: { percent: 4, mm: 1.5875 },
        required: true,
        source: "Your own table",
      },
    ]);
    expect(rules.filter(({ garmentClass }) => garmentClass === "Dress")).toEqual(
      defaultEaseRules.filter(({ garmentClass }) => garmentClass === "Dress"),
    );
  });

  it.each<[string, readonly Cell[], RegExp]>([
    [
      "least above most",
      ["Dress", "Bust", 8, 4, ""],
      /Row 2 of the ease rules, Least %: the least ease \(8 % \+ 0 mm\) is above the most ease \(4 % \+ 0 mm\)/,
    ],
    ["an unknown class", ["Dres", "Bust", 1, 2, ""], /Row 2 of the ease rules, Garment class: “Dres”/],
    ["an unknown measure", ["Dress", "Wasit", 1, 2, ""], /Measure: “Wasit”.*Did you mean “Waist”/],
    ["a share for a percentage", ["Dress", "Bust", 0.04, 2, ""], /“0.04” can be 0.04 % or 4 %/],
    ["an answer that is neither yes nor no", ["Dress", "Bust", 1, 2, "perhaps"], /“perhaps” is neither yes/],
  ])("names row and column of %s", (_, row, message) => {
    const cells: Cells = [["Garment class", "Measure", "Least %", "Most %", "Required"], row];
    expect(() => readEaseRules(cells)).toThrow(message);
  });
});

describe("the garment classes table", () => {
  it("comes back from its own cells, and fits its schema", () => {
    expect(readGarmentClasses(garmentClassCells())).toEqual(defaultGarmentClasses);
    for (const each of defaultGarmentClasses) expect(garmentClassSchema.safeParse(each).success).toBe(true);
  });

  it("means one class by every name", () => {
    const names = defaultGarmentClasses.flatMap(({ name, synonyms }) => [name, ...synonyms]);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  });

  it("knows everyday names", () => {
    const known = {
      ...{ stays: "Corset", kimono: "Wrapped robe", cloak: "Cape", hood: "Hood", knickers: "Briefs" },
      ...{ pinny: "Pinafore", legging: "Leggings", slippers: "Slipper", "ankle sock": "Ankle socks" },
      ...{ "Semi-fitted dress": "Straight dress", bermudas: "Shorts" },
      ...{ overalls: "Jumpsuit", dungarees: "Jumpsuit", romper: "Jumpsuit", "boiler suit": "Jumpsuit" },
    };
    for (const [said, name] of Object.entries(known)) {
      expect(garmentClassNamed(said, defaultGarmentClasses, "Row 2").name).toBe(name);
    }
  });

  it("adds classes of one’s own", () => {
    const classes = readGarmentClasses([
      ["Garment class", "Worn on", "Openings"],
      ["Apron", "hips", ""],
    ]);
    expect(classes.at(-1)).toMatchObject({ name: "Apron", wornOn: "hips", openings: [], seamEdges: 4 });
    expect(() =>
      readGarmentClasses([
        ["Garment class", "Worn on"],
        ["Apron", "knee"],
      ]),
    ).toThrow(/Row 2 of the garment classes, Worn on: “knee” is a measure/);
  });
});
