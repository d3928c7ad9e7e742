import { describe, expect, test } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import type { ColumnChoice } from "../../../addin/chart/import/columns.ts";
import { matchColumns } from "../../../addin/chart/import/columns.ts";
import { detectHeadingRow, detectTurned, layOut, turn } from "../../../addin/chart/import/source.ts";
import { textReader } from "../../../addin/chart/import/texts.ts";
import { findMeasure } from "../../../addin/measures/dictionary.ts";
import { laidOutText } from "./support.ts";

async function matched(text: string, choices?: ReadonlyMap<number, ColumnChoice>) {
  const { laidOut, decimalMark } = await laidOutText(text);
  return matchColumns(laidOut, { decimalMark, ...(choices ? { choices } : {}) });
}

const inShort = (columns: Awaited<ReturnType<typeof matched>>) =>
  columns.map(({ role, name, unit, unitFrom }) =>
    role === "measure" || role === "own" ? `${role} ${name} ${unit} (${unitFrom})` : `${role} ${name}`,
  );

describe("headings matched to measures", () => {
  test("known measures, measures of their own, text, and the figure’s name", async () => {
    const columns = await matched(
      "Maker,Name,bust,Cape hem (mm),Wing span\nOrla,Mira,78.5,30,41\nOrla,Tola,80,31,42\n",
    );
    expect(inShort(columns)).toEqual([
      "text Maker",
      "figure Figure",
      "measure Bust girth mm (assumed)",
      "own Cape hem mm (heading)",
      "own Wing span mm (assumed)",
    ]);
    expect(columns.map((c) => c.example)).toEqual(["Orla", "Mira", "78.5", "30", "41"]);
  });

  test("numbers that are no lengths are text", async () => {
    expect(inShort(await matched("Figure,Year,Waist\nMira,1998,60\nTola,2004,61\n"))).toEqual([
      "figure Figure",
      "text Year",
      "measure Waist girth mm (assumed)",
    ]);
  });

  test("a second column of one measure keeps its readings under a name of its own", async () => {
    const columns = await matched("Figure,Bust,Chest\nMira,78,79\nTola,80,81\n");
    expect(columns.map(({ role, name, repeated }) => [role, name, repeated])).toEqual([
      ["figure", "Figure", false],
      ["measure", "Bust girth", false],
      ["own", "Bust girth, second column", true],
    ]);
  });

  test("two sides are two measures", async () => {
    const columns = await matched("Figure,Left thigh,R thigh\nMira,60,61\nTola,62,62\n");
    expect(columns.map(({ name, repeated }) => [name, repeated]).slice(1)).toEqual([
      ["Left thigh girth", false],
      ["Right thigh girth", false],
    ]);
  });

  test("a heading in feet makes the column text", async () => {
    const columns = await matched("Figure,Height (ft),Waist\nMira,1,60\nTola,1.1,61\n");
    expect(columns[1]).toMatchObject({ role: "text", name: "Height (ft)", foreignUnit: "ft" });
  });

  test("the user’s choice goes before what was detected", async () => {
    const hip = findMeasure("hip");
    if (!hip) throw new Error("The dictionary has no hip girth.");
    const choices = new Map<number, ColumnChoice>([
      [1, { role: "measure", measure: hip, unit: "in" }],
      [2, { role: "left out" }],
    ]);
    const columns = await matched("Figure,Seat,Waist\nMira,78,60\nTola,80,61\n", choices);
    expect(inShort(columns)).toEqual(["figure Figure", "measure Hip girth in (you)", "left out Waist"]);
  });
});

describe("the unit of a column without one", () => {
  test.each([
    ["inch marks", 'Figure,Waist,Hip\nMira,"5 3/8""","6"""\nTola,"5 1/2""","6 1/4"""\n', "in (readings)"],
    ["fractions without a mark", "Figure,Waist,Hip\nMira,5 3/8,6 1/4\nTola,5½,6¾\n", "in (readings)"],
    ["units in the cells", "Figure,Waist,Hip\nMira,13.5 cm,15 cm\nTola,14 cm,16 cm\n", "cm (readings)"],
    ["quarters and eighths", "Figure,Waist,Hip\nMira,5.375,6.25\nTola,5.5,6.75\n", "in (guess)"],
    ["small decimals", "Figure;Waist;Hip\nMira;13,6;15,2\nTola;14,1;16\n", "cm (guess)"],
    ["large numbers", "Figure,Waist,Hip\nMira,136,152\nTola,141,160\n", "mm (assumed)"],
  ])("%s", async (_, text, expected) => {
    const columns = await matched(text);
    expect(columns.slice(1).map(({ unit, unitFrom }) => `${unit} (${unitFrom})`)).toEqual([
      expected,
      expected,
    ]);
  });

  test("another column’s heading decides for the rest", async () => {
    const columns = await matched("Figure,Waist (cm),Hip\nMira,13.6,15.2\nTola,14.1,16\n");
    expect(columns[2]).toMatchObject({ unit: "cm", unitFrom: "others" });
  });

  test("the present chart decides, whatever the size of the numbers", async () => {
    const chart = readChart([
      ["Figure", "Waist (mm)"],
      ["Mira", 345],
      ["Tola", 350],
    ]);
    const { laidOut, decimalMark } = await laidOutText("Figure,Waist\nIda,13.6\nUna,14\n");
    expect(matchColumns(laidOut, { decimalMark, chart })[1]).toMatchObject({ unit: "in", unitFrom: "chart" });
  });
});

describe("the layout of a file", () => {
  test("titles and group headings over merged cells may stand above the headings", async () => {
    const { laidOut } = await laidOutText(
      "Spring figures,,,,\n,Girths,,Lengths,\nFigure,Bust,Waist,Arm length,Inside leg\nMira,78,60,90,120\n",
    );
    expect(laidOut.headings).toEqual(["Figure", "Bust", "Waist", "Arm length", "Inside leg"]);
    expect(laidOut.firstRow).toBe(3);
  });

  test("cells beyond the headings get a heading, so that they are not lost", () => {
    const rows = [
      ["Figure", "Bust"],
      ["Mira", "78", "60"],
    ];
    expect(layOut({ rows, numbers: [1, 2], texts: textReader() }, 0).headings).toEqual([
      "Figure",
      "Bust",
      "Column C",
    ]);
  });

  test("headings unknown to the dictionary are found by being words", () => {
    expect(
      detectHeadingRow([
        ["Figure", "Wing"],
        ["Mira", "40"],
      ]),
    ).toBe(0);
  });

  test("a chart with figures across is turned", () => {
    const rows = [
      ["", "Mira", "Tola"],
      ["Bust", "78", "80"],
      ["Waist", "60", "61"],
    ];
    expect(detectTurned(rows)).toBe(true);
    const turned = turn({ rows, numbers: [1, 2, 3], texts: textReader() });
    expect(turned.rows).toEqual([
      ["", "Bust", "Waist"],
      ["Mira", "78", "60"],
      ["Tola", "80", "61"],
    ]);
    expect(detectTurned(turned.rows)).toBe(false);
  });
});
