import { describe, expect, test } from "vitest";
import { cellText } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readGarmentTolerances, readTolerances } from "../../../addin/chart/tolerances.ts";
import { columnsOfPart } from "../../../addin/similarity/columns.ts";
import { groupingAt, groupTree, scaledColumns } from "../../../taskpane/groups/grouping.ts";
import { readGroups } from "../../../taskpane/groups/readGroups.ts";
import { classColumns, tolerancesStarter } from "../../../taskpane/groups/toleranceStarter.ts";
import { planColumn } from "../../../taskpane/groups/writeColumn.ts";
import { formulaOf, planBodyFormula, planFormula, planValues } from "../../../taskpane/groups/writeSheet.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { Grouped } from "./grouped.ts";
import { figures as cells, grouped, tolerances, workbookOf } from "./grouped.ts";

const groupsOf = ({ figures, columns }: Grouped): Int32Array =>
  groupingAt(groupTree(figures.chart, columns, "complete"), 1);

async function columnNow({ workbook }: Grouped, heading: string): Promise<readonly string[]> {
  const { values } = await workbook.readTable("Figures");
  const at = (values[0] ?? []).indexOf(heading);
  return values.slice(1).map((row) => cellText(row[at]));
}

describe("groups written to a column of the chart", () => {
  test("stand beside their figures, not in empty rows, are no readings, and are undone at once", async () => {
    const before = await grouped();
    const plan = planColumn(before.figures, groupsOf(before), " Group ");
    expect(plan.preview).toContain("Adds the column “Group”");
    await before.workbook.apply(plan.label, plan.edits());
    expect(await columnNow(before, "Group")).toEqual([
      "Group 2",
      "Group 1",
      "Group 1",
      "Group 2",
      "",
      "Group 1",
      "alone",
      "alone",
    ]);
    const after = await readGroups(openBook(before.workbook)(), {});
    expect(after.figures?.chart.measures.map(({ heading }) => heading)).toEqual(
      before.figures.chart.measures.map(({ heading }) => heading),
    );
    await before.workbook.undo();
    expect((await before.workbook.readTable("Figures")).values[0]).toEqual(cells[0]);
  });

  test("are brought up to date where they have changed, and only there", async () => {
    const start = await grouped();
    await start.workbook.apply("Write", planColumn(start.figures, groupsOf(start), "Group").edits());
    const same = await readGroups(openBook(start.workbook)(), {});
    if (!same.figures) throw new Error("The chart is gone.");
    expect(planColumn(same.figures, groupsOf(start), "Group")).toMatchObject({ isDone: true });

    const wider = groupingAt(groupTree(start.figures.chart, start.columns, "complete"), 0.4);
    const plan = planColumn(same.figures, wider, "group");
    expect(plan.preview).toMatch(/^Changes \d cells? in the column “group”/);
    expect(plan.preview).not.toContain("Take care");
    expect(plan.edits().length).toBeLessThan(7);
  });

  test("never go over other words without saying so, and not over names or readings at all", async () => {
    const start = await grouped();
    const plan = planColumn(start.figures, groupsOf(start), "Note");
    expect(plan.preview).toContain(
      "Take care: 1 cell holds something else than a group, such as “first mould”",
    );
    expect(() => planColumn(start.figures, groupsOf(start), "Figure")).toThrow(/names of the figures/);
    expect(() => planColumn(start.figures, groupsOf(start), "Waist")).toThrow(/readings of a measure/);
    expect(() => planColumn(start.figures, groupsOf(start), "  ")).toThrow(/needs a heading/);
  });
});

describe("groups written to a sheet", () => {
  const sheet = {
    name: "Shared bodies",
    title: "Who shares a body",
    what: "groups",
    values: [
      ["Figure", "Group"],
      ["Linnet", 1],
    ],
    widths: [100],
  };
  const formula = (name: string | undefined): string =>
    `FIT.GROUPS(Figures[#All], ${name ?? ""}[#All], "body")`;

  test("follow the tables as a formula, or stay as values", async () => {
    const { input, figures, columns, workbook } = await grouped();
    const plan = planFormula(sheet, { formula, times: 1, columns, garment: undefined }, input, figures);
    expect(plan.preview).toContain('=FIT.GROUPS(Figures[#All], Tolerances[#All], "body")');
    await workbook.apply(plan.label, plan.edits());
    const values = planValues(sheet, await readGroups(openBook(workbook)(), {}));
    await workbook.apply(values.label, values.edits());
    expect(await workbook.sheets()).toEqual([
      "Figures sheet",
      "Tolerances sheet",
      "Shared bodies",
      "Shared bodies 2",
    ]);
    const written = workbook.content().sheets;
    expect(written[2]?.cells[3]?.[0]?.formula).toBe(`=${formula("Tolerances")}`);
    expect(written[3]?.cells[4]?.map((cell) => cell?.value)).toEqual(["Linnet", 1]);
  });

  test("name the tolerances only where there are some", async () => {
    const { figures } = await grouped();
    expect(formulaOf("FIT.MEASURENEXT", figures, undefined, [])).toBe("FIT.MEASURENEXT(Figures[#All])");
    expect(formulaOf("FIT.BASES", figures, undefined, ["2"])).toBe("FIT.BASES(Figures[#All], , 2)");
    expect(formulaOf("FIT.BASES", figures, "Own", ["2"])).toBe("FIT.BASES(Figures[#All], Own[#All], 2)");
  });

  test("that go by the body only are refused for another part", async () => {
    const { input, figures } = await grouped();
    const next = { name: "FIT.MEASURENEXT", more: [], part: "head" };
    expect(() => planBodyFormula(sheet, next, input, figures)).toThrow(
      /Choose the body, or write words and numbers/,
    );
  });

  test.each([
    ["the body", "body", undefined],
    ["a class of garments", "Loose clothes", "Loose clothes"],
  ])("bring tolerances of their own where those are made larger, for %s", async (_, part, garment) => {
    const { input, figures, workbook } = await grouped();
    const { chart, tolerances: own, garments } = figures;
    const columns = columnsOfPart(chart, part, { tolerances: own, garments });
    const plan = planFormula(sheet, { formula, times: 1.25, columns, garment }, input, figures);
    await workbook.apply(plan.label, plan.edits());
    expect(plan.preview).toContain("GroupTolerances[#All]");
    const { values, formats } = await workbook.readTable("GroupTolerances");
    const read = columnsOfPart(chart, part, {
      tolerances: readTolerances(values, chart, formats),
      garments: readGarmentTolerances(values, chart, formats),
    });
    expect(read.map(({ tolerance }) => tolerance)).toEqual(
      scaledColumns(columns, 1.25).map(({ tolerance }) => tolerance),
    );
  });
});

describe("tolerances to begin with", () => {
  test("are the usual ones of every measure, with two classes of garments", () => {
    const chart = readChart(cells);
    const { edits, table } = tolerancesStarter(chart, { sheets: [], tables: [] });
    const [edit] = edits;
    if (edit?.kind !== "sheet") throw new Error("No sheet is added.");
    expect(table).toBe("Tolerances");
    const written = edit.sheet.cells.slice(2).map((row) => row.map((cell) => cell?.value));
    expect(readGarmentTolerances(written, chart).map(({ garment }) => garment)).toEqual([
      "Fitted clothes",
      "Loose clothes",
    ]);
    for (const { garment, tolerances } of readGarmentTolerances(written, chart)) {
      expect(tolerances.size, garment).toBeGreaterThan(0);
      for (const { key, heading } of chart.measures.filter(
        ({ zone }) => zone === "head" || zone === "legs",
      )) {
        expect(tolerances.has(key), `${garment}, ${heading}`).toBe(false);
      }
    }
    const own = readTolerances(written, chart);
    for (const column of chart.measures) {
      expect(own.get(column.key), column.heading).toEqual(column.measure?.tolerance);
    }
  });

  test("are added to a table without classes, row by row", async () => {
    const plain = tolerances.map((row) => row.slice(0, 2));
    const start = await grouped(workbookOf(cells, plain));
    const { tolerancesTable, chart } = start.figures;
    if (!tolerancesTable) throw new Error("There is no table of tolerances.");
    const data = await start.workbook.readTable(tolerancesTable.name);
    await start.workbook.apply("Add classes", classColumns(chart, tolerancesTable, data));
    const { figures } = await readGroups(openBook(start.workbook)(), {});
    const loose = figures?.garments.find(({ garment }) => garment === "Loose clothes")?.tolerances;
    expect(loose?.get("bustGirth")?.floorMm).toBe(4 * Number(plain.find(([name]) => name === "Bust")?.[1]));
    expect(loose?.has("waistGirth")).toBe(false);
    expect(loose?.has("headGirth")).toBe(false);
  });
});
