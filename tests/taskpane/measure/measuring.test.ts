import { describe, expect, it } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { figuresSheet } from "../../../addin/demo/sheets/figures.ts";
import { measures } from "../../../addin/measures/dictionary.ts";
import {
  doubtAbout,
  expectedHere,
  inOrder,
  measuredFigure,
  measuringEdits,
} from "../../../taskpane/measure/measuring.ts";
import { tapePlaces } from "../../../taskpane/measure/tapePlaces.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

const list: Cells = [
  ["Figure", "Hip (mm)", "Bust (in)", "Maker", "Head (mm)"],
  ["Ashby", 190, 7.125, "me", undefined],
  ["Corran", 180, undefined, "me", 200],
];
const chart = readChart(list);
const keysOf = (columns: readonly { key: string }[]): string[] => columns.map(({ key }) => key);
const named = (name: string, of = chart) => measuredFigure(of, name)!;

const workbookOf = (cells: Cells) =>
  createMemoryWorkbook({
    sheets: [
      {
        name: "List",
        cells: [
          [{ value: "Spring" }],
          ...cells.map((row) => [undefined, ...row.map((value) => ({ value }))]),
        ],
        tables: [{ name: "Figures", row: 1, column: 1, rows: cells.length, columns: cells[0]?.length ?? 0 }],
      },
    ],
  });

async function written(cells: Cells, name: string, taken: Record<string, number>): Promise<Cells> {
  const workbook = workbookOf(cells);
  const [table] = await workbook.tables();
  const present = { cells, chart: readChart(cells, { mayBeEmpty: true }) };
  await workbook.apply("Write", measuringEdits(present, table!, named(name, present.chart), taken));
  return (await workbook.readTable("Figures")).values;
}

describe("the places of the tape", () => {
  it("are there for every measure of the dictionary, on the drawing", () => {
    expect(Object.keys(tapePlaces).sort()).toEqual(measures.map(({ id }) => id).sort());
    for (const [id, place] of Object.entries(tapePlaces)) {
      const points =
        place.kind === "around"
          ? [[place.x - place.half, place.y] as const, [place.x + place.half, place.y] as const]
          : place.points;
      for (const [x, y] of points) {
        expect(x, id).toBeGreaterThan(0);
        expect(x, id).toBeLessThan(100);
        expect(y, id).toBeGreaterThan(0);
        expect(y, id).toBeLessThan(212);
      }
    }
  });
});

describe("the order of measures", () => {
  it("goes from head to foot, or begins with what the figure lacks", () => {
    expect(keysOf(inOrder(chart, 0, "body"))).toEqual(["headGirth", "bustGirth", "hipGirth"]);
    expect(keysOf(inOrder(chart, 1, "missing"))).toEqual(["bustGirth", "headGirth", "hipGirth"]);
    expect(keysOf(inOrder(chart, undefined, "missing"))).toEqual(["headGirth", "bustGirth", "hipGirth"]);
  });
});

describe("what is written", () => {
  it("is the cells that were measured, in the unit of each column, and nothing else", async () => {
    expect(await written(list, "corran ", { bustGirth: 136.525, hipGirth: 181 })).toEqual([
      list[0],
      list[1],
      ["Corran", 181, 5.375, "me", 200],
    ]);
  });

  it("is a row of its own for a new figure", async () => {
    expect(await written(list, "Della", { headGirth: 210.5 })).toEqual([
      ...list,
      ["Della", undefined, undefined, undefined, 210.5],
    ]);
  });

  it("begins in the empty row of a chart without figures", async () => {
    const begun: Cells = [list[0]!, [undefined, undefined, undefined, undefined, undefined]];
    expect(await written(begun, "Della", { headGirth: 210.5 })).toEqual([
      list[0],
      ["Della", undefined, undefined, undefined, 210.5],
    ]);
  });
});

describe("a reading that was just taken", () => {
  const { cells, tables } = figuresSheet();
  const demo = readChart(cells.slice(tables?.[0]?.row).map((row) => row.map((cell) => cell?.value)));
  const waist = demo.measures.find(({ key }) => key === "waistGirth")!;
  const ardwen = named("Ardwen", demo);
  const inChart = waist.mm[ardwen.place!]!;

  it("is asked about when it cannot be right, with what it may have been", () => {
    const doubt = doubtAbout(demo, ardwen, { waistGirth: inChart / 25.4 }, waist);
    expect(doubt?.kind).toBe("wrong unit");
    expect(doubt?.why).toMatch(/inch/);
    expect(doubtAbout(demo, ardwen, { waistGirth: inChart }, waist)).toBeUndefined();
  });

  it("is asked about on a figure of which nothing else is known, when it is far from all others", () => {
    const fresh = named("Nobody yet", demo);
    const doubt = doubtAbout(demo, fresh, { waistGirth: 5.25 }, waist);
    expect(doubt?.why).toMatch(/^Waist 5\.3 mm is far from the other figures/);
    expect(doubtAbout(demo, fresh, { waistGirth: 60 }, waist)).toBeUndefined();
  });

  it("is expected where figures like it have it, whatever was typed", () => {
    const likely = expectedHere(demo, ardwen, { waistGirth: 5 }, waist);
    expect(likely!.lowMm).toBeLessThan(inChart);
    expect(likely!.highMm).toBeGreaterThan(inChart);
  });

  it("is judged for a new figure by what was taken before", () => {
    const taken = Object.fromEntries(
      demo.measures.flatMap(({ key, mm }) => {
        const reading = mm[ardwen.place!]!;
        return Number.isNaN(reading) ? [] : [[key, reading]];
      }),
    );
    const fresh = named("Nobody yet", demo);
    expect(fresh.place).toBeUndefined();
    expect(doubtAbout(demo, fresh, taken, waist)).toBeUndefined();
    expect(doubtAbout(demo, fresh, { ...taken, waistGirth: inChart * 10 }, waist)?.kind).toBe("wrong unit");
  });
});
