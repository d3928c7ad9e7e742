import { describe, expect, it } from "vitest";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import { figureTraits } from "../../addin/chart/figureTraits.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";
import { patternHeadings, patternRows } from "../../addin/demo/patternsTable.ts";
import { patterns } from "../../addin/demo/patterns.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import { isWearable, verdicts } from "../../addin/fit/verdict.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { descriptors } from "../../functions/all.ts";
import { ready } from "../taskpane/fit/wardrobe.ts";
import { calculate, tableCells } from "../../addin/standalone/workbooks/calculate.ts";
import { wornOnParts, closures } from "../../addin/chart/garmentTerms.ts";

type Rows = readonly (readonly unknown[])[];

const workbook = demoWorkbook();
const calculated = calculate(workbook);
const easeRules = tableCells(workbook, "EaseRules");
const trueChart = [figureHeadings, ...trueRows().map((row) => row.map(({ value }) => value))];

/** What the one formula with a function gives. */
const resultOf = (name: string): Rows =>
  calculated.find(({ formula }) => formula.startsWith(`=FIT.${name}(`))?.result ?? [];

/** The table of WHATFITS on the chart without slips. */
const matchOnTrueChart = (rules?: Rows): Rows => {
  const match = descriptors.find(({ name }) => name === "WHATFITS");
  const table = match?.compute([tableCells(workbook, "Patterns"), trueChart, rules]);
  return Array.isArray(table) ? table : [];
};

const verdictOf = (rows: Rows, pattern: string, figure: string): unknown =>
  rows.find(([code]) => code === pattern)?.[rows[0]?.indexOf(figure) ?? -1];

/** Every verdict that occurs in a table of WHATFITS. */
const kindsIn = (rows: Rows): unknown[] =>
  [
    ...new Set(
      rows.slice(1).flatMap(([code, ...row]) => (code === "Doubtful" || code === "If mended" ? [] : row)),
    ),
  ].sort();

describe("the patterns", () => {
  const table = readPatternTable(tableCells(workbook, "Patterns"), readChart(trueChart));

  it("are at least 24, all of them sound", () => {
    expect(table.problems).toEqual([]);
    expect(table.patterns.length).toBeGreaterThanOrEqual(24);
  });

  it("are read alike with the number formats of their cells, as the pane reads them, and without", () => {
    const formats = [
      patternHeadings("mm").map(() => "General"),
      ...patternRows().map((row) => row.map(({ format }) => format ?? "General")),
    ];
    const cells = tableCells(workbook, "Patterns");
    expect(readPatternTable(cells, readChart(trueChart), { formats })).toEqual(table);
  });

  it("are worn on every part of the body, and of most classes that come with Measure Book", () => {
    const parts = new Set(table.patterns.map(({ garmentClass }) => garmentClass.wornOn));
    // No jumpsuit is among them.
    expect([...parts].sort()).toEqual(wornOnParts.filter((part) => part !== "body and legs").sort());
    const classes = new Set(table.patterns.map(({ garmentClass }) => garmentClass));
    expect(classes.size).toBeGreaterThan(defaultGarmentClasses.length / 2);
  });

  it("show stretch, under-layers, openings and every way to open", () => {
    expect(new Set(table.patterns.map(({ closure }) => closure))).toEqual(new Set(closures));
    expect(table.patterns.filter(({ stretch }) => stretch > 0).length).toBeGreaterThan(5);
    expect(table.patterns.find(({ title }) => title.includes("coat"))?.wornOver).toEqual(["D-1", "J-1"]);
  });
});

describe("the figures", () => {
  it("say what decides whether a garment goes on", () => {
    const traits = figureTraits(readChart(trueChart));
    for (const trait of ["handsOff", "headOff", "wig", "softBody", "jointed", "heeledFoot"] as const) {
      const said = traits.map((each) => each[trait]);
      expect(said).toContain(true);
      expect(said).toContain(false);
    }
  });
});

describe("the verdicts", () => {
  it("are of every kind, on the chart as it stands and on the chart without slips", () => {
    const kinds = [...verdicts].sort();
    expect(kindsIn(resultOf("WHATFITS"))).toEqual(kinds);
    expect(kindsIn(matchOnTrueChart(easeRules))).toEqual(kinds);
  });

  it("say under a figure which doubtful reading they rest on, and what they would be without it", () => {
    const rows = resultOf("WHATFITS");
    expect(verdictOf(rows, "Doubtful", "Belsory")).toMatch(/^Waist 5\.25 mm \(wrong unit\)/);
    const mended = String(verdictOf(rows, "If mended", "Belsory"));
    // Short enough to be read in a cell.
    expect(
      rows
        .slice(-2)
        .flatMap((row) => row.map((cell) => String(cell).length))
        .every((n) => n < 70),
    ).toBe(true);
    const turned = [...mended.matchAll(/([A-Z]-\d) (fits|loose|snug)/g)];
    expect(turned.length).toBeGreaterThan(0);
    for (const [, code = "", verdict] of turned) {
      expect(verdictOf(rows, code, "Belsory")).not.toBe(verdict);
      expect(verdictOf(matchOnTrueChart(easeRules), code, "Belsory")).toBe(verdict);
    }
    expect(verdictOf(matchOnTrueChart(easeRules), "Doubtful", "Belsory")).toBeUndefined();
  });

  it("let a garment fit the figure that it was drafted for, but for those with a story", () => {
    const rows = matchOnTrueChart(easeRules);
    const failed = patterns.filter(
      ({ code, draftedFor }) => draftedFor && verdictOf(rows, code, draftedFor) !== "fits",
    );
    expect(failed.map(({ code }) => [code, verdictOf(rows, code, "Ardwen")])).toEqual([
      ["D-7", "will not go on"],
      ["P-3", "too close to call"],
    ]);
    expect(verdictOf(rows, "D-8", "Ardwen")).toBe("not known");
  });

  it("follow the ease rules of the sheet", () => {
    const loosened = easeRules.map((rule) => (rule[0] === "Headwear" ? rule.with(4, "120%") : rule));
    expect(verdictOf(matchOnTrueChart(easeRules), "W-2", "Ardwen")).toBe("too loose");
    expect(verdictOf(matchOnTrueChart(loosened), "W-2", "Ardwen")).toBe("fits");
  });

  it("are the same without the rules of the sheet, which are those that come with Measure Book", () => {
    expect(matchOnTrueChart()).toEqual(matchOnTrueChart(easeRules));
  });
});

describe("the four questions", () => {
  it("each have a sheet that answers on one screen, agreeing with the others", () => {
    const wearers = resultOf("WEARERS").slice(1);
    const wardrobe = resultOf("WARDROBE").slice(1);
    const reasons = resultOf("REASONS").slice(1);
    const match = resultOf("WHATFITS");
    for (const [figure, verdict] of wearers.filter(([name]) => name !== "Wickory")) {
      expect(verdict).toBe(verdictOf(match, "D-1", String(figure)));
    }
    for (const [pattern, , verdict] of wardrobe) {
      expect(verdict).toBe(verdictOf(match, String(pattern), "Ardwen"));
    }
    expect(reasons[0]?.[4]).toBe(verdictOf(match, "D-1", "Pellory"));
    expect(reasons.map((row) => row[5]).filter((change) => change !== "").length).toBeGreaterThan(1);
  });

  it("are asked on the first sheet, by the name of each sheet", () => {
    const start = workbook.sheets[0]?.cells.flat().map((cell) => String(cell?.value ?? "")) ?? [];
    for (const question of [
      "Which figures wear this dress?",
      "What can this figure wear?",
      "Why not?",
      "What do I change?",
    ]) {
      expect(start.filter((line) => line.startsWith(question))).toHaveLength(1);
    }
    for (const { name } of workbook.sheets.slice(1)) {
      expect(start.filter((line) => line.startsWith(`${name}: `))).toHaveLength(1);
    }
  });
});

describe("kept as an .xlsx file and read again", () => {
  it("keeps patterns, rules, every verdict and all other results", async () => {
    const again = await readXlsx((await writeXlsx(workbook)).bytes);
    for (const name of ["Patterns", "EaseRules", "GarmentClasses", "Figures"]) {
      expect(tableCells(again, name)).toEqual(tableCells(workbook, name));
    }
    expect(calculated.length).toBeGreaterThan(20);
    expect(calculate(again)).toEqual(calculated);
  });
});

describe("the limits that are drawn beside a verdict", () => {
  it("are where it turns: what lies between the snuggest and the loosest can be worn, and nothing else", async () => {
    const { fitting } = await ready(workbook);
    let seen = 0;
    for (const p of fitting.patterns.keys()) {
      for (let figure = 0; figure < fitting.view.size; figure++) {
        for (const check of explainPair(fitting, p, figure).checks) {
          const { kind, verdict, hasMm, atRestMm = hasMm, snugMm = -Infinity, looseMm = Infinity } = check;
          if (kind === "opening" || verdict === "too close to call" || verdict === "not known") continue;
          seen++;
          expect(hasMm >= snugMm - 1e-6 && atRestMm <= looseMm + 1e-6, JSON.stringify(check)).toBe(
            isWearable(verdict),
          );
        }
      }
    }
    expect(seen).toBeGreaterThan(1000);
  });
});
