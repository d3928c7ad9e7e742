import { describe, expect, it } from "vitest";
import { couldBeRead, inputs, savedInput } from "../../../addin/workbook/excel/cellInput.ts";
import { inGroups } from "../../../addin/workbook/excel/requests.ts";

describe("text that Excel could read as something else", () => {
  it.each([
    "=A1",
    "+x",
    "-x",
    "@x",
    "#N/A",
    "'x",
    "5/8",
    "5 3/8",
    "Mai 12",
    "１２",
    "50%",
    "TRUE",
    "false",
    "1,5",
  ])("“%s” could", (text) => {
    expect(couldBeRead(text)).toBe(true);
  });
  it.each(["", "Ada", "n/a", "?", "Bust (in)", "a=b", "truely"])("“%s” could not", (text) => {
    expect(couldBeRead(text)).toBe(false);
  });
});

describe("what is written for a cell", () => {
  const one = (cell: Parameters<typeof inputs>[0][number][number], now = "General") => {
    const { formulas, formats } = inputs([[cell]], [[now]]);
    return [formulas[0]?.[0], formats[0]?.[0]];
  };

  it("is a text format for text that could be read, whatever format is wished", () => {
    expect(one({ value: "5/8" })).toEqual(["5/8", "@"]);
    expect(one({ value: "5/8", format: "0.0" })).toEqual(["5/8", "@"]);
    expect(one({ value: "Ada" })).toEqual(["Ada", null]);
  });

  it("is a format for numbers where there was one for text", () => {
    expect(one({ value: 5 }, "@")).toEqual([5, "General"]);
    expect(one({ formula: "=A1" }, "@")).toEqual(["=A1", "General"]);
    expect(one({ value: 5, format: "0.0" }, "@")).toEqual([5, "0.0"]);
    expect(one({ value: 5 }, "0.00")).toEqual([5, null]);
  });

  it("empties a cell, and leaves alone what is not named or filled by a formula elsewhere", () => {
    expect(one({ value: undefined }, "@")).toEqual(["", null]);
    expect(one(undefined)).toEqual([null, null]);
    expect(one({ value: 5, spilled: true })).toEqual([null, null]);
    expect(inputs([[{ value: 1 }], [{ value: 1 }, { value: 2 }]], []).formulas).toEqual([
      [1, null],
      [1, 2],
    ]);
  });
});

describe("what brings a cell back", () => {
  it.each<[string, unknown, unknown, string, string, unknown]>([
    ["a formula", "=1+1", 2, "Double", "General", "=1+1"],
    ["a number", 2, 2, "Double", "0.0", 2],
    ["a blank cell", "", "", "Empty", "General", ""],
    ["an empty text of a formula", '=""', "", "String", "General", '=""'],
    ["text in a text cell", "=1+1", "=1+1", "String", "@", "=1+1"],
    ["text kept by an apostrophe", "=1+1", "=1+1", "String", "General", "'=1+1"],
    ["plain text", "Ada", "Ada", "String", "General", "Ada"],
    ["an error value", "#N/A", "#N/A", "Error", "General", "#N/A"],
    ["a truth value", true, true, "Boolean", "General", true],
  ])("%s", (_, formula, value, type, format, expected) => {
    expect(savedInput(formula, value, type, format)).toBe(expected);
  });
});

describe("groups by size", () => {
  const sized = (...sizes: number[]) => sizes.map((bytes) => ({ bytes }));
  it("are as large as the limit allows, in order, and an item that is larger stands alone", () => {
    expect(inGroups(sized(4, 6, 1, 20, 3), 10)).toEqual([sized(4, 6), sized(1), sized(20), sized(3)]);
    expect(inGroups([], 10)).toEqual([]);
  });
});
