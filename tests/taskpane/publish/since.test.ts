import { describe, expect, it } from "vitest";
import type { Changes } from "../../../addin/publish/changes.ts";
import { isUnchanged } from "../../../addin/publish/changes.ts";
import { usualPublication } from "../../../addin/publish/publication.ts";
import { mostRecordCharacters } from "../../../addin/publish/record.ts";
import { factsOf } from "../../../taskpane/home/facts.ts";
import { readHistory, rememberPublished, sinceLast } from "../../../taskpane/publish/history.ts";
import {
  changedPatterns,
  changeWords,
  historyKey,
  patternChanges,
} from "../../../taskpane/publish/sinceWords.ts";
import { dayName, isoDay } from "../../../taskpane/ui/words.ts";
import { fromTables, published } from "../../publish/published.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

const nothing: Changes = {
  ...{ figuresAdded: [], figuresGone: [], figuresRenamed: [], measuresAdded: [], measuresGone: [] },
  ...{ readings: [], verdicts: [], patternsAdded: [], patternsGone: [] },
};
const turned = { pattern: "D-1", figure: "Ardwen", from: "fits", to: "too tight" } as const;
const chart = (bust: number) =>
  published(
    {},
    fromTables([
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["Ada", bust, 140, 190],
      ["Bea", 181, 141, 191],
    ]),
  );

describe("what a workbook remembers of publications", () => {
  it("is nothing before the first, and tells from then on what changed", async () => {
    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    expect(await readHistory(workbook)).toEqual([]);
    expect(sinceLast([], chart(180))).toBeUndefined();
    expect(await rememberPublished(workbook, chart(180), "2026-11-12")).toBe("");

    const same = sinceLast(await readHistory(workbook), chart(180));
    expect(same).toEqual({ day: "2026-11-12", changes: nothing, before: undefined });
    const changed = sinceLast(await readHistory(workbook), chart(186));
    expect(changed?.changes.readings).toEqual([
      // 180 mm is 7.087 in, nearest sixteenth 7 1/16; 186 mm is 7.323 in, nearest sixteenth 7 5/16.
      {
        ...{ figure: "Ada", measure: "Bust girth" },
        ...{ from: "180\u00a0mm / 7\u00a0¹⁄₁₆\u00a0in", to: "186\u00a0mm / 7\u00a0⁵⁄₁₆\u00a0in" },
      },
    ]);
  });

  it("still tells what changed once it has been published, however often it is saved", async () => {
    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    await rememberPublished(workbook, chart(180), "2026-11-12");
    await rememberPublished(workbook, chart(186), "2026-11-26");
    await rememberPublished(workbook, chart(186), "2026-11-26");
    const since = sinceLast(await readHistory(workbook), chart(186));
    expect(since?.day).toBe("2026-11-26");
    expect(isUnchanged(since!.changes)).toBe(true);
    expect(since?.before?.day).toBe("2026-11-12");
    expect(since?.before?.changes.readings).toHaveLength(1);
  });

  it("keeps what the maker has set, and not the date that was put in for her", async () => {
    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    const dated = published({ date: "12 November 2026" });
    await rememberPublished(workbook, dated, "2026-11-12", usualPublication);
    expect((await readHistory(workbook))[0]?.publication).toEqual(usualPublication);
  });

  it("says that it is too large, and forgets what is no longer the last one", async () => {
    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    await rememberPublished(workbook, chart(180), "2026-11-12");
    const { published: small, measured } = chart(180);
    const large = { ...small, figures: [small.figures[0]!, "x".repeat(mostRecordCharacters)] };
    expect(await rememberPublished(workbook, { published: large, measured }, "2026-11-26")).toBe(
      "It is too large for the workbook to remember, so what changes after today cannot be told.",
    );
    expect(await readHistory(workbook)).toEqual([]);
  });

  it("is refused in words where another hand wrote it, and made anew by publishing", async () => {
    const workbook = createMemoryWorkbook({ sheets: [{ name: "Sheet1", cells: [] }] });
    await workbook.setPreference(historyKey, [{ day: "yesterday" }]);
    await expect(readHistory(workbook)).rejects.toThrow(
      "What this workbook remembers of the last publication cannot be read",
    );
    await rememberPublished(workbook, chart(180), "2026-11-12");
    expect(await readHistory(workbook)).toHaveLength(1);
  });
});

describe("what changed, in words", () => {
  it("names the verdict that turned and whom to tell", () => {
    const changes: Changes = { ...nothing, figuresAdded: ["Zinnow", "Yarrick"], verdicts: [turned] };
    expect(changeWords(changes)).toBe(
      "2 figures added, 1 verdict turned: D-1 on Ardwen fits → too tight. Tell those who bought it.",
    );
    const two = { ...changes, verdicts: [turned, { ...turned, pattern: "D-2" }] };
    expect(changeWords(two)).toBe(
      "2 figures added, 2 verdicts turned, among them D-1 on Ardwen fits → too tight. Tell those who bought D-1 or D-2.",
    );
    const codes = ["D-1", "D-2", "D-3", "D-4", "D-5"];
    const five = { ...nothing, verdicts: codes.map((pattern) => ({ ...turned, pattern })) };
    expect(changeWords(five)).toContain("Tell those who bought D-1, D-2, D-3 and 2 other patterns.");
    expect(changeWords({ ...nothing, patternsGone: ["D-9"] })).toBe("1 pattern gone.");
  });

  it("is told pattern by pattern, for the words under them", () => {
    const patterns = [{ code: "D-1" }, { code: "D-2" }];
    const since = { day: "2026-11-12", changes: { ...nothing, verdicts: [turned] }, before: undefined };
    expect(changedPatterns(patterns, since)).toEqual([{ code: "D-1" }]);
    expect(patternChanges("D-1", since, new Date(2026, 10, 26))).toBe(
      "Since 12 November: Ardwen fits → too tight.",
    );
    expect(patternChanges("D-2", since)).toBe("");
    expect(changedPatterns(patterns, undefined)).toEqual([]);
    // Once it is published, what that publication changed is still to be told.
    const told = { day: "2026-11-26", changes: nothing, before: { day: since.day, changes: since.changes } };
    expect(changedPatterns(patterns, told)).toEqual([{ code: "D-1" }]);
    expect(patternChanges("D-1", told, new Date(2026, 10, 26))).toContain("Since 12 November");
  });

  it("names a day, with the year where it is another", () => {
    expect(dayName("2026-11-12", new Date(2026, 10, 26))).toBe("12 November");
    expect(dayName("2025-11-12", new Date(2026, 10, 26))).toBe("12 November 2025");
    expect(isoDay(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
  });

  it("is a line on Home, where there is something", () => {
    const known = { figures: 2, measures: 3, toLookAt: 0, bodies: undefined, wear: undefined };
    const since = { day: "2026-11-12", before: undefined };
    const today = new Date(2026, 10, 26);
    const names = (changes?: Changes) =>
      factsOf({ ...known, ...(changes && { since: { ...since, changes } }) }, "Chart", today).filter(
        ({ to }) => to === "publish",
      );
    expect(names()).toEqual([]);
    expect(names(nothing)).toEqual([]);
    expect(names({ ...nothing, verdicts: [turned] })).toEqual([
      {
        ...{ name: "Changed since you published", sign: "≈", tone: "brass", says: "1" },
        words:
          "Since 12 November: 1 verdict turned: D-1 on Ardwen fits → too tight. Tell those who bought it.",
        to: "publish",
      },
    ]);
  });
});
