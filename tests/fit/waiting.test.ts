import { describe, expect, it } from "vitest";
import { explainPair } from "../../addin/fit/explainPair.ts";
import { matchAll } from "../../addin/fit/match.ts";
import { waitedFor } from "../../addin/fit/waiting.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { prepareFitting } from "../../addin/fit/match.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";
import { measureNextFunction } from "../../functions/measureNext.ts";
import { waitWords } from "../../taskpane/groups/VerdictsWait.tsx";
import type { Row } from "./fitOf.ts";
import { chartWith, fittingOf, table, table as tableOf, wisp } from "./fitOf.ts";

const gown = { "Garment class": "Dress", Opens: "full length", Bust: 197, Waist: 143, Hip: 215 };
const told = (patterns: Readonly<Record<string, Row>>, figures: Readonly<Record<string, Row>>) =>
  waitedFor(fittingOf(patterns, figures)).map(({ figure, measure, settles, others }) => [
    Object.keys(figures)[figure],
    measure,
    settles.length,
    settles.length + others.length,
  ]);

describe("readings that verdicts wait for", () => {
  it("settle what is not known without them, those of most patterns first", () => {
    const noWaist: Row = { ...wisp, Waist: undefined };
    const skirt = { "Garment class": "Flared skirt", Waist: 139, Hip: 300, Opens: "full length" };
    expect(told({ G: gown, S: skirt }, { Wisp: wisp, Moth: noWaist })).toEqual([
      ["Moth", "waistGirth", 2, 2],
    ]);
    const less: Row = { ...noWaist, Bust: undefined };
    expect(told({ G: gown, S: skirt }, { Moth: less })).toEqual([
      ["Moth", "waistGirth", 1, 2],
      ["Moth", "bustGirth", 0, 1],
    ]);
  });

  it("are told with the verdicts that wait: those that they settle first, then the others", () => {
    const noWaist: Row = { ...wisp, Waist: undefined, Bust: undefined };
    const skirt = { "Garment class": "Flared skirt", Waist: 139, Hip: 300, Opens: "full length" };
    const fitting = fittingOf({ G: gown, S: skirt }, { Moth: noWaist });
    const [waist, bust] = waitedFor(fitting);
    expect([waist?.settles, waist?.others]).toEqual([[1], [0]]);
    expect([bust?.settles, bust?.others]).toEqual([[], [0]]);
    expect(waitWords(fitting, waist!)).toBe(
      "Settles 1 verdict: S. 1 more waits for other readings too, or holds unless it says otherwise: G.",
    );
    expect(waitWords(fitting, bust!)).toBe(
      "1 verdict waits for other readings too, or holds unless it says otherwise: G.",
    );
    // With that reading alone the skirt is judged, and the dress is not.
    const measured = matchAll(fittingOf({ G: gown, S: skirt }, { Moth: { ...noWaist, Waist: wisp.Waist } }));
    expect(measured.verdict(0, 0)).toBe("not known");
    expect(measured.verdict(1, 0)).not.toBe("not known");
  });

  it("may say otherwise where a garment fits, unless …", () => {
    const noHip: Row = { ...wisp, Hip: undefined };
    expect(matchAll(fittingOf({ G: gown }, { Moth: noHip })).verdict(0, 0)).toBe("fits");
    expect(told({ G: gown }, { Moth: noHip })).toEqual([["Moth", "hipGirth", 0, 1]]);
  });

  it("are what an opening has to pass", () => {
    const sock = { "Garment class": "Socks", Calf: 70, "Hem opening": 66, "Stretch %": "30%" };
    const noHeel: Row = { ...wisp, Heel: undefined };
    expect(told({ S: sock }, { Moth: noHeel })).toContainEqual(["Moth", "heelGirth", 1, 1]);
  });

  it("are none where something of the garment is wanting, or the verdict is no", () => {
    const tight = { ...gown, Bust: 150 };
    expect(told({ G: tight }, { Moth: { ...wisp, Hip: undefined } })).toEqual([]);
    const unknown: Row = { ...gown, Bust: undefined };
    const [[, , settles] = []] = told({ G: unknown }, { Moth: { ...wisp, Waist: undefined } });
    expect(settles).toBe(0);
  });

  it("are those that the reasons of each pair ask for, in the demo with one reading in eleven left out", () => {
    const workbook = demoWorkbook();
    const whole = readChart(tableCells(workbook, "Figures"));
    const chart = {
      ...whole,
      measures: whole.measures.map((column, c) => ({
        ...column,
        mm: column.mm.map((mm, figure) => ((7 * figure + 3 * c) % 11 === 0 ? Number.NaN : mm)),
      })),
    };
    const { patterns } = readPatternTable(tableCells(workbook, "Patterns"), chart);
    const fitting = prepareFitting(patterns, chart);
    const waiting = waitedFor(fitting);
    expect(waiting.length).toBeGreaterThan(30);
    const asked = new Set<string>();
    patterns.forEach((_, p) => {
      chart.figures.forEach((__, f) => {
        const { verdict, checks } = explainPair(fitting, p, f);
        if (verdict !== "not known") return;
        for (const check of checks)
          if (check.counts && check.verdict === "not known")
            for (const id of check.lacking ?? check.opening?.lacking ?? []) asked.add(`${String(f)} ${id}`);
      });
    });
    const settled = waiting.filter(({ settles }) => settles.length > 0);
    expect(settled.length).toBeGreaterThan(20);
    for (const { figure, measure } of settled) expect(asked).toContain(`${String(figure)} ${measure}`);
  });
});

describe("MEASURENEXT with patterns", () => {
  const figures = { Wisp: wisp, Moth: { ...wisp, Waist: undefined }, Gnat: { ...wisp, Heel: undefined } };
  const cells = table("Figure", figures);
  const patterns = table("Pattern", {
    G: gown,
    S: { "Garment class": "Socks", Calf: 70, "Hem opening": 66, "Stretch %": "30%" },
  });

  it("lists what pairs and verdicts wait for, and counts both", () => {
    const rows = measureNextFunction.compute([cells, null, null, patterns]);
    expect(rows).toEqual([
      ["Figure", "Measure", "Settles", "Needed by", "Settles verdicts", "Verdicts need it"],
      ["Moth", "Waist", 2, 2, 1, 1],
      ["Gnat", "Heel", 0, 0, 1, 1],
    ]);
  });

  it("goes by the error that the table Readings shows: a verdict that is too close to call waits for no other reading", () => {
    // The waist is 0.42 mm above the least that is snug: too close for half a millimetre of error, and clear once fourteen figures that were
    // read twice alike have shown less: their 0.29 mm of whole millimetres, drawn to the usual half: √((5·0.25 + 14/12)/19) = 0.36.
    const moth = { ...wisp, Hip: undefined };
    const many = Object.fromEntries(Array.from({ length: 14 }, (_, i) => [`Figure ${String(i)}`, wisp]));
    const [waist] = explainPair(fittingOf({ G: gown }, { Moth: moth }), 0, 0).checks.filter(
      ({ measure }) => measure === "waistGirth",
    );
    const made = { ...gown, Waist: waist!.snugMm! + 0.42 };
    const again = [
      ["Figure", "Measure", "Reading (mm)"],
      ...Object.keys(many).flatMap((name) =>
        ["Bust", "Waist"].map((measure) => [name, measure, wisp[measure as "Bust"]]),
      ),
    ];
    const readings = [...again, ...again.slice(1)];
    const rowsBy = (table: typeof readings | null) =>
      measureNextFunction.compute([
        tableOf("Figure", { Moth: moth, ...many }),
        null,
        null,
        tableOf("Pattern", { G: made }),
        null,
        null,
        table,
      ]);
    expect(rowsBy(null)).not.toContainEqual(["Moth", "Hip", expect.anything(), expect.anything(), 0, 1]);
    expect(rowsBy(readings)).toContainEqual(["Moth", "Hip", expect.anything(), expect.anything(), 0, 1]);
  });

  it("leaves the list as it is without patterns", () => {
    expect(measureNextFunction.compute([cells])).toEqual([
      ["Figure", "Measure", "Settles", "Needed by"],
      ["Moth", "Waist", 2, 2],
    ]);
  });

  it("settles what it says: with that reading the verdict is known", () => {
    const mended = chartWith({ ...figures, Moth: wisp, Gnat: wisp });
    expect(mended.figures).toHaveLength(3);
    const fitting = fittingOf({ G: gown }, { Moth: wisp });
    expect(waitedFor(fitting)).toEqual([]);
    expect(matchAll(fitting).verdict(0, 0)).toBe("fits");
  });
});
