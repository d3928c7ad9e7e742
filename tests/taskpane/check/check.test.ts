import { describe, expect, test } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import type { Flag } from "../../../addin/checking/checkChart.ts";
import { checkChart } from "../../../addin/checking/checkChart.ts";
import { doubts } from "../../../addin/checking/doubts.ts";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { MemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import {
  confirm,
  confirmationOf,
  confirmedWords,
  isConfirmed,
  takeBack,
} from "../../../taskpane/check/confirmed.ts";
import { withCorrections } from "../../../taskpane/check/corrections.ts";
import { areaOfFlag, cellOfFlag, choose, correct } from "../../../taskpane/check/flagEdits.ts";
import { groupFlags } from "../../../taskpane/check/flagGroups.ts";
import type { Check, CheckedChart } from "../../../taskpane/check/useCheck.ts";
import { checkOf, readToCheck } from "../../../taskpane/check/useCheck.ts";
import { jobMessage } from "../../../taskpane/work/job.ts";

/** As the section does it: read, do the job, leave out what was confirmed. */
async function checkWorkbook(workbook: MemoryWorkbook, chosen: string | undefined): Promise<Check> {
  const toCheck = await readToCheck(openBook(workbook)(), chosen);
  if (!toCheck.found) return checkOf(toCheck, []);
  const message = jobMessage({ kind: "check", chart: toCheck.found.chart });
  if (message.kind !== "check") throw new Error("The check failed.");
  return checkOf(toCheck, message.flags);
}

async function demo(): Promise<{ workbook: MemoryWorkbook; check: Check; checked: CheckedChart }> {
  const workbook = createMemoryWorkbook(demoWorkbook());
  const check = await checkWorkbook(workbook, undefined);
  if (!check.checked) throw new Error("The demo has no chart.");
  return { workbook, check, checked: check.checked };
}

async function flagsNow(workbook: MemoryWorkbook): Promise<readonly Flag[]> {
  return (await checkWorkbook(workbook, undefined)).checked?.flags ?? [];
}

const correctable = (flags: readonly Flag[]): Flag => {
  const flag = flags.find((f) => f.suggestedMm !== undefined && f.corrections.length === 1);
  if (!flag) throw new Error("The demo has no flag with a suggestion.");
  return flag;
};
const sameCell = (a: Flag) => (b: Pick<Flag, "row" | "column">) => a.row === b.row && a.column === b.column;

async function confirmFlag(workbook: MemoryWorkbook, flag: Flag): Promise<void> {
  const { checked, confirmations, sheets } = await checkWorkbook(workbook, undefined);
  const cell = checked?.data.values[flag.row]?.[flag.column];
  const edits = confirm(confirmationOf(flag, cell), "2025-03-01", {
    table: confirmations?.table,
    cells: confirmations?.data.values ?? [],
    sheets,
  });
  await workbook.apply("Confirm", edits);
}

describe("the check of a workbook", () => {
  test("takes the table Figures, and says when there is none", async () => {
    const { check, checked } = await demo();
    expect(checked.table.name).toBe("Figures");
    expect(check.failure).toBeUndefined();
    expect(checked.flags.length).toBeGreaterThan(5);

    const empty = await checkWorkbook(
      createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] }),
      undefined,
    );
    expect(empty).toMatchObject({ checked: undefined, failure: undefined, tables: [] });
  });

  test("offers charts only", async () => {
    const { workbook, checked } = await demo();
    await confirmFlag(workbook, correctable(checked.flags));
    const names = (await workbook.tables()).map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining(["Tolerances", "Patterns", "EaseRules", "GarmentClasses", "ConfirmedReadings"]),
    );
    const { tables } = await checkWorkbook(workbook, undefined);
    expect(tables.map(({ name }) => name)).toEqual(["Figures"]);
  });

  test("says in words why a table cannot be checked", async () => {
    const workbook = createMemoryWorkbook({
      sheets: [
        {
          name: "List",
          cells: [[{ value: "Figure" }], [{ value: "Mira" }]],
          tables: [{ name: "Names", row: 0, column: 0, rows: 2, columns: 1 }],
        },
      ],
    });
    const check = await checkWorkbook(workbook, "Names");
    expect(check.checked).toBeUndefined();
    expect(check.failure).toMatch(/^Table Names: /);
  });

  test("groups flags by figure, the worst first, and loses none", async () => {
    const { checked } = await demo();
    const groups = groupFlags(checked.flags);
    expect(groups[0]?.flags[0]).toBe(checked.flags[0]);
    expect(groups.flatMap((group) => group.flags).length).toBe(checked.flags.length);
    for (const group of groups) expect(new Set(group.flags.map((flag) => flag.figure)).size).toBe(1);
  });
});

describe("a suggestion", () => {
  test("is written into the cell in the column’s unit, and the flag goes; one undo brings both back", async () => {
    const { workbook, checked } = await demo();
    const flag = correctable(checked.flags);
    await workbook.apply("Use", correct(checked.data, checked.chart, flag));
    const area = { ...cellOfFlag(checked.data, flag), rows: 1, columns: 1 };
    const unit = checked.chart.measures.find((c) => c.position === flag.column)?.unit;
    expect(unit).toBe("mm");
    expect((await workbook.readArea(area)).values).toEqual([[flag.suggestedMm]]);
    expect((await flagsNow(workbook)).some(sameCell(flag))).toBe(false);
    await workbook.undo();
    expect(await flagsNow(workbook)).toEqual(checked.flags);
  });

  test("for a whole row changes all its cells", async () => {
    const { workbook, checked } = await demo();
    const flag = checked.flags.find((f) => f.corrections.length > 2);
    if (!flag) throw new Error("The demo has no row or column in a wrong unit.");
    await workbook.apply("Change", correct(checked.data, checked.chart, flag));
    const { values } = await workbook.readTable("Figures");
    expect(flag.corrections.map(({ row, column }) => values[row]?.[column])).toEqual(
      flag.corrections.map(({ mm }) => Number(mm.toPrecision(12))),
    );
  });

  test("for a date is the fraction of a tape that it may have been; it is stored as a number and read as the fraction", async () => {
    const { workbook, checked } = await demo();
    const flag = checked.flags.find(({ kind }) => kind === "date instead of a reading");
    if (!flag) throw new Error("The demo has no date.");
    expect(flag.unit).toBe("in");
    const [choice, ...others] = flag.choices ?? [];
    expect([choice?.label, others]).toEqual(["5/8 in", []]);
    if (!choice) throw new Error("Nothing is offered.");
    await workbook.apply("Use", choose(checked.data, checked.chart, flag, choice));
    const data = await workbook.readTable("Figures");
    expect(data.values[flag.row]?.[flag.column]).toBe(0.625);
    expect(data.formats[flag.row]?.[flag.column]).toBe("General");
    const chart = readChart(data.values, { formats: data.formats });
    const column = chart.measures.find(({ position }) => position === flag.column);
    expect(column?.mm[chart.rows.indexOf(flag.row)]).toBeCloseTo(0.625 * 25.4, 9);
    await workbook.undo();
    expect(await flagsNow(workbook)).toEqual(checked.flags);
  });

  test("the unit of columns that state none goes into their headings, in one step", async () => {
    const { workbook } = await demo();
    const before = await workbook.readTable("Figures");
    const bare = before.values[0]?.map((heading) => String(heading).replace(/ \(.*\)$/, "")) ?? [];
    await workbook.apply(
      "Take the units away",
      bare.map((heading, i) => ({
        kind: "cells",
        at: { ...cellOfFlag(before, { row: 0, column: i }) },
        cells: [[{ value: heading }]],
      })),
    );
    const data = await workbook.readTable("Figures");
    const chart = readChart(data.values, { formats: data.formats });
    const flag = checkChart(chart).find(({ kind }) => kind.startsWith("unit "));
    const choice = flag?.choices?.find(({ label }) => label === "inches");
    if (!flag || !choice || !("headings" in choice)) throw new Error("No unit is offered.");
    await workbook.apply("In inches", choose(data, chart, flag, choice));
    const after = (await workbook.readTable("Figures")).values[0] ?? [];
    for (const { column, heading } of choice.headings) expect(after[column]).toBe(heading);
    expect(choice.headings[0]?.heading).toMatch(/ \(in\)$/);
    await workbook.undo();
    expect((await workbook.readTable("Figures")).values[0]).toEqual(bare);
  });

  test("what is corrected is kept: what stood there, what stands there now, when and why, in the same step", async () => {
    const { workbook, check, checked } = await demo();
    const mendable = checked.flags.filter(({ corrections }) => corrections.length > 0);
    const [one, ...others] = mendable;
    const swap = others.find(({ corrections }) => corrections.length === 2);
    if (!one || !swap) throw new Error("The demo has no flag with a better value.");
    const before = checked.data.values;
    const now = { table: check.corrections?.table, cells: [], sheets: check.sheets };
    expect(now.table).toBeUndefined();
    const mend = (flag: Flag, known: typeof now) =>
      withCorrections(correct(checked.data, checked.chart, flag), checked, flag, "2026-03-01", known);
    await workbook.apply("Use", mend(one, now));
    const kept = await workbook.readTable("Corrections");
    const { row, column } = one.corrections[0] ?? { row: 0, column: 0 };
    const after = (await workbook.readTable("Figures")).values[row]?.[column];
    expect(kept.values[0]).toEqual(["Figure", "Measure", "Old", "New", "Date", "Why"]);
    expect(kept.values[1]?.slice(2)).toEqual([
      before[row]?.[column],
      after,
      "2026-03-01",
      `${one.kind}: ${one.why}`,
    ]);
    expect(kept.values[1]?.[0]).toBe(before[row]?.[0]);

    const again = await checkWorkbook(workbook, undefined);
    const { corrections } = again;
    if (!corrections) throw new Error("The corrections are not read again.");
    const table = { table: corrections.table, cells: corrections.data.values, sheets: again.sheets };
    await workbook.apply("Change both readings", mend(swap, table as typeof now));
    expect((await workbook.readTable("Corrections")).values).toHaveLength(one.corrections.length + 3);
    await workbook.undo();
    await workbook.undo();
    expect((await workbook.readTable("Figures")).values).toEqual(before);
    expect((await workbook.tables()).map(({ name }) => name)).not.toContain("Corrections");
  });

  test("a flag about a row or a column is shown whole", async () => {
    const { checked } = await demo();
    const { area } = checked.data;
    for (const flag of checked.flags) {
      const shown = areaOfFlag(checked.data, flag);
      expect(shown.rows === 1 || shown.columns === 1).toBe(true);
      if (flag.measure === "") expect(shown).toMatchObject({ column: area.column, columns: area.columns });
      else if (flag.figure === "") expect(shown).toMatchObject({ row: area.row, rows: area.rows });
      else expect(shown).toEqual({ ...cellOfFlag(checked.data, flag), rows: 1, columns: 1 });
    }
  });
});

describe("a confirmed reading", () => {
  test("stands in the workbook in plain sight, and its flag is gone until the reading changes", async () => {
    const { workbook, checked } = await demo();
    const flag = correctable(checked.flags);
    await confirmFlag(workbook, flag);
    const { confirmed } = await checkWorkbook(workbook, undefined);
    expect(confirmed).toMatchObject([{ figure: flag.figure, measure: flag.measure, date: "2025-03-01" }]);
    expect(confirmed[0]?.reading).toBe(`${String(flag.readingMm)} mm`);
    expect((await flagsNow(workbook)).some(sameCell(flag))).toBe(false);

    await workbook.typeInto(cellOfFlag(checked.data, flag), String((flag.readingMm ?? 0) * 1.01));
    expect((await flagsNow(workbook)).some(sameCell(flag))).toBe(true);
  });

  test("is no doubt that answers about fit rest on", async () => {
    const { workbook, checked } = await demo();
    const flag = correctable(checked.flags);
    const isDoubtful = ({ chart, flags }: CheckedChart) =>
      doubts(chart, flags).some(({ cells }) => cells.some(sameCell(flag)));
    expect(isDoubtful(checked)).toBe(true);
    await confirmFlag(workbook, flag);
    const after = (await checkWorkbook(workbook, undefined)).checked!;
    expect(isDoubtful(after)).toBe(false);
    expect(doubts(after.chart, after.flags).length).toBe(doubts(checked.chart, checked.flags).length - 1);
  });

  test("can be taken back, and its row is used for the next one", async () => {
    const { workbook, checked } = await demo();
    const [first, second] = checked.flags.filter((f) => f.readingMm !== undefined && f.figure !== "");
    if (!first || !second) throw new Error("The demo has fewer than two flagged readings.");
    await confirmFlag(workbook, first);
    const { confirmed, confirmations } = await checkWorkbook(workbook, undefined);
    if (!confirmations || !confirmed[0]) throw new Error("Nothing was confirmed.");
    await workbook.apply("Check again", takeBack(confirmed[0], confirmations.table));
    expect(await flagsNow(workbook)).toEqual(checked.flags);

    await confirmFlag(workbook, second);
    const after = await checkWorkbook(workbook, undefined);
    expect(after.confirmed.map((row) => [row.row, row.figure])).toEqual([[1, second.figure]]);
    await confirmFlag(workbook, first);
    expect((await checkWorkbook(workbook, undefined)).confirmed.length).toBe(2);
  });

  test("is known again when the column changes its unit", () => {
    const flag = {
      figure: "Mira",
      measure: "Waist",
      unit: "in",
      readingMm: 136.525,
      kind: "out of proportion",
      row: 1,
      column: 1,
      why: "",
      corrections: [],
    } satisfies Flag;
    expect(confirmationOf(flag, 5.375)).toEqual({ figure: "Mira", measure: "Waist", reading: "5.375 in" });
    const row = { ...confirmationOf(flag, 5.375), row: 1, date: "" };
    expect(isConfirmed({ ...flag, unit: "cm" }, 13.6525, [row])).toBe(true);
    expect(isConfirmed({ ...flag, readingMm: 137 }, 5.39, [row])).toBe(false);
    expect(confirmedWords(confirmationOf(flag, 5.375))).toBe("Mira, Waist, 5.375 in");
    expect(confirmedWords({ figure: "Mira", measure: "(row twice)", reading: "" })).toBe("Mira, row twice");
  });
});
