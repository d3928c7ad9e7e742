import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import type { Chart } from "../../../addin/chart/chart.ts";
import type { Doubt } from "../../../addin/chart/doubt.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readGarmentTolerances, readTolerances } from "../../../addin/chart/tolerances.ts";
import { estimates } from "../../../addin/checking/doubts.ts";
import type { ComparedColumn } from "../../../addin/similarity/columns.ts";
import { columnsOfPart, countingEstimates } from "../../../addin/similarity/columns.ts";
import { fewestBaseFigures, fewestSharedGroups } from "../../../addin/similarity/fewest/fewestShared.ts";
import { allPairs, doubtfulPairs, pairsTable } from "../../../taskpane/groups/allPairs.ts";
import { groupingAt, groupTree } from "../../../taskpane/groups/grouping.ts";
import { modelDoubts, modelRows } from "../../../taskpane/groups/houseModels.ts";
import { doGroupJob } from "../../../taskpane/groups/jobs.ts";
import { shareDoubt, sharingDoubts, sharingOf } from "../../../taskpane/groups/sharing.ts";
import { figures as cells, grouped, workbookOf } from "./grouped.ts";

/*
 * What is said of a doubtful reading is held against charts in which the cell itself holds the other reading, or none: read,
 * grouped and compared as any other.
 */

const heading = (name: string) => cells[0]!.indexOf(name);
/** The chart with another reading in one cell. */
const chartWhere = (figure: string, measure: string, value: number | string | undefined): Cells =>
  cells.map((row) => row.map((cell, c) => (row[0] === figure && c === heading(measure) ? value : cell)));

/** Linnet’s waist as if a digit had slipped: 129 for 100. */
const slipped = chartWhere("Linnet", "Waist", 129);

function doubtOf(chart: Chart, figure: string, measure: string, mendedMm?: number): Doubt {
  const column = chart.measures.find((each) => each.heading === measure)!.position;
  const cell = { row: chart.rows[chart.figures.indexOf(figure)]!, column };
  return {
    cells: [cell],
    figure,
    says: `${measure} 129 mm (digits swapped)`,
    corrections: mendedMm === undefined ? [] : [{ ...cell, mm: mendedMm }],
  };
}

async function slippedFigures() {
  const found = await grouped(workbookOf(slipped));
  const { chart } = found.figures;
  return { ...found, chart, at: (name: string) => chart.figures.indexOf(name) };
}

describe("group cards", () => {
  const marksOf = (
    chart: Chart,
    columns: readonly ComparedColumn[],
    doubtful: readonly Doubt[],
    method: "complete" | "single" | undefined,
  ) => {
    const groupOf = groupingAt(groupTree(chart, columns, method ?? "complete"), 1);
    const answer = doGroupJob({ kind: "marks", ...{ chart, columns, groupOf, doubtful, method, cut: 1 } });
    return answer.kind === "marks" ? answer.marks : [];
  };

  test.each(["complete", "single"] as const)(
    "name the reading, and the figures that the mended chart puts together (%s)",
    async (method) => {
      const { chart, columns, at } = await slippedFigures();
      const marks = marksOf(chart, columns, [doubtOf(chart, "Linnet", "Waist", 100)], method);
      const mended = await grouped(workbookOf(chartWhere("Linnet", "Waist", 100)));
      const groupOf = groupingAt(groupTree(mended.figures.chart, mended.columns, method), 1);
      const company = mended.figures.chart.figures.filter(
        (name, i) => name !== "Linnet" && groupOf[i] === groupOf[at("Linnet")],
      );
      expect(company).toContain("Dunnock");
      expect(marks[at("Linnet")]).toBe(
        `Rests on a doubtful reading: Waist 129 mm (digits swapped). Mended, it would share a body with ${company.join(", ")}.`,
      );
      expect(marks[at("Dunnock")]).toBe("Another group if doubtful readings of Linnet were mended.");
      expect(marks[at("Teal")]).toBe("");
    },
  );

  test("take the fewest groups that were found anew with the readings mended", async () => {
    const { chart, columns, at } = await slippedFigures();
    const doubtful = [doubtOf(chart, "Linnet", "Waist", 100)];
    const { groupOf } = fewestSharedGroups(chart, columns, 1);
    const right = (await grouped(workbookOf(chartWhere("Linnet", "Waist", 100)))).columns;
    const after = fewestSharedGroups(chart, right, 1).groupOf;
    const job = { kind: "marks" as const, chart, columns, groupOf, doubtful, method: undefined, cut: 1 };
    const marksWith = (by: Int32Array | undefined) => {
      const answer = doGroupJob({ ...job, after: by });
      return answer.kind === "marks" ? answer.marks[at("Linnet")] : undefined;
    };
    expect(marksWith(undefined)).toBe("Rests on a doubtful reading: Waist 129 mm (digits swapped).");
    const company = chart.figures.filter((name, i) => name !== "Linnet" && after[i] === after[at("Linnet")]);
    expect(company.length).toBeGreaterThan(0);
    expect(marksWith(after)).toBe(
      `Rests on a doubtful reading: Waist 129 mm (digits swapped). Mended, it would share a body with ${company.join(", ")}.`,
    );
  });

  test("name the reading alone where what becomes of the groups is not worked out", async () => {
    const { chart, columns, at } = await slippedFigures();
    const marks = marksOf(chart, columns, [doubtOf(chart, "Linnet", "Waist", 100)], undefined);
    expect(marks[at("Linnet")]).toBe("Rests on a doubtful reading: Waist 129 mm (digits swapped).");
    expect(marks.filter((mark) => mark !== "")).toHaveLength(1);
  });
});

describe("pairs in a word", () => {
  test("are doubtful where the word is another one without the reading or with it mended", async () => {
    const { chart, figures, columns, at } = await slippedFigures();
    const { garments, tolerances } = figures;
    const places = chart.figures.map((_, place) => place);
    const doubtful = [doubtOf(chart, "Linnet", "Waist", 100)];
    const found = doubtfulPairs(chart, columns, garments, tolerances, places, doubtful);
    const wordsIn = async (value: number | undefined) => {
      const other = await grouped(workbookOf(chartWhere("Linnet", "Waist", value)));
      return allPairs(other.figures.chart, other.columns, garments, tolerances, places);
    };
    const [mended, without] = [await wordsIn(100), await wordsIn(undefined)];
    const pairs = allPairs(chart, columns, garments, tolerances, places);
    const others = pairs.filter(
      ({ word, says }, i) =>
        `${word} ${says}` !== `${mended[i]!.word} ${mended[i]!.says}` ||
        `${word} ${says}` !== `${without[i]!.word} ${without[i]!.says}`,
    );
    expect(found.map(({ place, other }) => [place, other])).toEqual(
      others.map(({ place, other }) => [place, other]),
    );
    expect(found.every(({ place, other }) => [place, other].includes(at("Linnet")))).toBe(true);
    for (const { place, other, says } of found) {
      const i = pairs.findIndex((each) => each.place === place && each.other === other);
      const after = mended[i]!.word === pairs[i]!.word ? "the same" : mended[i]!.word;
      expect(says).toBe(
        `Rests on a doubtful reading: Linnet, Waist 129 mm (digits swapped). The answer: ${after} if mended.`,
      );
    }
    expect(found.some(({ says }) => says.includes("same body if mended"))).toBe(true);
    const table = pairsTable(chart, places, pairs, found);
    const marked = table.flat().filter((word) => word.endsWith(", doubtful"));
    expect(marked).toHaveLength(2 * found.length);
  });

  test("name a reading that decides only together with another", async () => {
    const both = slipped.map((row) =>
      row.map((cell, c) => (row[0] === "Linnet" && c === heading("Bust") ? 153 : cell)),
    );
    const { figures, columns } = await grouped(workbookOf(both));
    const { chart, garments, tolerances } = figures;
    const [place, other] = [chart.figures.indexOf("Linnet"), chart.figures.indexOf("Pipit")];
    const doubtful = [doubtOf(chart, "Linnet", "Waist", 100), doubtOf(chart, "Linnet", "Bust", 135)];
    const found = doubtfulPairs(chart, columns, garments, tolerances, [place, other], doubtful);
    expect(found.map(({ says }) => says).join()).toMatch(/The answer: same body if mended\.$/);
  });

  test("an estimate that does not take part is no ground; one that is counted is taken out", () => {
    const chart = readChart([
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["Arden", 200, 150, 210],
      ["Anwen", 201, "~ 150", 210],
    ]);
    const rules: Cells = [
      ["Measure", "Tolerance (mm)"],
      ["Bust", 2],
      ["Waist", 2],
      ["Hip", 2],
    ];
    const tolerances = readTolerances(rules, chart);
    const garments = readGarmentTolerances(rules, chart);
    const found = (of: Chart) =>
      doubtfulPairs(
        of,
        columnsOfPart(of, "body", { tolerances, garments }),
        garments,
        tolerances,
        [0, 1],
        estimates(chart),
      );
    expect(found(chart)).toEqual([]);
    expect(found(countingEstimates(chart)).map(({ says }) => says)).toEqual([
      "Rests on a doubtful reading: Anwen, Waist 150 mm (an estimate). The answer: not known without.",
    ]);
  });
});

describe("clothes that are shared, and two figures beside each other", () => {
  test("say which answers the mended chart gives", async () => {
    const { chart, figures, at } = await slippedFigures();
    const doubtful = [doubtOf(chart, "Linnet", "Waist", 100)];
    const found = sharingDoubts(figures, at("Dunnock"), doubtful);
    const mended = (await grouped(workbookOf(chartWhere("Linnet", "Waist", 100)))).figures;
    const answersIn = (of: typeof figures) => {
      const { body, looser, nothing } = sharingOf(of, at("Dunnock"));
      return [...body, ...looser, ...nothing]
        .find(({ place }) => place === at("Linnet"))!
        .classes.map(({ answer }) => answer);
    };
    const [before, after] = [answersIn(figures), answersIn(mended)];
    const names = figures.garments.map(({ garment }) => garment);
    const changes = after.flatMap((answer, c) => (answer === before[c] ? [] : [`${names[c]!} ${answer}`]));
    expect(changes).toEqual(["Fitted clothes yes"]);
    expect(found.get(at("Linnet"))).toBe(
      "Rests on a doubtful reading: Linnet, Waist 129 mm (digits swapped). The answer: Fitted clothes yes if mended.",
    );
    expect([...found.keys()]).toEqual([at("Linnet")]);
    expect(shareDoubt(figures, at("Linnet"), at("Dunnock"), doubtful)).toMatch(
      /^Rests on a doubtful reading: Linnet, Waist 129 mm .* Fitted clothes yes/,
    );
    expect(shareDoubt(figures, at("Teal"), at("Siskin"), doubtful)).toBeUndefined();
  });
});

describe("house models", () => {
  test("say which model serves the figure once all is solved anew with the reading mended", async () => {
    const { chart, columns, at } = await slippedFigures();
    const doubtful = [doubtOf(chart, "Linnet", "Waist", 100)];
    const answer = fewestBaseFigures(chart, columns, 1);
    const right = (await grouped(workbookOf(chartWhere("Linnet", "Waist", 100)))).columns;
    const after = fewestBaseFigures(chart, right, 1);
    expect(after.count).toBe(answer.count - 1);
    const found = modelDoubts(chart, columns, answer, 1, doubtful, after);
    const base = chart.figures[after.baseOf[at("Linnet")]!]!;
    const own = found.find(({ place }) => place === at("Linnet"))!;
    expect(own.says).toBe(
      `Rests on a doubtful reading: Linnet, Waist 129 mm (digits swapped). Mended: ${base === "Linnet" ? "the same" : `${base} serves it`}.`,
    );
    const [headings, ...rows] = modelRows(chart, columns, answer, found);
    expect(headings?.at(-1)).toBe("Doubtful");
    expect(rows[at("Linnet")]?.at(-1)).toBe(own.says);
    expect(modelRows(chart, columns, answer, []).every((row) => row.length === 4)).toBe(true);
  });

  test("say whether another model could serve the figure, or its own no longer does", async () => {
    const { chart, columns, at } = await slippedFigures();
    const answer = fewestBaseFigures(chart, columns, 1);
    expect(answer.baseOf[at("Linnet")]).toBe(at("Linnet"));
    const says = (mendedMm: number) =>
      modelDoubts(chart, columns, answer, 1, [doubtOf(chart, "Linnet", "Waist", mendedMm)]).map(
        (each) => each.says,
      );
    const base = chart.figures[answer.baseOf[at("Dunnock")]!]!;
    expect(says(100)).toEqual([
      `Rests on a doubtful reading: Waist 129 mm (digits swapped). If mended: ${base} could serve it.`,
    ]);
    expect(says(180)[0]).toMatch(/If mended: no other model could serve it\.$/);
    const sound = await grouped();
    const whole = fewestBaseFigures(sound.figures.chart, sound.columns, 1);
    const served = whole.baseOf[at("Siskin")] === at("Siskin") ? "Teal" : "Siskin";
    const model = served === "Teal" ? "Siskin" : "Teal";
    expect(
      modelDoubts(sound.figures.chart, sound.columns, whole, 1, [
        doubtOf(sound.figures.chart, served, "Waist", 129),
      ]).map(({ place, says: words }) => [place, words]),
    ).toEqual([
      [
        at(served),
        `Rests on a doubtful reading: Waist 129 mm (digits swapped). If mended: not near enough to ${model}.`,
      ],
    ]);
  });
});
