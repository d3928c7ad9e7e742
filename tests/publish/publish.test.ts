import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { groupsFunction } from "../../functions/groups.ts";
import { demo, demoTables, fromTables, pageOf, published } from "./published.ts";

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

  it("is chosen by several columns at once, and by body with whoever shares it", () => {
    const makers: Cells = rows.map((row, at) => [...row, ["Maker", "Mill", "Reed", "Mill", "Reed"][at]]);
    const both = [
      { heading: "Line", value: "Fen" },
      { heading: "Maker", value: "Reed" },
    ];
    const given = { ...fromTables(makers), flags: [] };
    expect(published({ where: both }, given).published.figures).toEqual(["Bea"]);
    const more = [...both, { heading: "Maker", value: "Mill" }];
    expect(published({ where: more }, given).published.figures).toEqual(["Ada", "Bea"]);
    expect(published({ bodies: ["bea"] }, from).published.figures).toEqual(["Ada", "Bea"]);
    expect(published({ bodies: ["Bea"], figures: ["Dot"] }, from).published.figures).toEqual([
      ...["Ada", "Bea", "Dot"],
    ]);
    // A figure that joins the body later is published with it.
    const later = fromTables([...rows, ["Eve", "Moor", 180.5, 140.5, 190, 170, ""]]);
    expect(published({ bodies: ["Bea"] }, { ...later, flags: [] }).published.figures).toContain("Eve");
  });

  it("names the bodies that FIT.GROUPS names, of the whole chart and of any part of it", () => {
    const table = groupsFunction.compute([demoTables.figures, demoTables.tolerances]) as unknown[][];
    const groups = table.slice(1).map(([, group]) => Number(group));
    const expected = (isKept: (at: number) => boolean): readonly string[] =>
      [...new Set(groups)].flatMap((group) => {
        const names = demo.chart.figures.filter((_, at) => groups[at] === group && isKept(at));
        return names.length === 0 ? [] : [names.join(", ")];
      });
    const shown = (figures: readonly string[]): readonly string[] =>
      published({ figures }).published.rows.map(({ names }) => names.join(", "));
    expect([...shown([])].sort()).toEqual([...expected(() => true)].sort());
    const some = demo.chart.figures.filter((name, at) => at % 3 > 0 && name !== "Wickory");
    expect([...shown(some)].sort()).toEqual(
      [...expected((at) => some.includes(demo.chart.figures[at]!))].sort(),
    );
  });

  it("says that bodies are told apart by what Check doubts, and shows nothing of it", () => {
    // 204 for 240 is a slip: without it the two are one body.
    const slipped: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Thigh (mm)"],
      ["Ada", 180, 140, 190, 111],
      ["Bea", 181, 140, 190, 171],
    ];
    const flags = demo.flags.slice(0, 1).map((flag) => ({
      ...flag,
      ...{ kind: "digits swapped" as const, figure: "Bea", row: 2, column: 4, corrections: [] },
    }));
    const given = { ...fromTables(slipped), patterns: undefined, flags };
    const { rows: shown, aboutBodies } = published({}, given).published;
    expect(shown.map(({ names }) => names)).toEqual([["Ada"], ["Bea"]]);
    expect(aboutBodies).toEqual([
      "Ada and Bea are told apart, here as in Groups, by readings alone that are held back: confirm or mend these.",
    ]);
    const page = pageOf({ measures: ["Thigh", "Bust"] }, given);
    expect(page).toContain(`data-mm="111"`);
    expect(page).not.toContain("171");
  });

  it("lets a figure stand alone whose body cannot be told without a doubtful reading", () => {
    const chart: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["Ada", 180, 140, 190],
      ["Bea", 181, 140, 190],
      ["Cleo", 180, 140, 191],
    ];
    const flags = demo.flags.slice(0, 1).map((flag) => ({
      ...flag,
      ...{ kind: "out of proportion" as const, figure: "Cleo", row: 3, column: 1, corrections: [] },
    }));
    const given = { ...fromTables(chart), patterns: undefined, flags };
    const { rows: shown, aboutBodies } = published({}, given).published;
    expect(shown.map(({ names }) => names)).toEqual([["Ada", "Bea"], ["Cleo"]]);
    expect(aboutBodies).toEqual([
      "Cleo has the body of Ada and Bea in Groups, but stands alone here: Bust is held back.",
    ]);
    const asked = published({ flagged: true }, given).published;
    expect(asked.rows.map(({ names }) => names)).toEqual([["Ada", "Bea", "Cleo"]]);
    expect(asked.aboutBodies).toEqual([]);
  });

  it("marks a row of several figures where a reading of one of them is left out", () => {
    const flags = demo.flags.slice(0, 1).map((flag) => ({
      ...flag,
      ...{ kind: "out of proportion" as const, figure: "Bea", row: 2, column: 4, corrections: [] },
    }));
    const thigh = published(
      { units: ["mm"], measures: ["Thigh"] },
      {
        ...fromTables([
          ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Thigh (mm)"],
          ["Ada", 180, 140, 190, 111],
          ["Bea", 181, 140, 190, 112],
        ]),
        flags,
      },
    ).published;
    expect(thigh.rows[0]?.cells[0]).toMatchObject({
      ...{ texts: ["111"], remark: "without one that is being checked" },
    });
  });

  it("publishes no estimate of a reading unless it is asked for, and says what comes from a list", () => {
    const written: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["Ada", "~ 183", 140, 190],
      ["Bea", 220, "170 (list)", 240],
      ["Cleo", 250, 200, 270],
    ];
    const given = { ...fromTables(written), patterns: undefined };
    const { rows: shown } = published({ units: ["mm"] }, given).published;
    expect(shown.map(({ cells }) => cells[0])).toMatchObject([
      { texts: [], remark: "only estimated, so not given" },
      { texts: ["220"], remark: "" },
      { texts: ["250"], remark: "" },
    ]);
    expect(shown[1]?.cells[1]).toMatchObject({ texts: ["170"], remark: "from a list, not measured" });
    expect(pageOf({}, given)).not.toContain("183");
    const asked = published({ units: ["mm"], estimated: true }, given).published;
    expect(asked.rows[0]?.cells[0]).toMatchObject({ texts: ["183"], remark: "estimated" });
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
