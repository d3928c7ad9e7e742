import { describe, expect, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import { seeded } from "../similarity/condensedOf.ts";

const names = ["Bust", "Under-bust", "Waist", "Hip", "Thigh", "Knee", "Ankle", "Upper arm", "Inside leg", "Back waist length"]; // prettier-ignore
const body = [182, 152, 134, 194, 108, 72, 44, 50, 230, 88];
/** Bodies that differ from it, and from one another, in every measure. */
const others = Array.from({ length: 8 }, (_, k) =>
  body.map((mm, j) => Math.round(2 * mm * (0.7 + 0.08 * k) * (1 + 0.04 * Math.sin(3 * k + 5 * j))) / 2),
);
const extra = ["Head", "Hand girth", "Foot length", "Height"];
const waist = names.indexOf("Waist");

type Row = readonly [name: string, readings: readonly Cell[], extras?: readonly Cell[]];
const chartOf = (rows: readonly Row[]) =>
  readChart([
    ["Figure", ...[...names, ...extra].map((name) => `${name} (mm)`)],
    ...rows.map(([name, readings, extras = [165, 39, 52, 480]]) => [name, ...readings, ...extras]),
  ]);
const withOthers = (rows: readonly Row[]) =>
  chartOf([...rows, ...others.map((each, k): Row => [`Other ${String(k)}`, each, [150 + 8 * k, 30 + 3 * k, 44 + 3 * k, 330 + 40 * k]])]); // prettier-ignore
const changed = (at: number, mm: number) => body.map((own, j) => (j === at ? mm : own));
const unlike = (chart: Parameters<typeof checkChart>[0]) =>
  checkChart(chart).filter(({ kind }) => kind === "unlike its twin");
const places = (chart: Parameters<typeof checkChart>[0]) =>
  unlike(chart).map(({ figure, measure }) => `${figure}: ${measure}`);

describe("twins but for one reading", () => {
  it("are both asked about it where nothing says which is right", () => {
    const chart = chartOf([
      ["Orrin", body],
      ["Pell", changed(waist, 142)],
    ]);
    expect(places(chart)).toEqual(["Orrin: Waist", "Pell: Waist"]);
    expect(unlike(chart)[1]?.why).toBe(
      "Pell and Orrin agree in all else of the body, but Waist is 142 mm here and 134 mm there. Measure both again; if the bodies differ there, nothing is wrong.",
    );
    expect(doubts(chart).map(({ says }) => says)).toEqual([
      "Waist 134 mm (unlike its twin)",
      "Waist 142 mm (unlike its twin)",
    ]);
  });

  it("leave the less likely one to be asked where the other figures tell", () => {
    const [flag, ...more] = unlike(
      withOthers([
        ["Orrin", body],
        ["Pell", changed(waist, 142)],
      ]),
    );
    expect(more).toEqual([]);
    expect(flag).toMatchObject({ figure: "Pell", measure: "Waist", readingMm: 142 });
    expect(flag?.why).toContain("Measure again; if the bodies differ there, nothing is wrong.");
  });

  it("leave the odd one to be asked where a third agrees with the other", () => {
    const rows: readonly Row[] = [
      ["Orrin", body],
      ["Pell", changed(waist, 142)],
      ["Quill", body.map((mm) => mm + 0.5)],
    ];
    expect(places(withOthers(rows))).toEqual(["Pell: Waist"]);
    expect(places(chartOf(rows))).toEqual(["Pell: Waist"]);
  });

  it("may come with two busts", () => {
    const bust = (mm: number) => changed(0, mm);
    const chart = withOthers([
      ["Orrin", body],
      ["Pell", body],
      ["Quill", bust(196)],
      ["Rill", bust(196.5)],
    ]);
    expect(places(chart)).toEqual([]);
  });

  it("may have other heads, hands, feet and so heights", () => {
    const chart = withOthers([
      ["Orrin", body],
      ["Pell", body, [180, 39, 52, 480]],
      ["Quill", body, [165, 44, 52, 480]],
      ["Rill", body, [165, 39, 58, 480]],
      ["Sill", body, [165, 39, 52, 490]],
    ]);
    expect(places(chart)).toEqual([]);
  });

  it("are not looked for where readings only happen to agree, or where two differ", () => {
    const random = seeded(8);
    const rows = Array.from({ length: 300 }, (_, i): Row => {
      const size = 0.8 + 0.4 * random();
      return [`Figure ${String(i)}`, body.map((mm) => mm * size * (0.96 + 0.08 * random())), [165 * size, 39 * size, 52 * size, 480 * size]]; // prettier-ignore
    });
    expect(places(chartOf(rows))).toEqual([]);
    const two: Row = ["Pell", body.map((mm, j) => (j === waist || j === 0 ? mm + 8 : mm))];
    expect(places(withOthers([["Orrin", body], two]))).toEqual([]);
  });

  it("differ by more than readings of one body do", () => {
    expect(places(withOthers([["Orrin", body], ["Pell", changed(waist, 136.5)]]))).toEqual([]); // prettier-ignore
  });

  it("are found where readings are missing, and say nothing more of a slip that is explained", () => {
    const lacking = (readings: readonly number[], ...gaps: readonly number[]) =>
      readings.map((mm, j) => (gaps.includes(j) ? undefined : mm));
    const chart = withOthers([
      ["Orrin", lacking(body, 0)],
      ["Pell", lacking(changed(waist, 142), 1)],
    ]);
    expect(places(chart)).toEqual(["Pell: Waist"]);
    const slip = withOthers([
      ["Orrin", body],
      ["Pell", changed(waist, 5.25)],
    ]);
    expect(checkChart(slip).filter(({ measure }) => measure === "Waist").map(({ kind }) => kind)).toEqual(["wrong unit"]); // prettier-ignore
  });
});
