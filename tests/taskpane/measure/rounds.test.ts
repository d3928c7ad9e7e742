import { errorFunction } from "simple-statistics";
import { describe, expect, it } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { usualReadingError } from "../../../addin/measures/readingError.ts";
import { nothingRemembered, readRemembered, remember } from "../../../taskpane/measure/draft.ts";
import { inOrder, measuredFigure, mostWanted } from "../../../taskpane/measure/measuring.ts";
import type { Before, MeasuringContext, Rounds } from "../../../taskpane/measure/rounds.ts";
import { outcomesOf, repeatability, repeatOf, sessionEdits } from "../../../taskpane/measure/rounds.ts";
import { readKnownReadings } from "../../../taskpane/readings/readings.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { openHeadless } from "../../standalone/grid/headless.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { sheetOf } from "../fit/wardrobe.ts";

const figures: Cells = [
  ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Tail (mm)"],
  ["Ashby", 181, 134, "~ 190", 13.4],
  ["Corran", 190, undefined, 201, undefined],
];
/** Columns in an order of her own, without a tool, in cm. */
const readings: Cells = [
  ["By", "Figure", "Measure", "Reading (cm)", "Date", "Why"],
  ["Ida", "ashby", "Bust", 18, "2026-03-01", "new tape"],
  ["Ida", "Ashby", "Bust", 18.2, "2026-03-01", undefined],
];

async function begun(name: string, withTable: boolean) {
  const sheets = [sheetOf("Figures", figures), ...(withTable ? [sheetOf("Readings", readings)] : [])];
  const workbook = createMemoryWorkbook({ sheets });
  const book = openBook(workbook)();
  const chart = readChart(figures);
  const known = await readKnownReadings(book, chart);
  const figure = measuredFigure(chart, name)!;
  const context: MeasuringContext = {
    ...{ present: { cells: figures, chart }, figure, errors: usualReadingError },
    known: known.taken.readings,
  };
  const [table] = await workbook.tables();
  const outcomes = (rounds: Rounds, before: Before = "count") =>
    outcomesOf(context, rounds, inOrder(chart, undefined, "body"), before);
  const write = async (rounds: Rounds, before: Before = "count", keeps = true) => {
    const keeping = keeps ? { date: "2026-11-12", by: "Ada", tool: "calliper" } : undefined;
    const edits = sessionEdits(context, table!, outcomes(rounds, before), keeping, {
      ...{ readings: known, sheets: await workbook.sheets(), before },
    });
    await workbook.apply("Write", edits);
    const has = (await workbook.tables()).some(({ name: each }) => each === "Readings");
    return {
      chart: (await workbook.readTable("Figures")).values.slice(1),
      readings: has ? (await workbook.readTable("Readings")).values : [],
    };
  };
  return { workbook, outcomes, write };
}

const keyed = (rows: Record<string, number>): Rounds => [rows];

describe("a reading beside the first", () => {
  const { measures } = readChart(figures);
  const waist = measures.find(({ heading }) => heading === "Waist")!;

  it("is usual up to 2.8 standard deviations of a reading (ISO 5725-6)", () => {
    // 2.8 · 0.5 mm.
    expect(repeatOf([134], 135.4, waist, usualReadingError)).toEqual({
      isUsual: true,
      says: "First 134 mm, now 135.4 mm: 1.4 mm apart, which is usual (up to 1.4 mm).",
    });
    expect(repeatOf([134], 135.5, waist, usualReadingError)?.isUsual).toBe(false);
    expect(repeatOf([], 135, waist, usualReadingError)).toBeUndefined();
    // R 4.2.2: 2 * pnorm(-2.8 / sqrt(2)) is 0.0477149: one case of twenty.
    expect(1 - errorFunction(2.8 / Math.SQRT2 / Math.SQRT2)).toBeCloseTo(0.0477149, 6);
  });

  it("is held against the error of that measure where the chart has shown one", () => {
    const errors = { ...usualReadingError, ofMeasures: { waistGirth: 0.2 } };
    expect(repeatOf([134], 135, waist, errors)?.says).toBe(
      "First 134 mm, now 135 mm: 1 mm apart, more than is usual (0.6 mm).",
    );
  });
});

describe("what a session comes to", () => {
  it("is the mean with what the chart has, which becomes a row of its own", async () => {
    const { outcomes, write } = await begun("Ashby", false);
    expect(outcomes(keyed({ waistGirth: 135 })).map(({ words }) => words)).toEqual([
      "The chart gets 134.5 mm, the mean of both readings.",
    ]);
    const written = await write(keyed({ waistGirth: 135 }));
    expect(written.chart[0]).toEqual(["Ashby", 181, 134.5, "~ 190", 13.4]);
    expect(written.readings).toEqual([
      ["Figure", "Measure", "Reading (mm)", "Date", "By", "Tool"],
      ["Ashby", "Waist", 134, undefined, undefined, undefined],
      ["Ashby", "Waist", 135, "2026-11-12", "Ada", "calliper"],
    ]);
  });

  it("is the median with two rows of the table, in its own columns and unit, whose other cells stay", async () => {
    const { outcomes, write, workbook } = await begun("Ashby", true);
    const before = workbook.content();
    expect(outcomes(keyed({ bustGirth: 181.5 }))[0]?.words).toBe(
      "The chart gets 181.5 mm, the middle one of 3 readings.",
    );
    const written = await write(keyed({ bustGirth: 181.5 }));
    expect(written.chart[0]?.[1]).toBe(181.5);
    expect(written.readings).toEqual([...readings, ["Ada", "Ashby", "Bust", 18.15, "2026-11-12", undefined]]);
    await workbook.undo();
    expect(workbook.content()).toEqual(before);
  });

  it("takes the place of an estimate, and of a reading in another unit", async () => {
    const { outcomes, write } = await begun("Ashby", false);
    const taken = keyed({ hipGirth: 192, tail: 134 });
    expect(outcomes(taken).map(({ words }) => words)).toEqual([
      undefined,
      "Before: 13.4 mm, too far off to be the same. It is replaced by 134 mm.",
    ]);
    const written = await write(taken);
    expect(written.chart[0]).toEqual(["Ashby", 181, 134, 192, 134]);
    expect(written.readings.slice(1).map((row) => row.slice(0, 3))).toEqual([
      ["Ashby", "Hip", 192],
      ["Ashby", "Tail", 134],
    ]);
  });

  it("leaves the chart alone while two readings contradict each other, and is settled by a third", async () => {
    const { outcomes } = await begun("Corran", false);
    const [two] = outcomes([{ waistGirth: 140 }, { waistGirth: 150 }]);
    expect(two?.mm).toBeUndefined();
    expect(two?.words).toMatch(/^140 mm and 150 mm are too far apart .* Take a third reading/);
    const [three] = outcomes([{ waistGirth: 140 }, { waistGirth: 150 }, { waistGirth: 141 }]);
    expect(three?.mm).toBe(141);
  });

  it("counts alone where that is asked for: earlier rows of the measure are emptied", async () => {
    const { outcomes, write } = await begun("Ashby", true);
    expect(outcomes(keyed({ bustGirth: 184 }), "replaced")[0]?.words).toBe(
      "Before: 180 mm, 182 mm. It is replaced by 184 mm.",
    );
    const written = await write(keyed({ bustGirth: 184 }), "replaced");
    expect(written.chart[0]?.[1]).toBe(184);
    expect(written.readings.slice(1).filter((row) => row.some((cell) => cell !== undefined))).toEqual([
      ["Ada", "Ashby", "Bust", 18.4, "2026-11-12", undefined],
    ]);
  });

  it("stands in the chart alone where no readings are kept", async () => {
    const { write } = await begun("Corran", false);
    const written = await write([{ bustGirth: 190 }, { bustGirth: 191 }], "replaced", false);
    expect(written.chart[1]?.[1]).toBe(190.5);
    expect(written.readings).toEqual([]);
  });

  it("says how closely readings repeat", async () => {
    const { outcomes } = await begun("Corran", false);
    const rounds = [
      { waistGirth: 140, tail: 60 },
      { waistGirth: 141, tail: 60 },
    ];
    // √(Σd² / 2N) of 1 and 0: Ulijaszek & Kerr, British Journal of Nutrition 82 (1999).
    expect(repeatability(outcomes(rounds))).toMatchObject({ pairs: 2, tem: Math.sqrt(1 / 4) });
    expect(repeatability(outcomes(keyed({ waistGirth: 140 })))).toBeUndefined();
  });
});

describe("the order by what tells most", () => {
  it("begins with what pairs of figures wait for, and ends with what is there", () => {
    const list: Cells = [
      ["Figure", "Hand (mm)", "Calf (mm)", "Hip (mm)", "Waist (mm)", "Bust (mm)"],
      ["Ashby", 40, 74, 190, 134, 181],
      ["Corran", undefined, undefined, 190, undefined, 181],
    ];
    const chart = readChart(list);
    const order = mostWanted(chart, measuredFigure(chart, "Corran")!, undefined);
    expect(order.map(({ heading }) => heading)).toEqual(["Waist", "Calf", "Hand", "Bust", "Hip"]);
    const fresh = mostWanted(chart, measuredFigure(chart, "Della")!, undefined);
    expect(
      fresh
        .map(({ heading }) => heading)
        .slice(0, 3)
        .sort(),
    ).toEqual(["Bust", "Hip", "Waist"]);
  });
});

const hosts = [
  ["in the grid", () => openHeadless({ sheets: [sheetOf("Figures", figures)] }).workbook],
  ["in Excel", () => openExcel({ sheets: [sheetOf("Figures", figures)] }).workbook],
] as const;

describe.each(hosts)("a draft %s", (_, open) => {
  it("is kept with the workbook until it is thrown away", async () => {
    const workbook = open();
    expect(await readRemembered(workbook)).toEqual(nothingRemembered);
    const draft = { figure: "Ashby", day: "2026-11-12", rounds: [{ bustGirth: 181.5 }, {}] };
    await remember(workbook, { by: "Ada", tool: "", keeps: true, draft });
    expect(await readRemembered(workbook)).toEqual({ by: "Ada", tool: "", keeps: true, draft });
    await remember(workbook, { by: "Ada", tool: "", keeps: true, draft: { ...draft, rounds: [{}] } });
    expect((await readRemembered(workbook)).draft).toBeUndefined();
    expect((await readRemembered(workbook)).by).toBe("Ada");
  });

  it("that nobody can read is as if it were not there", async () => {
    const workbook = open();
    await workbook.setPreference("measuring", { by: 5, draft: "all" });
    expect(await readRemembered(workbook)).toEqual(nothingRemembered);
  });
});
