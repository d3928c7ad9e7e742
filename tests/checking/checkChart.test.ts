import { describe, expect, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { figuresSheet } from "../../addin/demo/sheets/figures.ts";
import { expectedValue } from "../../addin/checking/expectedValue.ts";

const headings = [
  "Figure",
  "Bust (mm)",
  "Under-bust (mm)",
  "Waist (mm)",
  "Hip (mm)",
  "Thigh (mm)",
  "Knee (mm)",
  "Ankle (mm)",
  "Back waist length (mm)",
];
const body = [182, 152, 134, 194, 108, 72, 44, 88];

/** Figures of one shape, from small to large, with the readings of one of them replaced. */
function chartWith(changed: readonly Cell[], units: readonly string[] = headings) {
  const rows = [0.7, 0.8, 0.9, 1, 1.1, 1.2].map((size, i) => [
    `Figure ${String(i + 1)}`,
    ...body.map((mm, j) => (size === 1 ? (changed[j] ?? mm) : Math.round(mm * size * 2) / 2)),
  ]);
  return readChart([units, ...rows]);
}
const none = undefined;
const kinds = (chart: Parameters<typeof checkChart>[0]) =>
  checkChart(chart).map(({ kind, figure, measure }) => [kind, figure, measure]);

describe("slips", () => {
  it("tells the amount in words that a person who sews understands", () => {
    const [flag] = checkChart(chartWith([none, none, 5.25]));
    expect(flag).toMatchObject({
      kind: "wrong unit",
      figure: "Figure 4",
      measure: "Waist",
      row: 4,
      column: 3,
      unit: "mm",
      readingMm: 5.25,
      why: "Waist 5.25 mm is about 25.4 times too small for this figure: was it read in inches? 133.35 mm would be in proportion.",
    });
    expect(flag?.suggestedMm).toBeCloseTo(133.35, 10);
  });

  it("finds readings in inches of two figures of one body, though each has the same as the other", () => {
    const { cells, tables } = figuresSheet();
    const rows = cells.slice(tables?.[0]?.row).map((row) => row.map((cell) => cell?.value));
    const waist = (rows[0] ?? []).indexOf("Waist (mm)");
    const at = (name: string) => rows.findIndex(([figure]) => figure === name);
    const inMm = Number(rows[at("Ardwen")]?.[waist]);
    expect(rows[at("Belsory")]?.[waist]).toBe(5.25);
    rows[at("Ardwen")]![waist] = Math.round((inMm / 25.4) * 8) / 8;
    const found = checkChart(readChart(rows)).filter(({ measure }) => measure === "Waist");
    expect(found.map(({ figure, kind }) => `${figure}: ${kind}`).sort()).toEqual([
      "Ardwen: wrong unit",
      "Belsory: wrong unit",
    ]);
  });

  it("tells half a girth, but never doubles a length", () => {
    expect(kinds(chartWith([none, none, none, 97]))).toEqual([["half of the girth", "Figure 4", "Hip"]]);
    expect(kinds(chartWith([none, none, none, none, none, none, none, 44]))).toEqual([
      ["out of proportion", "Figure 4", "Back waist length"],
    ]);
  });

  it("offers both cells of a swap", () => {
    const [flag, ...others] = checkChart(chartWith([none, none, none, none, 72, 108]));
    expect(others).toEqual([]);
    expect(flag?.kind).toBe("two readings swapped");
    expect(flag?.corrections).toEqual(
      expect.arrayContaining([
        { row: 4, column: 5, mm: 108 },
        { row: 4, column: 6, mm: 72 },
      ]),
    );
  });

  it("finds a reading that changed places with the row below", () => {
    const chart = readChart([
      headings,
      ...[0.5, 1.4, 0.6, 1.3, 0.7, 1.2].map((size, i) => [
        `Figure ${String(i + 1)}`,
        ...body.map((mm, j) => {
          const from = j === 2 && i === 1 ? 0.6 : j === 2 && i === 2 ? 1.4 : size;
          return Math.round(mm * from * 2) / 2;
        }),
      ]),
    ]);
    expect(checkChart(chart)).toMatchObject([
      {
        kind: "two readings swapped",
        figure: "Figure 2",
        why: "Waist: Figure 2 80.5 mm and Figure 3 187.5 mm would both be in proportion the other way round: do they stand in each other’s cells?",
      },
    ]);
  });

  it("does not guess a missing digit when several would do", () => {
    const [flag] = checkChart(chartWith([none, none, none, none, 10]));
    expect(flag?.kind).toBe("digit missing");
    expect(flag?.suggestedMm).toBeUndefined();
    expect(flag?.corrections).toEqual([]);
    expect(flag?.why).toBe(
      "Thigh 10 mm is out of proportion: is a digit missing? About 108 mm would be in proportion.",
    );
  });

  it("speaks of inches as a tape shows them", () => {
    const inches = headings.map((heading) => (heading === "Waist (mm)" ? "Waist (in)" : heading));
    const rows = [0.7, 0.8, 0.9, 1, 1.1, 1.2].map((size, i) => [
      `Figure ${String(i + 1)}`,
      ...body.map((mm, j) => (j === 2 ? Math.round((mm * size * 16) / 25.4) / 16 : mm * size)),
    ]);
    rows[3]![3] = "13 1/4";
    expect(checkChart(readChart([inches, ...rows]))).toMatchObject([
      {
        kind: "wrong unit",
        why: expect.stringContaining('Waist 13 1/4" is about 2.54 times too large') as string,
      },
    ]);
  });
});

describe("small and odd charts", () => {
  it("says nothing of proportions with fewer than five figures or five measures, but of what is many times off", () => {
    const figures = [1, 1.1, 1.2, 0.9].map((size, i) => [`F${String(i)}`, ...body.map((mm) => mm * size)]);
    figures[1]![3] = Number(figures[1]![3]) / 2;
    expect(checkChart(readChart([headings, ...figures]))).toEqual([]);
    figures[1]![3] = 5;
    expect(checkChart(readChart([headings, ...figures]))).toMatchObject([{ row: 2, column: 3 }]);
    const narrow = [1, 1.1, 1.2, 0.9, 1.3, 0.8].map((size, i) => [
      `F${String(i)}`,
      ...body.slice(0, 4).map((mm) => mm * size),
    ]);
    narrow[1]![1] = Number(narrow[1]![1]) * 2;
    expect(checkChart(readChart([headings.slice(0, 5), ...narrow]))).toEqual([]);
    narrow[1]![1] = 5000;
    expect(checkChart(readChart([headings.slice(0, 5), ...narrow]))).toMatchObject([{ row: 2, column: 1 }]);
  });

  it("still says what cannot be right, in the smallest chart", () => {
    const chart = readChart([
      ["Figure", "Waist (mm)", "Hip (mm)"],
      ["Orrin", 140, 120],
    ]);
    expect(checkChart(chart)).toMatchObject([
      {
        kind: "larger than it can be",
        row: 1,
        column: 1,
        why: "Waist 140 mm is more than Hip 120 mm, which a body seldom has. Measure both again.",
      },
    ]);
  });

  it("asks once, not for every figure, when most figures break a rule", () => {
    const rows = [1, 1.1, 1.2, 1.3].map((size, i) => [`F${String(i)}`, 30 * size, 25 * size]);
    expect(checkChart(readChart([["Figure", "Wrist (mm)", "Hand girth (mm)"], ...rows]))).toMatchObject([
      { kind: "smaller than it can be", figure: "", row: 0, measure: "Hand girth" },
    ]);
  });

  it("compares height with inside leg and back waist length together", () => {
    const chart = readChart([
      ["Figure", "Height (mm)", "Inside leg (mm)", "Back waist length (mm)"],
      ["Orrin", 250, 186, 88],
      ["Pell", 400, 186, 88],
    ]);
    expect(kinds(chart)).toEqual([["smaller than it can be", "Orrin", "Height"]]);
  });
});

describe("names and twins", () => {
  const top = [
    "Figure",
    ...["Bust", "Waist", "Hip", "Head", "Hand girth", "Thigh", "Calf", "Knee"].map((m) => `${m} (mm)`),
  ];
  const row = [182, 134, 194, 165, 39, 108, 74, 72];

  it("notes two names with the same readings, head and hands among them", () => {
    const twins = readChart([top, ["Orrin", ...row], ["Pell", ...row.map((mm) => mm + 0.5)]]);
    expect(kinds(twins)).toEqual([["same readings, two names", "Pell", ""]]);
  });

  it("lets figures share a body when their heads differ", () => {
    const shared = row.map((mm, j) => (j === 3 ? mm + 3 : mm));
    expect(checkChart(readChart([top, ["Orrin", ...row], ["Pell", ...shared]]))).toEqual([]);
  });

  it("tells a name that stands twice, with what differs", () => {
    const other = row.map((mm, j) => (j === 1 ? mm + 4 : mm));
    const [flag] = checkChart(readChart([top, ["Orrin", ...row], ["orrin", ...other]]));
    expect(flag).toMatchObject({ kind: "one name, two rows", row: 2 });
    expect(flag?.why).toContain("(Waist 134 mm and 138 mm)");
    const [same] = checkChart(readChart([top, ["Orrin", ...row], ["Orrin", ...row]]));
    expect(same?.why).toContain("with the same readings. Delete one of them.");
  });
});

describe("expected value", () => {
  it("lies where a figure of that shape has it, whatever stands in the cell", () => {
    for (const waist of [134, 5.25, none]) {
      const expected = expectedValue(chartWith([none, none, waist ?? "-"]), 3, 2);
      expect(expected?.mm).toBeGreaterThan(133);
      expect(expected?.mm).toBeLessThan(135);
      expect(expected!.lowMm).toBeLessThan(expected!.mm);
      expect(expected!.highMm).toBeGreaterThan(expected!.mm);
    }
  });

  it("is not known in a chart that is too small", () => {
    const chart = readChart([headings, ["F", ...body]]);
    expect(expectedValue(chart, 0, 0)).toBeUndefined();
  });
});

it("finds ten slips among 5,000 figures", () => {
  const many = Array.from({ length: 5000 }, (_, i) => [
    `Figure ${String(i)}`,
    ...body.map((mm, j) =>
      i % 500 === 7 && j === 2
        ? 5
        : mm * (0.6 + ((i * 37) % 1000) / 1000) * (1 + ((i * 7 + j * 13) % 11) / 400),
    ),
  ]);
  const flags = checkChart(readChart([headings, ...many]));
  expect(flags.filter(({ measure }) => measure === "Waist")).toHaveLength(10);
});
