import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import { readGarmentTolerances, readTolerances } from "../../addin/chart/tolerances.ts";
import type { Cell } from "../../addin/chart/cell.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { starterWorkbook } from "../../addin/demo/starterWorkbook.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import { lengthUnits, toMm, type LengthUnit } from "../../addin/measures/units.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";

/** The Figures of a starter with one figure in it, every reading 100. */
function oneFigure(unit: LengthUnit): Cell[][] {
  const [headings = []] = tableCells(starterWorkbook(unit), "Figures");
  return [
    headings,
    headings.map((heading, i) => (i === 0 ? "Ada" : String(heading).includes("(") ? 100 : "yes")),
  ];
}

describe.each(lengthUnits)("a starter in %s", (unit) => {
  const workbook = starterWorkbook(unit);
  const chart = readChart(oneFigure(unit));

  it("has figures and patterns with headings and one empty row", () => {
    for (const name of ["Figures", "Patterns"]) {
      const [headings = [], ...rows] = tableCells(workbook, name);
      expect(headings.every((heading) => typeof heading === "string" && heading !== "")).toBe(true);
      expect(rows).toEqual([headings.map(() => undefined)]);
    }
  });

  it("measures what the demo measures, in its own unit, all known to the dictionary", () => {
    const demo = readChart(tableCells(demoWorkbook(), "Figures"));
    expect(chart.measures.map(({ key }) => key)).toEqual(demo.measures.map(({ key }) => key));
    expect(chart.measures.filter(({ measure }) => !measure)).toEqual([]);
    expect(chart.problems).toEqual([]);
    for (const { unit: own, mm } of chart.measures) {
      expect(own).toBe(unit);
      expect(mm[0]).toBeCloseTo(toMm(100, unit), 9);
    }
  });

  it("has tolerances that are read, within 1/64 in of those of the demo", () => {
    const demo = readTolerances(tableCells(demoWorkbook(), "Tolerances"), chart);
    const own = readTolerances(tableCells(workbook, "Tolerances"), chart);
    expect([...own.keys()]).toEqual([...demo.keys()]);
    expect(own.size).toBeGreaterThan(10);
    for (const [key, { floorMm }] of own)
      expect(Math.abs(floorMm - (demo.get(key)?.floorMm ?? 0))).toBeLessThanOrEqual(
        unit === "in" ? 25.4 / 64 : 1e-9,
      );
    expect(readGarmentTolerances(tableCells(workbook, "Tolerances"), chart)).toHaveLength(4);
  });

  it("has a table of patterns that reads lengths in its unit", () => {
    const [headings = []] = tableCells(workbook, "Patterns");
    const given: Record<string, Cell> = {
      Pattern: "P1",
      "Garment class": "Dress",
      "Drafted for": "Ada",
      [`Neck opening (${unit})`]: 4,
    };
    const read = readPatternTable([headings, headings.map((heading) => given[String(heading)])], chart);
    expect(read.problems).toEqual([]);
    expect(read.patterns[0]?.neckMm).toBeCloseTo(toMm(4, unit), 9);
  });

  it("keeps what is typed in inches from becoming a date", () => {
    const sheet = workbook.sheets.find(({ name }) => name === "Figures");
    const formats = sheet?.cells[3]?.slice(1, 1 + chart.measures.length).map((cell) => cell?.format);
    expect(new Set(formats)).toEqual(new Set([{ mm: "0.0", cm: "0.00", in: "@" }[unit]]));
  });
});

describe("the sheets of a starter", () => {
  const workbook = starterWorkbook("mm");
  const answers = workbook.sheets.flatMap(({ name, cells }) =>
    cells.flat().flatMap((cell) => (cell?.formula === undefined ? [] : [{ name, cell }])),
  );

  it("ask the same questions as the demo, in the same words", () => {
    const inner = (cells: readonly CellContent[]) =>
      cells.map(({ formula = "" }) => /FIT\.\w+\(.*?\)(?=\)*$)/.exec(formula)?.[0]);
    const demo = demoWorkbook().sheets.filter(({ name }) => answers.some((answer) => answer.name === name));
    const asked = demo.flatMap(({ cells }) => cells.flat().filter((cell) => cell?.formula !== undefined));
    expect(inner(answers.map(({ cell }) => cell)).sort()).toEqual(
      inner(asked.flatMap((cell) => (cell ? [cell] : []))).sort(),
    );
    expect(answers.length).toBeGreaterThan(14);
  });

  it("say in words what to do first, where there is nothing to read yet", () => {
    for (const { cell } of answers) {
      expect(cell.value).toMatch(/^(Fill in the sheet (Figures|Patterns) first|Choose a )/);
      expect(cell.formula).toContain(`"${String(cell.value)}"`);
    }
  });

  it("have a title, a line of explanation, and notes and lists of tables that are there", () => {
    for (const { cells, notes = [], pickLists = [] } of workbook.sheets) {
      expect(cells[0]?.[0]?.style).toBe("title");
      expect(cells[1]?.[0]?.style).toBe("quiet");
      for (const { row, column } of notes) expect(cells[row]?.[column]?.style).toBe("heading");
      for (const { from } of pickLists)
        if ("table" in from) expect(tableCells(workbook, from.table)[0]).toContain(from.heading);
    }
  });

  it("explain how to take every reading", () => {
    const sheet = workbook.sheets.find(({ name }) => name === "Figures");
    const noted = new Set(sheet?.notes?.map(({ column }) => column));
    const headings = sheet?.cells[2] ?? [];
    expect(headings.filter((_, column) => !noted.has(column)).map((cell) => cell?.value)).toEqual(["Notes"]);
  });
});
