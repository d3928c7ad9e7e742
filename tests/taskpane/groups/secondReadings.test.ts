import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import type { ReadingError } from "../../../addin/measures/readingError.ts";
import { usualReadingError } from "../../../addin/measures/readingError.ts";
import { sharingOf } from "../../../addin/similarity/certainty/sharing.ts";
import { certainty } from "../../../addin/similarity/certainty/certainty.ts";
import { sureness } from "../../../taskpane/groups/chances.ts";
import type { GroupAnswer } from "../../../taskpane/groups/jobs.ts";
import { doGroupJob } from "../../../taskpane/groups/jobs.ts";
import { readGroups } from "../../../taskpane/groups/readGroups.ts";
import { readingErrorWords, secondWords } from "../../../taskpane/groups/secondReadings.ts";
import { secondStarter } from "../../../taskpane/groups/secondStarter.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { sheetOf } from "../fit/wardrobe.ts";
import { figures, grouped, tolerances, workbookOf } from "./grouped.ts";
import { repeatedUncertainty } from "../../../addin/similarity/certainty/uncertainty.ts";

/** The figures of `grouped.ts` once more, each bust 1 mm larger; one waist is a slip, and Yew is not in the chart. */
const again: Cells = [
  ["figure", "Hip", "Bust", "Waist"],
  ["LINNET", undefined, 136, 100],
  ["Teal", 200, 191, 156],
  ["Dunnock", undefined, 137, 100],
  ["Siskin", 201, 193, 155],
  ["Pipit", undefined, 138, 102],
  ["Wren", undefined, 91, 170],
  ["Dipper", undefined, 133, 101],
  ["Yew", 150, 150, 150],
];

function withSecond(table = "SecondReadings", cells = again) {
  return { sheets: [...workbookOf().sheets, sheetOf(table, cells)] };
}

const usualWords =
  "A careful tape reading is taken to be off by half a millimetre as a rule (standard deviation: two readings of three by less), or by a quarter of one percent where that is more.";

describe("second readings", () => {
  test("are those of the table of that name, which is never taken for the chart", async () => {
    const read = await readGroups(openBook(createMemoryWorkbook(withSecond()))(), {});
    expect(read.secondTables.map(({ name }) => name)).toEqual(["SecondReadings"]);
    expect(read.figures?.second.table?.name).toBe("SecondReadings");
    const alone = [sheetOf("SecondReadings", again), sheetOf("Bodies", figures)];
    const other = await readGroups(openBook(createMemoryWorkbook({ sheets: alone }))(), {});
    expect(other.figures?.table.name).toBe("Bodies");
    expect(other.figures?.second.table?.name).toBe("SecondReadings");
  });

  test("are of no table by default, of any chart that is chosen, and of none where that is chosen", async () => {
    const workbook = createMemoryWorkbook(withSecond("Remeasured"));
    expect((await readGroups(openBook(workbook)(), {})).figures?.second.table).toBeUndefined();
    const chosen = await readGroups(openBook(workbook)(), { second: "remeasured" });
    expect(chosen.figures?.second.table?.name).toBe("Remeasured");
    const none = await readGroups(openBook(createMemoryWorkbook(withSecond()))(), { second: "" });
    expect(none.figures?.second).toMatchObject({ table: undefined, repeated: { errors: [] } });
  });

  test("are said with their reading errors, and with what was left out", async () => {
    const { figures: read, columns } = await grouped(withSecond());
    // Every two busts differ by 1 mm: a variance of 6 · 1 / (2 · 6), drawn to the usual 0.25 of five figures: √(4.25 / 11). Of six
    // waists five do, one is the same: √(3.75 / 11); Wren’s is a slip.
    expect(readingErrorWords(read.second, columns)).toBe(
      "Reading error (standard deviation: two readings of three are off by less) of Bust 0.62 mm, from 6 figures measured twice; of Waist 0.58 mm, from 6; of the others 0.5 mm, or 0.25 % where that is more. The fewer figures, the nearer to the usual 0.5 mm.",
    );
    expect(secondWords(read.second)).toEqual([
      "They show how exact your readings are of 2 measures: Bust, Waist.",
      "Measured twice on fewer than 5 figures, so that the usual reading error counts: Hip (2).",
      "Left out, since the readings differ too much to be one measure read twice: Waist of Wren (70 mm and 170 mm). Take them once more.",
      "Not in the chart, and so left out: Yew.",
    ]);
  });

  test("are the usual ones where there are none, and where one figure stands in the chart twice", async () => {
    const twice: Cells = [...figures, ["Teal", 150, 191, 155, 240, undefined]];
    for (const content of [workbookOf(), workbookOf(twice)]) {
      const { figures: read, columns } = await grouped(content);
      expect(readingErrorWords(read.second, columns)).toBe(usualWords);
      expect(secondWords(read.second)).toEqual([]);
    }
  });

  test("of other measures are said to tell nothing", async () => {
    const others: Cells = [
      ["Figure", "Ankle"],
      ["Teal", 30],
      ["Linnet", 20],
    ];
    const { figures: read } = await grouped(withSecond("SecondReadings", others));
    expect(secondWords(read.second)).toEqual([
      "The table SecondReadings has no reading of a measure of the chart for a figure of the chart.",
    ]);
  });

  test("that cannot be read are said, and the groups go on without them", async () => {
    const { figures: read, columns } = await grouped(withSecond("SecondReadings", [["Figure", "Bust"]]));
    expect(read.second.failure).toMatch(/A chart needs a row of headings/);
    expect(secondWords(read.second).join()).toMatch(
      /^The second readings cannot be read.*Table SecondReadings: /,
    );
    expect(readingErrorWords(read.second, columns)).toBe(usualWords);
  });

  test("count for how sure a group is and for the pairs on the fence, also as data passed to a worker", async () => {
    const { figures: read, columns } = await grouped(withSecond());
    const { chart, second } = read;
    const at = (name: string): number => chart.figures.indexOf(name);
    const pair = [at("Linnet"), at("Dunnock")] as const;
    const uncertainty = repeatedUncertainty(second.errors);
    const bust = columns.find(({ column }) => column.heading === "Bust")!;
    expect(uncertainty(bust, 135)).toBeCloseTo(Math.sqrt(4.25 / 11), 12);
    const sharing = sharingOf(chart, columns, uncertainty);
    const sure = sureness(columns, pair, uncertainty, sharing);
    expect(sure.least?.probability).toBe(certainty(columns, ...pair, uncertainty, sharing).probability);
    expect(sure.ofAll).not.toBe(
      sureness(columns, pair, repeatedUncertainty(usualReadingError), sharing).ofAll,
    );

    const doubtOf = (errors: ReadingError) =>
      doubtIn(doGroupJob(structuredClone({ kind: "doubt", chart, columns, errors })));
    const errorsOf = (mm: number): ReadingError => ({
      ...usualReadingError,
      ofMeasures: Object.fromEntries(columns.map(({ column }) => [column.key, mm])),
    });
    const exact = doubtOf(errorsOf(0.01));
    const coarse = doubtOf(errorsOf(12));
    expect(coarse?.pairCount).toBeGreaterThan(exact?.pairCount ?? Infinity);
    const coarsely = repeatedUncertainty(errorsOf(12));
    const taught = sharingOf(chart, columns, coarsely);
    for (const { places, probability } of coarse?.pairs ?? []) {
      expect(probability).toBe(certainty(columns, ...places, coarsely, taught).probability);
    }
  });
});

describe("the table for second readings", () => {
  test("has the figures and measures of the chart and no readings, is found by itself, and is taken back as one", async () => {
    const { workbook, input, figures: read } = await grouped();
    const before = workbook.content();
    const taken = { sheets: input.sheets, tables: input.tables.map(({ name }) => name) };
    const { edits, sheet, table } = secondStarter(read, taken);
    expect([sheet, table]).toEqual(["Second readings", "SecondReadings"]);
    await workbook.apply("Add a table for second readings", edits);
    const { values } = await workbook.readTable("SecondReadings");
    expect(values[0]).toEqual(["Figure", "Head (mm)", "Bust (mm)", "Waist (mm)", "Hip (mm)"]);
    expect(values.slice(1).map(([name]) => name)).toEqual(read.chart.figures);
    expect(
      values
        .slice(1)
        .flatMap((row) => row.slice(1))
        .every((cell) => cell === undefined),
    ).toBe(true);

    const { figures: next } = await readGroups(openBook(workbook)(), {});
    expect(secondWords(next!.second)).toEqual(["The table SecondReadings has no reading yet."]);
    await workbook.undo();
    expect(workbook.content()).toEqual(before);
  });

  test("keeps the headings that state a unit, and lists a name once", async () => {
    const chart: Cells = [
      ["Body", "Tail length (in)", "Crest"],
      ["Ash", 5.5, 30],
      ["ash", 5.5, 30],
      ["Elm", 6, 31],
    ];
    const { figures: read } = await grouped({
      sheets: [
        sheetOf("Figures", chart),
        sheetOf(
          "Tolerances",
          [...tolerances.slice(0, 1), ["Crest", 2], ["Tail length", 2]].map((row) => row.slice(0, 2)),
        ),
      ],
    });
    const [edit] = secondStarter(read, { sheets: [], tables: [] }).edits;
    const cells = edit?.kind === "sheet" ? edit.sheet.cells.slice(2) : [];
    expect(cells.map((row) => row.map((cell) => cell?.value))).toEqual([
      ["Body", "Tail length (in)", "Crest (mm)"],
      ["Ash", undefined, undefined],
      ["Elm", undefined, undefined],
    ]);
  });
});

function doubtIn(answer: GroupAnswer) {
  return answer.kind === "doubt" ? answer.doubt : undefined;
}
