import { describe, expect, it } from "vitest";
import type { Cell, Cells } from "../../../addin/chart/cell.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import type { Publication } from "../../../addin/publish/publication.ts";
import type { PublishedFrom } from "../../../addin/publish/published.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { descriptors } from "../../../functions/all.ts";
import { planChart } from "../../../taskpane/publish/writeChart.ts";
import { demo, fromTables, published } from "../../publish/published.ts";
import { openHeadless } from "../../standalone/grid/headless.ts";

/** The sheets as the grid shows them once they are written as formulas, and the workbook to go on with. */
async function written(content: WorkbookContent, from: PublishedFrom, options: Partial<Publication>) {
  const grid = openHeadless(content, descriptors);
  const tables = await grid.workbook.tables();
  const tableOf = (name: string) => tables.find((table) => table.name === name);
  const toWrite = {
    sheets: content.sheets.map(({ name }) => name),
    used: {
      figures: tableOf("Figures"),
      patterns: tableOf("Patterns"),
      easeRules: tableOf("EaseRules"),
      garmentClasses: tableOf("GarmentClasses"),
    },
    hasOwnClasses: true,
    chart: from.chart,
    work: published(options, from),
  };
  const plan = planChart("formulas", toWrite);
  await grid.workbook.apply(plan.label, plan.edits());
  await grid.calculated();
  const shown = async (sheet: string): Promise<readonly (readonly Cell[])[]> => {
    const area = await grid.workbook.usedArea(sheet);
    return (await grid.workbook.readArea(area!)).values;
  };
  return { grid, plan, shown, work: toWrite.work };
}

describe("the published chart as formulas", () => {
  it("shows what is published, follows a reading that changes, and can be saved", async () => {
    const { grid, plan, shown, work } = await written(demoWorkbook(), demo, { sharedRows: false });
    const { rows, columns, figures } = work.published;
    expect(plan.preview).toMatch(
      /^Writes 37 figures with 8 measures to the new sheets “The chart” and “Pattern”, a row each, as formulas/,
    );
    const cells = await shown("The chart");
    for (const figure of figures) {
      // Two rows of one name cannot be told apart by it: the first is shown.
      if (figures.filter((each) => each === figure).length > 1) continue;
      const line = cells.find(([name]) => name === figure)!;
      const row = rows.find(({ names }) => names[0] === figure)!;
      for (const c of columns.keys()) {
        const [mm] = row.cells[c]!.texts;
        expect(line[1 + 2 * c], `${figure}, ${columns[c]!.term}`).toBe(mm === undefined ? "–" : Number(mm));
      }
    }
    // 182 mm is 7.165 in: the nearest sixteenth is 7 3/16.
    const bust = columns.findIndex(({ key }) => key === "bustGirth");
    const ardwen = () => shown("The chart").then((all) => all.find(([name]) => name === "Ardwen")!);
    expect((await ardwen())[2 + 2 * bust]).toBe('7 3/16"');

    const table = (await grid.workbook.tables()).find(({ name }) => name === "Figures")!;
    const column = demo.chart.measures.find(({ key }) => key === "bustGirth")!.position;
    const at = { sheet: table.area.sheet, row: table.area.row + 1, column: table.area.column + column };
    await grid.workbook.apply("Measure again", [{ kind: "cells", at, cells: [[{ value: 200 }]] }]);
    await grid.calculated();
    expect((await ardwen())[1 + 2 * bust]).toBe(200);
    expect((await writeXlsx(grid.workbook.content())).changed).toEqual([]);
    const said = await shown("Pattern");
    expect(said.find(([code]) => code === "B-1")?.[1]).toMatch(/^Drafted for Ardwen\. /);
    grid.close();
  });

  it("finds figures and columns with names of every kind, and leaves a dash where nothing was measured", async () => {
    const names = ["=1+1", `"Quoted" & 'so'`, "Ada*", "Ada the first", "מירה", "12"];
    const cells: Cells = [
      ["Figure", "Bust [1] # 'flat' (cm)", "Waist (mm)", "Hip (mm)"],
      ...names.map((name, at) => [name === "12" ? 12 : name, 18 + at, at === 2 ? undefined : 140 + at, 190]),
    ];
    const content: WorkbookContent = {
      sheets: [
        {
          name: "Figures",
          cells: cells.map((row) =>
            row.map((value) => ({ value, format: typeof value === "string" ? "@" : "General" })),
          ),
          tables: [{ name: "Figures", row: 0, column: 0, rows: cells.length, columns: 4 }],
        },
      ],
    };
    const from = { ...fromTables(cells), patterns: undefined, flags: [] };
    const { shown, grid } = await written(content, from, {
      ...{ units: ["cm"], measures: ["Bust [1] # 'flat'", "Waist"], sharedRows: false },
    });
    const all = (await shown("The chart")).slice(4, 4 + names.length);
    expect(all.map((row) => row.slice(0, 3))).toEqual(
      names.map((name, at) => [name === "12" ? 12 : name, 18 + at, at === 2 ? "–" : (140 + at) / 10]),
    );
    grid.close();
  });

  it("leaves out the words under patterns where a part of the figures is published, and says so", async () => {
    const { plan, grid } = await written(demoWorkbook(), demo, { figures: ["Ardwen", "Belsory"] });
    expect(plan.preview).toContain("they would name every figure of the chart");
    expect(plan.edits()).toHaveLength(1);
    expect(JSON.stringify(plan.edits())).not.toContain("Cattrin");
    grid.close();
  });
});

describe("the published chart as it is now", () => {
  it("has every length at the right, ranges, fractions, dashes and single numbers alike", async () => {
    const work = published({ sharedRows: true }, demo);
    const used = { figures: undefined, patterns: undefined, easeRules: undefined, garmentClasses: undefined };
    const plan = planChart("values", { sheets: [], used, hasOwnClasses: false, chart: demo.chart, work });
    const [sheet] = plan.edits().flatMap((edit) => (edit.kind === "sheet" ? [edit.sheet] : []));
    const lengths = sheet!.cells
      .slice(4, 4 + work.published.rows.length)
      .flatMap((row) => row.slice(1).map((cell) => cell!));
    const ranges = lengths.filter(({ value }) => / – /u.test(String(value)));
    expect(ranges.length).toBeGreaterThan(5);
    for (const { value, style, format } of lengths) {
      // A number stands at the right by itself.
      expect(typeof value === "number" ? [undefined, undefined] : ["amount", "@"], String(value)).toEqual([
        style,
        format,
      ]);
    }
    // In the file too. ECMA-376, 18.18.40, ST_HorizontalAlignment: “right”.
    const { bytes } = await writeXlsx({ sheets: [sheet!] });
    const { sheets } = await readXlsx(bytes);
    const kept = sheets[0]!.cells.flat().filter((cell) => / – \d/u.test(String(cell?.value)));
    expect(kept.length).toBe(ranges.length);
    expect(kept.every((cell) => cell?.style === "amount")).toBe(true);
  });

  it("leaves room for the readings beside the names of a body, which go on below", () => {
    const names = Array.from(
      { length: 6 },
      (_, i) => `Ämilie Großköpf-Überström, Guss ${String(i + 1)} (mattes Harz)`,
    );
    const cells: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ...names.map((name) => [name, 180, 140, 190]),
    ];
    const from = { ...fromTables(cells), patterns: undefined, flags: [] };
    const work = published({ sharedRows: true }, from);
    const used = { figures: undefined, patterns: undefined, easeRules: undefined, garmentClasses: undefined };
    const plan = planChart("values", { sheets: [], used, hasOwnClasses: false, chart: from.chart, work });
    const [sheet] = plan.edits().flatMap((edit) => (edit.kind === "sheet" ? [edit.sheet] : []));
    expect(sheet?.cells[4]?.[0]).toMatchObject({ value: names.join(", "), style: "wrap" });
    // The names stay in sight when one goes to the right: at 320 px, the narrowest page, something beside them is to be seen.
    expect(sheet?.columnWidths?.[0]).toBeLessThan(320);
  });
});
