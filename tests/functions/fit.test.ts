import { describe, expect, it } from "vitest";
import { InputError } from "../../addin/measures/inputError.ts";
import { easeCheckFunction } from "../../functions/easeCheck.ts";
import { exampleChart } from "../../functions/exampleChart.ts";
import { examplePatterns } from "../../functions/examplePatterns.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";
import { reasonsFunction } from "../../functions/reasons.ts";
import { wardrobeFunction } from "../../functions/wardrobe.ts";
import { wearersFunction } from "../../functions/wearers.ts";

const headings = examplePatterns[0];
const gown = examplePatterns[3];

/** A row like the example’s, with other values under some headings. */
const like = (row: readonly unknown[], changed: Readonly<Record<string, unknown>>): readonly unknown[] =>
  headings.map((heading, i) => (heading in changed ? changed[heading] : row[i]));

const rows = (result: unknown): unknown[][] => {
  if (!Array.isArray(result)) throw new Error("not a table");
  return result.map((row: unknown) => (Array.isArray(row) ? row : [row]));
};

/** What was thrown, as an `InputError`. */
function refusal(work: () => unknown): InputError {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("Nothing was thrown.");
}

describe("functions of fit", () => {
  it("a row that cannot be used says so, and leaves the others alone", () => {
    const patterns = [...examplePatterns, like(gown, { Pattern: "P4", "Garment class": "Gwon" })];
    const match = rows(whatFitsFunction.compute([patterns, exampleChart]));
    expect(match.slice(0, 4)).toEqual(rows(whatFitsFunction.compute([examplePatterns, exampleChart])));
    expect(match[4]?.[0]).toBe("P4");
    expect(match[4]?.[1]).toMatch(/^cannot be read: Row 5 of the patterns, Garment class: “Gwon”/);
    expect(match[4]).toHaveLength(5);
    const wardrobe = rows(wardrobeFunction.compute([patterns, exampleChart, "Teal"]));
    expect(wardrobe.at(-1)?.slice(0, 3)).toEqual(["P4", "", "cannot be read"]);
    expect(refusal(() => wearersFunction.compute([patterns, exampleChart, "P4"])).message).toContain("Gwon");
  });

  it("takes a 0 for an empty cell, as some hosts hand it over, and an opening below zero for a mistake", () => {
    const zeros = examplePatterns.map((row) => row.map((cell) => (cell === "" ? 0 : cell)));
    expect(whatFitsFunction.compute([zeros, exampleChart])).toEqual(
      whatFitsFunction.compute([examplePatterns, exampleChart]),
    );
    const negative = [headings, like(gown, { "Neck opening": -4 })];
    expect(rows(whatFitsFunction.compute([negative, exampleChart]))[1]?.[1]).toMatch(/Neck opening: “-4”/);
  });

  it("keeps the 0 of a flat shoe", () => {
    const shoe = [
      ["Pattern", "Garment class", "Foot length", "Heel height"],
      ["S", "Shoe", 54, 0],
    ];
    const flat = [
      ["Figure", "Foot length", "Foot shape"],
      ["Wisp", 52, "flat"],
      ["Lark", 52, "heeled"],
    ];
    expect(rows(whatFitsFunction.compute([shoe, flat]))[1]).toEqual(["S", "fits", "not known"]);
  });

  it("finds patterns and figures in any case, and offers near names for others", () => {
    const ask = (pattern: string, figure: string) =>
      reasonsFunction.compute([examplePatterns, exampleChart, pattern, figure]);
    expect(ask("p1", "TEAL")).toEqual(ask("P1", "Teal"));
    expect(refusal(() => ask("P9", "Teal"))).toMatchObject({ kind: "absent" });
    expect(refusal(() => ask("P9", "Teal")).message).toMatch(/no pattern “P9”\. Did you mean “P1”/);
    expect(refusal(() => ask("P1", "Teel"))).toMatchObject({ kind: "absent" });
  });

  it("judges by the rules that it is given", () => {
    const rules = [
      ["Garment class", "Measure", "Least %", "Most %"],
      ["Dress", "Bust", "20%", "60%"],
    ];
    const match = rows(whatFitsFunction.compute([examplePatterns, exampleChart, rules]));
    expect(match[3]).toEqual(["P3", "fits", "fits", "snug", "snug"]);
  });

  it("names the row of a rule that is turned round", () => {
    const rules = [
      ["Garment class", "Measure", "Least %", "Most %"],
      ["Dress", "Bust", 9, 4],
    ];
    const { message } = refusal(() => whatFitsFunction.compute([examplePatterns, exampleChart, rules]));
    expect(message).toMatch(/^Row 2 of the ease rules, Least %/);
  });

  it("gives lengths in the unit of the measure’s column", () => {
    const inches = [
      ["Figure", "Bust (in)", "Waist (in)", "Hip (in)"],
      ["Teal", "7 1/2", 6, 8],
    ];
    const told = rows(reasonsFunction.compute([examplePatterns, inches, "P1", "Teal"]));
    const waist = told.find(([check]) => check === "Waist girth");
    expect(waist?.[2]).toBeCloseTo(104 / 25.4, 9);
    expect(waist?.[4]).toMatch(/^too tight by 1 15\/16"/);
  });

  it("lists figures and patterns best first", () => {
    const wearers = rows(wearersFunction.compute([examplePatterns, exampleChart, "P3"]));
    expect(wearers.map(([figure]) => figure)).toEqual(["Figure", "Teal", "Siskin", "Dunnock", "Linnet"]);
    const wardrobe = rows(wardrobeFunction.compute([examplePatterns, exampleChart, "Linnet"]));
    expect(wardrobe.map(([pattern]) => pattern)).toEqual(["Pattern", "P1", "P3", "P2"]);
  });

  it("EASECHECK says which measures a class has rules for", () => {
    const { kind, message } = refusal(() => easeCheckFunction.compute([40, 38, "Headwear", "Bust"]));
    expect(kind).toBe("absent");
    expect(message).toBe("measure: Headwear has no ease rule for “Bust”. It has rules for Head girth.");
    expect(refusal(() => easeCheckFunction.compute([40, 38, "Drss", "Bust"])).kind).toBe("value");
    expect(easeCheckFunction.compute([null, 38, "Dress", "Bust"])).toBe("");
  });

  it("judges by classes of the user’s own, and says where one cannot be read", () => {
    const classes = [
      ["Garment class", "Worn on", "Seam edges"],
      ["Petalcoat", "whole body", 2],
    ];
    const rules = [
      ["Garment class", "Measure", "Least %", "Most %"],
      ["Petalcoat", "Bust", 10, 60],
    ];
    const patterns = [headings, like(gown, { "Garment class": "Petalcoat", Bust: 160 })];
    expect(rows(whatFitsFunction.compute([patterns, exampleChart]))[1]?.[1]).toMatch(
      /cannot be read: .*“Petalcoat”/,
    );
    // 160 mm is 18.5 % more than 135 mm, and less than 190 mm.
    expect(rows(whatFitsFunction.compute([patterns, exampleChart, rules, classes]))[1]).toEqual([
      ...["P3", "fits", "fits", "too tight", "too tight"],
    ]);
    // By its own four seam edges, each of a dress takes 2 mm of these.
    const dress = [classes[0], ["Dress", "whole body", 2]];
    expect(easeCheckFunction.compute([132, 135, "Dress", "Bust", "", "", "", dress])).toBe(
      "too tight by 8.1 mm. Let out 8.1 mm in all: 4 mm at each of 2 seam edges.",
    );
    const unknown = [classes[0], ["Petalcoat", "everywhere", 2]];
    expect(refusal(() => whatFitsFunction.compute([patterns, exampleChart, rules, unknown])).message).toMatch(
      /Row 2 .*Worn on: “everywhere” is not a part/,
    );
  });
});
