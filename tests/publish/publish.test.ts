import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { demo, fromTables, published } from "./published.ts";

const rows: Cells = [
  ["Figure", "Line", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Head (mm)", "Estimated"],
  ["Ada", "Fen", 180, 140, 190, 160, ""],
  ["Bea", "Fen", 181, 140, 190, 175, "Hip"],
  ["Cleo", "Moor", 220, 170, 240, 180, ""],
  ["Dot", "Moor", 230, undefined, 250, 182, ""],
];
const from = fromTables(rows);

describe("what is published", () => {
  it("is the chart with shared bodies as one row, in words too", () => {
    const { rows: shown, bodies } = published({ estimated: true }, from).published;
    expect(shown.map(({ names }) => names)).toEqual([["Ada", "Bea"], ["Cleo"], ["Dot"]]);
    expect(bodies).toEqual(["These wear the same body: Ada and Bea; their heads differ."]);
    const alone = published({ sharedRows: false }, from).published;
    expect(alone.rows.map(({ names }) => names)).toEqual([["Ada"], ["Bea"], ["Cleo"], ["Dot"]]);
  });

  it("is what was chosen, by name or by a column of text", () => {
    expect(published({ figures: ["Dot", "ada"] }, from).published.figures).toEqual(["Ada", "Dot"]);
    expect(published({ where: [{ heading: "Line", value: "moor" }] }, from).published.figures).toEqual([
      "Cleo",
      "Dot",
    ]);
    expect(published({ measures: ["Hip", "Bust"] }, from).published.columns.map(({ term }) => term)).toEqual([
      "Hip girth",
      "Bust girth",
    ]);
    expect(() => published({ where: [{ heading: "Line", value: "Dune" }] }, from)).toThrow(
      "No figure is chosen: the chart has none with “Line = Dune”. Choose at least one figure to publish.",
    );
    expect(() => published({ figures: ["Eve"] }, from)).toThrow("The chart has no figure “Eve”.");
    expect(() => published({ patterns: ["D-99"] })).toThrow("There is no pattern “D-99”.");
  });

  it("has a dash with its reason where nothing was measured, or the reading is only estimated", () => {
    const { rows: shown, columns } = published({ sharedRows: false }, from).published;
    const at = (row: number, key: string) =>
      shown[row]?.cells[columns.findIndex((column) => column.key === key)];
    expect(at(3, "waistGirth")).toMatchObject({ texts: [], remark: "not measured" });
    expect(at(1, "hipGirth")).toMatchObject({ texts: [], remark: "only estimated, so not given" });
    const asked = published({ sharedRows: false, estimated: true }, from).published;
    expect(asked.rows[1]?.cells.find(({ remark }) => remark === "estimated")?.texts[0]).toBe("190");
  });

  it("leaves out readings that the check doubts, tells the maker which, and marks them when she asks for them", () => {
    const quiet = published().published;
    const flagged = demo.flags.filter(
      ({ readingMm, kind }) => readingMm !== undefined && kind === "wrong unit",
    );
    expect(flagged.length).toBeGreaterThan(0);
    for (const { figure, measure } of flagged)
      expect(quiet.leftOut).toContain(`${figure}, ${measure}: Check doubts it`);
    const asked = published({ flagged: true, sharedRows: false }).published;
    expect(asked.leftOut).toEqual([]);
    expect(
      asked.rows
        .flatMap(({ cells }) => cells)
        .some(({ texts, remark }) => texts.length > 0 && remark === "to be checked"),
    ).toBe(true);
  });

  it("names patterns whose rows cannot be used instead of judging them", () => {
    const patterns: Cells = [
      ["Pattern", "Garment class", "Opens"],
      ["P1", "Dress", "full length"],
      ["P2", "Dresss of no class", "full length"],
    ];
    const { patterns: told, notJudged } = published({}, fromTables(rows, patterns)).published;
    expect(told.map(({ code }) => code)).toEqual(["P1"]);
    expect(notJudged).toEqual(["P2"]);
  });

  it("is a chart alone where there are no patterns", () => {
    const { patterns, rows: shown } = published(
      { estimated: true },
      { ...from, patterns: undefined },
    ).published;
    expect(patterns).toEqual([]);
    expect(shown.length).toBe(3);
  });

  it("takes 500 figures, and says of more than 2,000 that they are too many", () => {
    const many = (count: number): Cells => [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ...Array.from({ length: count }, (_, i) => [
        `F${String(i)}`,
        150 + (i % 97),
        120 + (i % 53),
        160 + (i % 71),
      ]),
    ];
    const alone = { ...from, patterns: undefined, flags: [] };
    expect(
      published({ sharedRows: false }, { ...alone, chart: fromTables(many(500)).chart }).published.rows,
    ).toHaveLength(500);
    const chart = { ...fromTables(many(10)).chart };
    const large = { ...chart, figures: Array.from({ length: 2001 }, (_, i) => `F${String(i)}`) };
    expect(() => published({}, { ...alone, chart: large })).toThrow(
      "2001 figures are too many for one chart",
    );
  });
});
