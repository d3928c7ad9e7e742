import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Publication } from "../../addin/publish/publication.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import {
  languages,
  publishedUnits,
  roundings,
  usualPublication,
  usualPublicationOf,
} from "../../addin/publish/publication.ts";
import { publicationCells, readPublication } from "../../addin/publish/publicationTable.ts";

const text = fc.string({ maxLength: 30 }).map((given) => given.replace(/\s+/gu, " ").trim());
const name = fc
  .string({ minLength: 1, maxLength: 20 })
  .map((given) => `n${given.replace(/[=\s]+/gu, " ").trim()}`);

const publications: fc.Arbitrary<Publication> = fc.record({
  title: text,
  maker: text,
  date: text,
  note: text,
  language: fc.constantFrom(...languages),
  units: fc.uniqueArray(fc.constantFrom(...publishedUnits), { minLength: 1, maxLength: 2 }),
  rounding: fc.constantFrom(...roundings),
  figures: fc.uniqueArray(name),
  where: fc.array(fc.record({ heading: name, value: name })),
  measures: fc.uniqueArray(name),
  patterns: fc.option(fc.uniqueArray(name), { nil: undefined }),
  bodies: fc.uniqueArray(name),
  drawings: fc.boolean(),
  sharedRows: fc.boolean(),
  flagged: fc.boolean(),
  estimated: fc.boolean(),
  fitPage: fc.boolean(),
  showCautions: fc.boolean(),
  cautions: fc.array(name),
  paper: fc.constantFrom("A4" as const, "Letter" as const),
});

describe("the table Publication", () => {
  it("gives back every publication that was written into it", () => {
    fc.assert(
      fc.property(publications, (publication) => {
        const { patterns, ...read } = readPublication(publicationCells(publication));
        const { patterns: written, ...others } = publication;
        expect({ ...read }).toEqual(others);
        expect(patterns).toEqual(written);
      }),
    );
  });

  it("takes what is usual for what it does not say", () => {
    expect(readPublication([["Setting", "Value"]])).toEqual(usualPublication);
  });

  it("says which row it cannot read, and what may stand there", () => {
    const read = (setting: string, value: string) => () =>
      readPublication([
        ["Setting", "Value"],
        [setting, value],
      ]);
    expect(read("Titel", "x")).toThrow(
      "Row 2 of the publication: “Titel” is not a setting. Did you mean “Title”?",
    );
    expect(read("Unit", "furlongs")).toThrow(
      "Row 2 of the publication, Unit: “furlongs” cannot stand here. Use “mm”, “cm”, “inches in eighths”, “inches in sixteenths”.",
    );
    expect(read("Cautions", "perhaps")).toThrow(
      "Row 2 of the publication, Cautions: “perhaps” is neither yes nor no.",
    );
    expect(read("Figures where", "Marsh")).toThrow("Write it like Line = Marsh.");
  });
});

describe("what is published where nothing was chosen", () => {
  it.each([
    ["Bust (cm)", "Waist (cm)", ["cm", "inches in sixteenths"]],
    ["Bust (in)", "Waist (in)", ["inches in sixteenths", "mm"]],
    ["Bust (mm)", "Waist (mm)", ["mm", "inches in sixteenths"]],
  ])("of a chart under %s begins in the chart’s unit", (bust, waist, units) => {
    const chart = readChart([
      ["Figure", bust, waist],
      ["Mira", 18, 14],
    ]);
    expect(usualPublicationOf(chart)).toEqual({ ...usualPublication, units });
  });
});
