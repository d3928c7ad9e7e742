import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { matchColumns } from "../../../addin/chart/import/columns.ts";
import type { TwinChoices } from "../../../addin/chart/import/figures.ts";
import { decideFigures } from "../../../addin/chart/import/figures.ts";
import type { ImportPlan } from "../../../addin/chart/import/importPlan.ts";
import { planOf } from "../../../addin/chart/import/importPlan.ts";
import { requireChart } from "../../../addin/chart/import/requireChart.ts";
import { layOut } from "../../../addin/chart/import/source.ts";
import type { Survey } from "../../../addin/chart/import/survey.ts";
import { shapeRemarks, survey } from "../../../addin/chart/import/survey.ts";
import { textReader } from "../../../addin/chart/import/texts.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { laidOutText } from "./support.ts";

const carefully: TwinChoices = { inChart: "skip", inFile: "keep both" };

async function planned(text: string, cells?: Cells, twins = carefully): Promise<ImportPlan> {
  const { laidOut, decimalMark } = await laidOutText(text);
  const present = cells && { cells, chart: readChart(cells) };
  const columns = matchColumns(laidOut, { decimalMark, chart: present?.chart });
  const nameColumn = columns.find((c) => c.role === "figure")?.position ?? 0;
  const figures = decideFigures(laidOut, nameColumn, present?.chart.figures ?? [], twins);
  return planOf({ laidOut, columns, figures, decimalMark, present });
}

function surveyed(plan: ImportPlan): Survey {
  const steps = survey(plan);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const chart: Cells = [
  ["Figure", "Bust girth (mm)", "Waist girth (mm)", "Notes"],
  ["Mira", 78, undefined, "resin"],
  ["Tola", 80, 61, undefined],
];

describe("a new chart", () => {
  test("every reading as it will be stored, every refusal with its reason", async () => {
    const plan = await planned('Figure;Waist (in)\nMira;5 3/8"\nTola;n/a\nUna;12 or 13\nIda;=1+2\n');
    expect(plan.targets.map((t) => t.heading)).toEqual(["Figure", "Waist girth (in)"]);
    expect(plan.figures.map((_, f) => plan.cell(f, 1))).toMatchObject([
      { kind: "new", value: 5.375, as: "reading" },
      { kind: "blank" },
      { kind: "refused", text: "12 or 13" },
      { kind: "refused", text: "=1+2" },
    ]);
    const counted = surveyed(plan);
    expect(counted).toMatchObject({ added: 4, updated: 0, skipped: 0, readings: 1, missing: 1, changed: 0 });
    expect(counted.refusals.map((r) => r.reason)).toEqual([
      expect.stringContaining("“12 or 13”"),
      expect.stringContaining("“=1+2”"),
    ]);
  });

  test("a text reading in another unit is stored in the column’s", async () => {
    const plan = await planned("Figure;Waist (mm)\nMira;13,65 cm\n");
    expect(plan.cell(0, 1)).toEqual({ kind: "new", value: 136.5, as: "reading" });
  });

  test("a figure without a name gets one that says where it comes from", async () => {
    const plan = await planned("Figure,Waist\nMira,60\n,61\n");
    expect(plan.figures.map((f) => f.name)).toEqual(["Mira", "Figure without a name (row 3)"]);
    expect(shapeRemarks(plan)).toEqual(["1 figure has no name."]);
  });

  test("ragged rows are told, and nothing in them is lost", async () => {
    const plan = await planned("Figure,Bust,Waist\nMira,78\nTola,80,61,extra\nUna,79,60\n");
    expect(shapeRemarks(plan)).toEqual([
      "“Column D” has no heading in the file.",
      "2 rows are shorter or longer than the headings, first row 2. If readings look shifted, choose another separator or decimal mark.",
    ]);
    expect(plan.cell(1, 3)).toEqual({ kind: "new", value: "extra", as: "text" });
  });

  test("a figure twice in the file is kept twice, or joined on request", async () => {
    const text = "Figure,Bust,Waist\nMira,78,\n mira ,79,60\n";
    const kept = await planned(text);
    expect(kept.figures.map(({ name, action }) => [name, action])).toEqual([
      ["Mira", "add"],
      ["mira (2)", "add"],
    ]);
    const joined = await planned(text, undefined, { ...carefully, inFile: "update" });
    expect(joined.cell(1, 1)).toEqual({ kind: "changed", value: 79, old: 78, as: "reading" });
    expect(joined.cell(1, 2)).toEqual({ kind: "new", value: 60, as: "reading" });
  });
});

describe("into a chart that is there", () => {
  const text = "figure,bust,waist,hip,notes\nMIRA,79,60,81,\nTola,80,61,82,\nUna,77,59,80,new\n";

  test("figures that are there are skipped unless the user says otherwise", async () => {
    const plan = await planned(text, chart);
    expect(plan.figures.map(({ name, action, twin }) => [name, action, twin])).toEqual([
      ["MIRA", "skip", "in the chart"],
      ["Tola", "skip", "in the chart"],
      ["Una", "add", undefined],
    ]);
    expect(surveyed(plan)).toMatchObject({ added: 1, updated: 0, skipped: 2, changed: 0 });
  });

  test("an update touches only what the file fills, and shows old and new", async () => {
    const plan = await planned(text, chart, { ...carefully, inChart: "update" });
    expect(plan.targets.map((t) => t.position)).toEqual([0, 1, 2, undefined, 3]);
    expect(plan.targets.map((_, t) => plan.cell(0, t))).toEqual([
      { kind: "same", value: "MIRA" },
      { kind: "changed", value: 79, old: 78, as: "reading" },
      { kind: "new", value: 60, as: "reading" },
      { kind: "new", value: 81, as: "reading" },
      { kind: "blank" },
    ]);
    expect(plan.cell(1, 1)).toEqual({ kind: "same", value: 80 });
    expect(surveyed(plan)).toMatchObject({ added: 1, updated: 2, changed: 1 });
  });

  test("keep both adds it under another name", async () => {
    const plan = await planned(text, chart, { ...carefully, inChart: "keep both" });
    expect(plan.figures.map((f) => f.name)).toEqual(["MIRA (2)", "Tola (2)", "Una"]);
  });

  test("one figure can be decided apart from the rest", async () => {
    const plan = await planned(text, chart, { ...carefully, byRow: new Map([[1, "update" as const]]) });
    expect(plan.figures.map((f) => f.action)).toEqual(["update", "skip", "add"]);
  });

  test("readings are stored in the unit of the chart’s column", async () => {
    const plan = await planned("Figure,Waist (in)\nUna,2 1/2\n", chart);
    expect(plan.targets[1]).toMatchObject({ heading: "Waist girth (mm)", position: 2 });
    expect(plan.cell(0, 1)).toEqual({ kind: "new", value: 63.5, as: "reading" });
  });
});

describe("what holds no chart is refused in words", () => {
  const refusal = async (text: string): Promise<void> => {
    const { laidOut, decimalMark } = await laidOutText(text);
    const columns = matchColumns(laidOut, { decimalMark });
    requireChart("“chart.csv”", laidOut, columns, decideFigures(laidOut, 0, [], carefully));
  };

  test.each([
    ["nothing but blank rows", "\n , \n\n", "“chart.csv” holds nothing but blank rows."],
    [
      "headings only",
      "Figure,Bust,Waist\n",
      "has headings (Figure, Bust, Waist …) but no figure below them.",
    ],
    ["one column", "Figure\nMira\nTola\n", "has only one column, “Figure”."],
    [
      "words only",
      "Figure,Maker\nMira,Orla\nTola,Orla\n",
      "No column of “chart.csv” is taken for a measure.",
    ],
  ])("%s", async (_, text, message) => {
    await expect(refusal(text)).rejects.toThrow(message);
  });

  test("a chart passes", async () => {
    await expect(refusal("Figure,Bust\nMira,78\n")).resolves.toBeUndefined();
  });
});

test("any chart of numbers comes back as it was, whatever delimiter and decimal mark it was written with", async () => {
  const reading = fc.integer({ min: 100, max: 40_000 }).map((tenths) => tenths / 10);
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(reading, reading, reading), { minLength: 1, maxLength: 12 }),
      fc.constantFrom(["; ", ","], [";", "."], ["\t", ","], ["\t", "."], ["|", ","], [",", "."]),
      async (rows, [delimiter = ";", mark = "."]) => {
        const written = rows.map((row, i) => [
          `Figure ${String(i)}`,
          ...row.map((n) => n.toFixed(1).replace(".", mark)),
        ]);
        const text = [["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"], ...written]
          .map((row) => row.join(delimiter.trim() || delimiter))
          .join("\r\n");
        const plan = await planned(text);
        const stored = plan.figures.map((_, f) => [1, 2, 3].map((t) => plan.cell(f, t)));
        expect(stored).toEqual(
          rows.map((row) => row.map((value) => ({ kind: "new", value, as: "reading" }))),
        );
      },
    ),
    { numRuns: 50 },
  );
});

test("a large file is gone through in steps", () => {
  const rows = [["Figure", "Waist (mm)"], ...Array.from({ length: 1000 }, (_, i) => [`F${String(i)}`, "60"])];
  const laidOut = layOut({ rows, numbers: rows.map((_, i) => i + 1), texts: textReader() }, 0);
  const columns = matchColumns(laidOut, { decimalMark: "." });
  const figures = decideFigures(laidOut, 0, [], carefully);
  const steps = survey(planOf({ laidOut, columns, figures, decimalMark: ".", present: undefined }));
  const shares: number[] = [];
  for (let step = steps.next(); !step.done; step = steps.next()) shares.push(step.value);
  expect(shares).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
});
