import { describe, expect, it } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { feedOf } from "../../../addin/checking/repeatability.ts";
import { feedEdits, keepReadings, readKnownReadings } from "../../../taskpane/readings/readings.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import { openHeadless } from "../../standalone/grid/headless.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";
import { sheetOf } from "../fit/wardrobe.ts";

const figures: Cells = [
  ["Figure", "Bust (mm)", "Waist (in)"],
  ["Ashby", 181, 5.25],
  ["Corran", 190, "~ 5 1/2"],
];
const readings: Cells = [
  ["Figure", "Measure", "Reading (mm)", "Date", "By", "Tool"],
  ["Ashby", "Bust", 181, "2026-03-01", "Ida", "tape"],
  ["Ashby", "Bust", 182, "2026-03-02", "Ida", "tape"],
  ["Corran", "Waist", 139.7, "2026-03-02", "Ida", "tape"],
  ["Corran", "Wiast", 139.7, "2026-03-02", "Ida", "tape"],
];

const hosts = [
  ["in the grid", (content: WorkbookContent) => openHeadless(content).workbook],
  ["in Excel", (content: WorkbookContent) => openExcel(content).workbook],
] as const;

describe.each(hosts)("the table Readings %s", (_, open) => {
  it("feeds the chart in the unit of its columns, and is taken back as one", async () => {
    const workbook = open({ sheets: [sheetOf("Figures", figures), sheetOf("Readings", readings)] });
    const chart = readChart(figures);
    const known = await readKnownReadings(openBook(workbook)(), chart);
    expect(known.taken.problems.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Row 5 of the readings: The chart has no column for “Wiast”\..*Waist/),
    ]);
    const { changes } = feedOf(chart, known.taken.readings);
    const [table] = await workbook.tables();
    await workbook.apply("Use the readings", feedEdits(changes, chart, table!));
    const fed = (await workbook.readTable("Figures")).values;
    expect(fed[1]).toEqual(["Ashby", 181.5, 5.25]);
    // What was an estimate is a reading now: 139.7 mm are 5 1/2 in.
    expect(fed[2]).toEqual(["Corran", 190, 5.5]);
    await workbook.undo();
    expect((await workbook.readTable("Figures")).values).toEqual(figures);
  });

  it("is made when the first reading is kept, and taken back with it", async () => {
    const workbook = open({ sheets: [sheetOf("Figures", figures)] });
    const [column] = readChart(figures).measures;
    const edits = keepReadings(
      [{ figure: "Ashby", column: column!, mm: 181.5, date: "2026-03-01", by: "Ida", tool: "" }],
      { table: undefined, cells: [], sheets: await workbook.sheets() },
      "cm",
    );
    await workbook.apply("Keep", edits);
    expect((await workbook.readTable("Readings")).values).toEqual([
      ["Figure", "Measure", "Reading (cm)", "Date", "By", "Tool"],
      ["Ashby", "Bust", 18.15, "2026-03-01", "Ida", undefined],
    ]);
    await workbook.undo();
    expect((await workbook.tables()).map(({ name }) => name)).toEqual(["Figures"]);
  });

  it("that cannot be read is said, and its readings count for nothing", async () => {
    const workbook = open({
      sheets: [
        sheetOf("Figures", figures),
        sheetOf("Readings", [
          ["Figure", "Reading"],
          ["Ashby", 5],
        ]),
      ],
    });
    const known = await readKnownReadings(openBook(workbook)(), readChart(figures));
    expect(known.failure).toMatch(/^Table Readings: .*need the heading “Measure”/);
    expect(known.taken.readings).toEqual([]);
  });
});
