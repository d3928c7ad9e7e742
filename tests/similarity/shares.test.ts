import { describe, expect, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readGarmentTolerances, readTolerances } from "../../addin/chart/tolerances.ts";
import { shares } from "../../addin/similarity/shares.ts";

const chart = readChart([
  ["Figure", "Bust", "Waist", "Hip", "Inside leg", "Head girth", "Foot length (in)", "Tail"],
  ["Wren", 135, 100, 140, 120, 160, 2, 30],
  ["Robin", 136, 101, 142, 119, 166, 2, 30],
  ["Tit", 136, "", 142, 119, 160, "", 35],
  ["Jay", 190, "", 200, 160, "", 2.5, 30],
]);
const usual: Cell[][] = [
  ["Measure", "Tolerance", "Hats", "Loose clothes", "Why so"],
  ["Bust", 3, "", 60, "breathing"],
  ["Waist", 2, "", "", "firm"],
  ["Hip", 3, "", 60, ""],
  ["Inside leg", 2, "", "", ""],
  ["Head girth", 2, 8, "", ""],
  ["Foot length", "1/16", "", "", ""],
];
const between = (one: string, other: string, cells = usual) => {
  const found = shares(chart, chart.figures.indexOf(one), chart.figures.indexOf(other), {
    tolerances: readTolerances(cells, chart),
    garments: readGarmentTolerances(cells, chart),
  });
  return Object.fromEntries(found.map((share) => [share.what, share]));
};

describe("shares", () => {
  it("answers part by part, then garment by garment, in the words of a fitting", () => {
    const found = between("Wren", "Robin");
    expect(Object.keys(found)).toEqual([
      "Body", "Torso", "Arms", "Legs", "Head", "Hands", "Feet", "Hats", "Loose clothes",
    ]); // prettier-ignore
    expect(found["Body"]).toMatchObject({
      answer: "yes",
      why: "Differs most: Hip 2 mm larger, of 3 mm allowed.",
    });
    expect(found["Legs"]?.why).toBe("Differs most: Inside leg 1 mm shorter, of 2 mm allowed.");
    expect(found["Head"]).toEqual({
      what: "Head",
      answer: "no",
      why: "On Robin: Head girth 6 mm larger.",
      ofTolerance: 3,
    });
    expect(found["Hats"]).toMatchObject({ answer: "yes", ofTolerance: 0.75 });
    expect(found["Feet"]).toMatchObject({ answer: "yes", why: "No difference.", ofTolerance: 0 });
    expect(found["Hands"]).toMatchObject({ answer: "not known", why: "The chart has no measure for it." });
  });

  it("turns the words round with the figures, not the answer", () => {
    expect(between("Robin", "Wren")["Head"]).toMatchObject({
      answer: "no",
      why: "On Wren: Head girth 6 mm smaller.",
    });
  });

  it("says which reading to take where a needed one is missing", () => {
    const found = between("Robin", "Tit");
    expect(found["Body"]).toMatchObject({ answer: "not known", why: "Measure Waist of Tit." });
    expect(found["Legs"]?.answer).toBe("yes");
    expect(between("Tit", "Jay")["Feet"]).toMatchObject({
      answer: "not known",
      why: "Measure Foot length of Tit.",
      ofTolerance: Number.NaN,
    });
  });

  it("says no as soon as one measure is too different, and gives lengths in the unit of their column", () => {
    const found = between("Wren", "Jay");
    expect(found["Body"]).toMatchObject({
      answer: "no",
      why: "On Jay: Hip 60 mm larger, Inside leg 40 mm longer, Bust 55 mm larger.",
    });
    expect(found["Feet"]?.why).toBe('On Jay: Foot length 1/2" longer.');
    // 60 of 60 mm
    expect(found["Loose clothes"]).toMatchObject({ answer: "yes", ofTolerance: 1 });
  });

  it("counts the reasons beyond three, and takes a measure of one’s own where the tolerances name it", () => {
    const found = between("Wren", "Jay", [
      ["Measure", "Tolerance", "Tails"],
      ["Bust", 1, ""],
      ["Hip", 1, ""],
      ["Inside leg", 1, ""],
      ["Tail", 1, 2],
    ]);
    expect(found["Tails"]).toMatchObject({ answer: "yes", why: "No difference." });
    expect(between("Robin", "Tit", [["Measure", "Tolerance", "Tails"], ["Tail", "", 2]])["Tails"]).toMatchObject({
      answer: "no",
      why: "On Tit: Tail 5 mm larger.",
    }); // prettier-ignore
    expect(found["Body"]?.why).toMatch(/^On Jay: Hip .*, Bust .*, Inside leg .*\.$/u);
  });
});

describe("readGarmentTolerances", () => {
  it("reads a column for each class of garments, and only the measures that matter to it", () => {
    expect(readGarmentTolerances(usual, chart).map(({ garment, tolerances }) => [garment, ...tolerances])).toEqual([
      ["Hats", ["headGirth", { floorMm: 8, percent: 0 }]],
      ["Loose clothes", ["bustGirth", { floorMm: 60, percent: 0 }], ["hipGirth", { floorMm: 60, percent: 0 }]],
    ]); // prettier-ignore
  });

  it("takes the unit of its heading, percentages, and 0 for an empty cell", () => {
    const read = readGarmentTolerances(
      [
        ["Measure", "Tolerance", "Coats (cm)", "Socks", "Remarks"],
        ["Bust", 3, 2, 0, "5 at most"],
        ["Inside leg", 3, "4%", "3 mm or 2%", ""],
      ],
      chart,
    );
    expect(read.map(({ garment, tolerances }) => [garment, ...tolerances])).toEqual([
      ["Coats", ["bustGirth", { floorMm: 20, percent: 0 }], ["insideLeg", { floorMm: 0, percent: 4 }]],
      ["Socks", ["insideLeg", { floorMm: 3, percent: 2 }]],
    ]);
  });

  it.each<[string, Cell[][], string]>([
    ["a word among tolerances", [["Bust", 3, 2], ["Hip", 3, "some"]], "Row 3 of the tolerances, Hip: “some” is neither"],
    ["a tolerance below zero", [["Bust", 3, -2]], "“-2” is not above 0"],
    ["a measure that nobody knows", [["Bust", 3, 2], ["Bst", 3, 2]], "Row 3 of the tolerances names “Bst”"],
  ])("refuses %s", (_, rows, message) => {
    expect(() => readGarmentTolerances([["Measure", "Tolerance", "Coats"], ...rows], chart)).toThrow(message);
  }); // prettier-ignore

  it("refuses two columns of one name", () => {
    expect(() => readGarmentTolerances([["Measure", "Tolerance", "Hat", "hat"], ["Head girth", 2, 3, 4]], chart)).toThrow(
      "The tolerances have two columns “hat”. Keep one of them.",
    ); // prettier-ignore
  });
});
