import { describe, expect, it } from "vitest";
import { groupedBy } from "../../addin/chart/groupedBy.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readReadings } from "../../addin/chart/readReadings.ts";
import { feedOf, settle } from "../../addin/checking/repeatability.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { usualReadingError } from "../../addin/measures/readingError.ts";
import {
  errorsOf,
  fewestFiguresRepeated,
  repeatedReadings,
} from "../../addin/similarity/certainty/repeatedReadings.ts";
import { descriptors } from "../../functions/all.ts";
import { calculate, tableCells } from "../../addin/standalone/workbooks/calculate.ts";

const workbook = demoWorkbook();
const calculated = calculate(workbook);
const chart = readChart(tableCells(workbook, "Figures"));

describe("the sheets", () => {
  it("have names of their own, a title and a line that says what they show", () => {
    const names = workbook.sheets.map(({ name }) => name);
    expect(names).toEqual([
      ...["Start", "Figures", "Tolerances", "Patterns", "Ease rules", "Garment classes", "Grade rules"],
      ...[
        "Compare",
        "Groups",
        "Closest",
        "Tree",
        "Loose clothes",
        "Sharing",
        "House models",
        "Measure next",
        "Expected",
        "Flags",
        "Match",
        "Wearers",
        "Wardrobe",
        "Why",
        "Listing",
      ],
      ...["Grade", "Resize", "Sizes", "Skirts and darts", "Small sums", "Readings"],
    ]);
    for (const { cells } of workbook.sheets) {
      expect(cells[0]?.[0]?.style).toBe("title");
      expect(cells[1]?.[0]?.style).toBe("quiet");
    }
  });

  it("hold tables with a filled, unrepeated heading in every column, below a title row", () => {
    const tables = workbook.sheets.flatMap((sheet) => sheet.tables ?? []);
    expect(tables.map(({ name }) => name)).toEqual([
      "Figures",
      "Tolerances",
      "Patterns",
      "EaseRules",
      "GarmentClasses",
      "GradeRules",
      "Readings",
    ]);
    for (const table of tables) {
      expect(table.row).toBe(2);
      const cells = tableCells(workbook, table.name);
      const headings = cells[0]?.map(String) ?? [];
      expect(headings.every((text) => text !== "" && text !== "undefined")).toBe(true);
      expect(new Set(headings).size).toBe(table.columns);
      expect(cells.slice(1).every((row) => row[0] !== undefined)).toBe(true);
      const sheet = workbook.sheets.find((one) => one.tables?.includes(table));
      expect(sheet?.cells).toHaveLength(table.row + table.rows);
    }
  });

  it("ask in the part that is seen beside the pane on a screen of 1280 pixels", () => {
    const asking = workbook.sheets.flatMap(({ name, tables, pickLists = [], columnWidths = [] }) =>
      tables
        ? []
        : pickLists.map(({ column }) => ({
            name,
            end: columnWidths.slice(0, column + 1).reduce((sum, width) => (sum ?? 0) + (width ?? 0), 0) ?? 0,
          })),
    );
    expect(new Set(asking.map(({ name }) => name)).size).toBeGreaterThanOrEqual(10);
    // 1280 less the pane, the numbers of the rows and the bar to scroll with.
    expect(asking.filter(({ end }) => end > 1280 - 358 - 46 - 12)).toEqual([]);
  });

  it("warn that garments for figures can be unsafe for children", () => {
    const text = workbook.sheets[0]?.cells.flat().map((cell) => String(cell?.value ?? ""));
    expect(text?.join(" ")).toMatch(/small parts and cords.*toy safety rules.*someone qualified/);
  });
});

describe("the figures", () => {
  it("are at least 28, of one maker, from about 250 to 560 mm high", () => {
    expect(new Set(chart.figures).size).toBeGreaterThanOrEqual(28);
    expect(new Set(chart.attributes.find(({ heading }) => heading === "Maker")?.values).size).toBe(1);
    const heights = Array.from(chart.measures.find(({ key }) => key === "height")?.mm ?? []);
    expect(Math.min(...heights)).toBeGreaterThan(245);
    expect(Math.min(...heights)).toBeLessThan(260);
    expect(Math.max(...heights)).toBeGreaterThan(550);
    expect(Math.max(...heights)).toBeLessThan(570);
  });

  it("have at least 20 measures, all known to the dictionary, in mm and in inches", () => {
    expect(chart.measures.length).toBeGreaterThanOrEqual(20);
    expect(chart.measures.filter(({ measure }) => !measure)).toEqual([]);
    expect(new Set(chart.measures.map(({ unit }) => unit))).toEqual(new Set(["mm", "in"]));
    expect(chart.attributes.map(({ heading }) => heading)).toEqual([
      "Maker",
      "Line",
      "Body material",
      "Head sculpt",
      "Body",
      "Jointed",
      "Hands removable",
      "Head removable",
      "Hair",
      "Foot shape",
      "Notes",
    ]);
  });
});

describe("the readings taken more than once", () => {
  const { readings, problems } = readReadings(tableCells(workbook, "Readings"), chart);

  it("are of one measure, by two hands, and come to what the chart holds", () => {
    expect(problems).toEqual([]);
    expect(new Set(readings.map(({ column }) => column.heading))).toEqual(new Set(["Bust"]));
    expect(new Set(readings.map(({ by }) => by)).size).toBe(2);
    expect(feedOf(chart, readings)).toEqual({ changes: [], unlike: [] });
    const hows = [...groupedBy(readings, ({ figure }) => figure).values()].map(
      (taken) =>
        settle(
          taken.map(({ mm }) => mm),
          0.5,
        ).kind,
    );
    expect(hows).toEqual(["mean", "mean", "median"]);
  });

  it("are of too few figures to change an answer of the demo", () => {
    const repeated = repeatedReadings(chart, undefined, readings);
    expect(errorsOf(repeated)).toBe(usualReadingError);
    expect(repeated.tooFew.find(({ column }) => column.heading === "Bust")?.figures).toBeLessThan(
      fewestFiguresRepeated,
    );
    const without = errorsOf(repeatedReadings(chart));
    expect(errorsOf(repeated)).toEqual(without);
  });
});

describe("the formulas", () => {
  it("show every function", () => {
    const used = new Set(calculated.map(({ formula }) => /FIT\.([A-Z]+)/.exec(formula)?.[1]));
    expect([...used].sort()).toEqual(descriptors.map(({ name }) => name).sort());
  });

  it("all calculate, without an error", () => {
    expect(calculated.length).toBeGreaterThan(10);
    for (const { result } of calculated) {
      expect(result.flat().length).toBeGreaterThan(0);
      expect(result.flat().every((value) => typeof value === "number" || typeof value === "string")).toBe(
        true,
      );
    }
  });

  it("have room for what they fill", () => {
    for (const { sheet, row, column, formula, result } of calculated) {
      const cells = workbook.sheets.find(({ name }) => name === sheet)?.cells ?? [];
      const taken = result.flatMap((line, r) =>
        line.flatMap((_, c) => {
          const cell = r + c > 0 ? cells[row + r]?.[column + c] : undefined;
          return cell && !cell.spilled ? [[r, c]] : [];
        }),
      );
      expect({ formula, taken }).toEqual({ formula, taken: [] });
      const others = calculated.filter((one) => one.sheet === sheet && one.formula !== formula);
      const meets = others.filter(
        (other) =>
          row < other.row + other.result.length &&
          other.row < row + result.length &&
          column < other.column + (other.result[0]?.length ?? 0) &&
          other.column < column + (result[0]?.length ?? 0),
      );
      expect(meets).toEqual([]);
    }
  });
});
